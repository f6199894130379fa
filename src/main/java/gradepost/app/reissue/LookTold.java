package gradepost.app.reissue;

import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.PackFiles;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.register.Entry;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import gradepost.units.MomentStyle;
import gradepost.yaml.Problems;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** What a clerk is told of a pack that was looked at, and is not worked out. */
final class LookTold {

  /**
   * @param pack its id
   */
  static String elsewhere(String pack) {
    return pack + ": not touched, the notice is for another route";
  }

  static String waits(Entry latest) {
    return "%s: %s is registered, but its files are not written yet: the next run begins with that"
        .formatted(latest.pack(), latest.name());
  }

  /**
   * @param emergency whether an addendum was asked for
   */
  static String has(int taken, Entry latest, boolean emergency) {
    String late =
        emergency && !latest.urgent()
            ? "; it was issued without an emergency addendum, and none can be made now: its supplement says the same"
            : "";
    return "%s: issue %d has this notice%s".formatted(latest.pack(), taken, late);
  }

  /** A file that would be changed though it lies outside of the folders of the data. */
  static Optional<String> outside(Path file, PackFile found, List<Input> inputs) {
    Path own = Disk.folder(Disk.absolute(file));
    Path data = PackFiles.data(file);
    for (int i = 0; i < inputs.size(); i++) {
      boolean changes = !inputs.get(i).equals(found.inputs().get(i));
      Path changed = own.resolve(inputs.get(i).name()).normalize();
      if (changes && !changed.startsWith(data)) {
        return Optional.of(
            "%s: error: the notice would change %s, which lies outside of %s; no file there is changed%n  Maybe keep the restrictions beside the pack, or in a folder beside its folder"
                .formatted(file, changed, data));
      }
    }
    return Optional.empty();
  }

  /** A year mistyped is a common reason why a notice touches nothing. */
  static String untouched(PackFile pack, List<TemporaryRestriction> notices) {
    String never =
        notices.isEmpty() || !PackTrains.timely(pack, notices).isEmpty()
            ? ""
            : ": the notice is not in force from %s to %s, while the pack is valid"
                .formatted(
                    MomentStyle.MOMENT.format(pack.issue().validFrom()),
                    MomentStyle.MOMENT.format(pack.issue().validTo()));
    return pack.id() + ": not touched" + never;
  }

  /**
   * Its files are those of its last issue, and nothing is asked of it.
   *
   * @param pack its id
   */
  static String untouched(String pack) {
    return pack + ": not touched";
  }

  /** What the papers still show though it has ended, and how it is taken out. */
  static Answer ended(PackFile pack, LocalDateTime now) {
    List<String> ended =
        pack.standing().stream()
            .filter(r -> r.until().filter(end -> !end.isAfter(now)).isPresent())
            .map(TemporaryRestriction::reference)
            .toList();
    return ended.isEmpty()
        ? Answer.GOOD
        : Answer.said(
            "%s: the papers still show what has ended: %s; to take it out: reissue --as-of %s"
                .formatted(pack.id(), String.join(", ", ended), now.toLocalDate()));
  }

  static String uncertain(Path file) {
    return "%s: error: no issue of this pack is registered, but its files already contain this notice; the register cannot tell whether drivers have it%n  Maybe take the notice out of its files and run this again; or, if they have it, register the pack as it is with: register enter"
        .formatted(file);
  }

  static String old(Path file, int taken, Entry latest) {
    return "%s: error: issue %d took this notice in, and issue %d later changed what it says; an old notice is not taken in twice%n  Maybe a newer notice is meant; to use this one again, give it another date or reference"
        .formatted(file, taken, latest.number());
  }

  /** What reading noted; it does not keep anything back. */
  static Answer noted(Problems problems) {
    return new Answer(List.of(), List.of(), Answer.of(problems).problems(), true);
  }

  private LookTold() {}
}
