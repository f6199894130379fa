package gradepost.app.reissue;

import gradepost.app.reissue.LastFiles.Held;
import gradepost.app.store.Answer;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.Loss;
import gradepost.reissue.register.Entry;
import gradepost.units.MomentStyle;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import gradepost.yaml.Problems;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a clerk is told of files that are not those of the last issue. */
final class FilesTold {

  /**
   * A file that is not as it was.
   *
   * @param of the issue that has this file, byte for byte; empty for one that no issue has
   * @param keys that differ; empty where only comments and spaces do
   */
  record Different(Held before, Optional<String> of, List<String> keys) {
    String words() {
      String what = keys.isEmpty() ? "comments or spaces only" : String.join(", ", keys);
      return of.map(issue -> "%s is from %s".formatted(before.name(), issue))
              .orElse(before.name() + " was edited")
          + " ("
          + what
          + ")";
    }
  }

  /**
   * Why nothing is issued from these files, and what to do.
   *
   * @param number of the issue, as the pack file has it
   * @param older the issue whose files these are, all of them
   * @param doubts what has to be confirmed, by the word given to {@code --confirm}
   */
  static String refusal(
      Path file,
      Entry last,
      int number,
      Optional<String> older,
      List<Different> different,
      Map<String, String> doubts) {
    String latest = last.name();
    StringBuilder out = new StringBuilder().append(file).append(": error: ");
    boolean sameNumber = number == last.number();
    if (older.isPresent()) {
      out.append(
          "these are the files of %s, but the last issue is %s: nothing is issued from older files"
              .formatted(older.get(), latest));
    } else if (!sameNumber) {
      out.append(
          "the pack has issue number %d, but the last issue is %s; allowed: %d, with the files of that issue"
              .formatted(number, latest, last.number()));
    } else {
      out.append(
          "the files differ from those of the last issue, %s, and no notice says so"
              .formatted(latest));
    }
    doubts.forEach((key, words) -> out.append("\n  ").append(key).append(": ").append(words));
    different.forEach(d -> out.append("\n  ").append(d.words()));
    out.append("\n  Maybe restore the files of %s with --from-archive".formatted(latest));
    if (number > last.number()) {
      out.append("; or name the register that has issue %d, with --register".formatted(number));
    } else if (sameNumber) {
      out.append("; or, if the edit is right, confirm each by name:");
      doubts.keySet().forEach(key -> out.append(" --confirm \"%s\"".formatted(key)));
    }
    return out.toString();
  }

  /** An issue that an earlier version read and this one does not. */
  static String unreadable(Path file, String issue, Problems problems) {
    return "%s: error: this version of gradepost cannot read %s: %s\n  Maybe give the pack the next number and register it with: register enter"
        .formatted(file, issue, Answer.of(problems).problems().get(0));
  }

  static String words(Loss loss, UnitStyle units) {
    String was = words(loss.then(), units);
    return loss.now().isEmpty()
        ? was + ": not in the files"
        : loss.gone()
            ? was + ": withdrawn in the files"
            : was + ": in the files " + words(loss.now().get(), units);
  }

  private static String words(TemporaryRestriction r, UnitStyle units) {
    return "%s from %s to %s, until %s"
        .formatted(
            units.speed(r.speed().metresPerSecond(), Rounding.NEAREST),
            units.mileage(r.extent().from().mileage()),
            units.mileage(r.extent().to().mileage()),
            r.until().map(MomentStyle.MOMENT::format).orElse("further notice"));
  }

  private FilesTold() {}
}
