package gradepost.briefing.page;

import gradepost.briefing.Fact;
import gradepost.briefing.word.SeenWords;
import gradepost.briefing.word.Words;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCues;
import gradepost.told.PrintedSetBy;
import gradepost.told.Seen;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the driver goes by at a braking point, spelt. */
final class CueWriter {
  private final Words words;
  private final SeenWords seen;

  CueWriter(Words words) {
    this.words = words;
    this.seen = new SeenWords(words);
  }

  /**
   * In the order in which it helps.
   *
   * @param number of the instruction that begins the application
   */
  List<Fact> goBy(PrintedApplication a, int number) {
    PrintedCues cues = a.cues();
    List<Fact> out = new ArrayList<>();
    Optional<String> plain = seen.day(cues.seen());
    String day = plain.map(name -> anchored(name, cues)).orElse(words.text("cue.none"));
    Optional<String> night = seen.night(cues.seen());
    boolean sameByNight = night.isPresent() && night.equals(plain);
    out.add(
        new Fact(
            words.text("cue.day", number), sameByNight ? words.text("cue.night-too", day) : day));
    if (!sameByNight) {
      out.add(new Fact(words.text("cue.night"), night.orElse(words.text("cue.night-none"))));
    }
    out.add(new Fact(words.text("set-by"), setBy(a)));
    out.add(backstop(cues.backstop()));
    return out;
  }

  /** What set the point. */
  String setBy(PrintedApplication a) {
    return words.text(key(a.setBy()), FallbackWords.next(a.cases().get(0)));
  }

  /**
   * The cues as the box of a braking point holds them: by day, at night or in fog, and what says
   * that it is too late.
   *
   * @param rail on which it is too late then
   */
  List<Fact> plate(PrintedCues cues, String rail) {
    List<Fact> out = new ArrayList<>();
    Optional<String> day = seen.day(cues.seen());
    Optional<String> night = seen.night(cues.seen());
    String none = words.text("cue.night-none");
    out.add(new Fact(words.text("plate.day"), day.orElse(none)));
    out.add(
        new Fact(
            words.text("plate.night"),
            night.isPresent() && night.equals(day)
                ? words.text("road.as-by-day")
                : night.orElse(none)));
    out.add(new Fact(words.text("plate.too-late"), tooLate(cues.backstop(), rail)));
    return out;
  }

  /** A point on another rail, with what serves there by day and at night; else what does by day. */
  String other(String point, Seen cue) {
    return seen.night(cue)
        .or(() -> seen.day(cue).map(d -> words.text("plate.by-day", d)))
        .map(c -> words.text("plate.other-cue", point, c))
        .orElse(point);
  }

  private String tooLate(PrintedCues.Backstop backstop, String rail) {
    if (backstop.name().isPresent()) {
      return words.text(
          "plate.not-braking-by",
          backstop.name().get(),
          backstop.beyond().orElseThrow().text(),
          rail);
    }
    return backstop
        .after()
        .map(after -> words.text("plate.not-braking-after", words.time(after), rail))
        .orElse(words.text("plate.not-braking", rail));
  }

  private static String key(PrintedSetBy setBy) {
    return switch (setBy) {
      case COMPUTED -> "set-by.computed";
      case CUE -> "set-by.cue";
      case NEXT_BRAKE -> "set-by.next-brake";
      case LATE_SHARE -> "set-by.late-share";
    };
  }

  /** A landmark, and how far it stands before the point that would have been needed. */
  private String anchored(String name, PrintedCues cues) {
    return cues.computedOn()
        .map(on -> words.text("cue.before-computed", name, on.text()))
        .orElse(name);
  }

  private Fact backstop(PrintedCues.Backstop backstop) {
    if (backstop.name().isPresent()) {
      return new Fact(
          words.text("cue.backstop"),
          words.text("cue.beyond", backstop.name().get(), backstop.beyond().orElseThrow().text()));
    }
    return new Fact(
        words.text("cue.backstop-clock"),
        backstop
            .after()
            .map(after -> words.text("cue.backstop-after", words.time(after)))
            .orElse(words.text("cue.backstop-at-once")));
  }
}
