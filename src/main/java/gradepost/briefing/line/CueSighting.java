package gradepost.briefing.line;

import gradepost.briefing.line.Lineside.Over;
import gradepost.briefing.word.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What a driver can tell a place by: the nearest cue at or before it, and one for the night. */
public final class CueSighting {
  /** Something to see. */
  private record Cue(double atM, String name, boolean night) {}

  private final List<Cue> cues = new ArrayList<>();
  private final Words words;
  private final double reachM;

  public CueSighting(Lineside lineside, double reachM) {
    this.words = lineside.words();
    this.reachM = reachM;
    for (Over<gradepost.route.Landmark> l : lineside.landmarks()) {
      cues.add(new Cue(l.fromM(), l.what().name(), l.what().night()));
    }
    for (Over<gradepost.route.Signal> s : lineside.signals()) {
      cues.add(new Cue(s.fromM(), words.text("signal.called", s.what().id()), true));
    }
    for (Over<Lineside.Face> f : lineside.platforms()) {
      // That a ramp is seen by night is for the data to say: a landmark that serves at night.
      cues.add(
          new Cue(f.fromM(), words.text("platform.ramp", f.what().platform().number()), false));
    }
    cues.sort(Comparator.comparingDouble(Cue::atM));
  }

  /** In words; a dash where nothing is near enough. */
  public String near(double atM) {
    Optional<Cue> best = last(atM, false);
    if (best.isEmpty()) {
      return words.text("dash");
    }
    String seen = past(best.get(), atM);
    if (best.get().night()) {
      return seen;
    }
    return last(atM, true)
        .map(night -> words.text("see.night", seen, past(night, atM)))
        .orElse(seen);
  }

  /** The last cue of any kind at or before a place. */
  public Optional<String> day(double atM) {
    return last(atM, false).map(c -> past(c, atM));
  }

  /** The last one that serves at night or in fog. */
  public Optional<String> night(double atM) {
    return last(atM, true).map(c -> past(c, atM));
  }

  private Optional<Cue> last(double atM, boolean night) {
    return cues.stream()
        .filter(c -> c.atM() <= atM + 0.5 && c.atM() >= atM - reachM)
        .filter(c -> c.night() || !night)
        .reduce((a, b) -> b);
  }

  private String past(Cue cue, double atM) {
    return past(cue.name(), atM - cue.atM());
  }

  /** A cue that stands so far before the place. */
  public String past(String name, double byM) {
    return byM < words.units().lengthUnitM() * 5
        ? name
        : words.text("see.past", words.room(byM), name);
  }
}
