package gradepost.briefing.word;

import gradepost.told.Seen;
import java.util.Optional;

/** What tells a place, spelt. */
public final class SeenWords {
  private final Words words;

  public SeenWords(Words words) {
    this.words = words;
  }

  /** By day. */
  public Optional<String> day(Seen seen) {
    return seen.day().map(this::thing);
  }

  /** At night or in fog. */
  public Optional<String> night(Seen seen) {
    return seen.night().map(this::thing);
  }

  /** Both in a few words; empty where there is nothing by day. */
  public Optional<String> both(Seen seen) {
    return day(seen)
        .map(
            d ->
                night(seen)
                    .filter(n -> !n.equals(d))
                    .map(n -> words.text("see.night", d, n))
                    .orElse(d));
  }

  /** Both in a cell: a dash where there is nothing by day. */
  public String cell(Seen seen) {
    return both(seen).orElse(words.text("dash"));
  }

  private String thing(Seen.Thing thing) {
    String name =
        switch (thing.kind()) {
          case LANDMARK -> thing.name();
          case SIGNAL -> words.text("signal.called", thing.name());
          case MAGNET -> words.text("see.magnet", thing.name());
          case BRIDGE -> thing.name();
          case STAND -> words.text("see.standing");
          case RAMP -> words.text("platform.ramp", thing.name());
        };
    return thing
        .count()
        .map(n -> words.text("see.count", name, Long.toString(n.seconds())))
        .orElseGet(() -> past(thing, name));
  }

  private String past(Seen.Thing thing, String name) {
    return thing.past().map(p -> words.text("see.past", p.text(), name)).orElse(name);
  }
}
