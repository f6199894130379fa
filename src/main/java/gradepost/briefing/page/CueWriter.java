package gradepost.briefing.page;

import gradepost.briefing.Fact;
import gradepost.briefing.line.CueSighting;
import gradepost.briefing.word.Words;
import gradepost.plan.Application;
import gradepost.plan.Cues;
import gradepost.plan.Latest;
import gradepost.plan.Rung;
import gradepost.route.Landmark;
import gradepost.stock.BrakeSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the driver goes by at a braking point. */
public final class CueWriter {
  private final Words words;
  private final CueSighting sight;

  public CueWriter(Words words, CueSighting sight) {
    this.words = words;
    this.sight = sight;
  }

  /** A landmark, and how far it stands before the point that would have been needed. */
  private String anchored(String name, Application application) {
    double before = application.exactBrakingPointM() - application.brakingPointM();
    return before < words.units().lengthUnitM()
        ? name
        : words.text("cue.before-computed", name, words.room(before));
  }

  /** By day: the landmark that tells most; without one, whatever else stands near. */
  private Optional<String> day(Application application) {
    Cues cues = application.cues();
    return cues.anchor()
        .map(Landmark::name)
        .or(() -> cues.day().map(d -> sight.past(d.name(), cues.dayBeforeM())))
        .or(() -> sight.day(application.brakingPointM()));
  }

  /** Whether anything is told to go by at night or in fog. */
  public boolean byNight(Application application) {
    return night(application).isPresent();
  }

  private Optional<String> night(Application application) {
    Cues cues = application.cues();
    return cues.night()
        .map(n -> sight.past(n.name(), cues.nightBeforeM()))
        .or(() -> sight.night(application.brakingPointM()));
  }

  /** The same cues in a cell; a dash where there is none by day. */
  String see(Application application) {
    Optional<String> day = day(application);
    return day.map(
            d ->
                night(application)
                    .filter(n -> !n.equals(d))
                    .map(n -> words.text("see.night", d, n))
                    .orElse(d))
        .orElse(words.text("dash"));
  }

  /**
   * In the order in which it helps.
   *
   * @param onEarlierPage what is done last before the braking point, where another page tells it
   */
  List<Fact> goBy(Application application, String number, Optional<String> onEarlierPage) {
    Cues cues = application.cues();
    List<Fact> out = new ArrayList<>();
    String day =
        cues.anchor()
            .map(a -> anchored(a.name(), application))
            .or(() -> day(application))
            .orElse(words.text("cue.none"));
    Optional<String> night = night(application);
    boolean sameByNight = night.isPresent() && night.equals(day(application));
    out.add(
        new Fact(
            words.text("cue.day", number), sameByNight ? words.text("cue.night-too", day) : day));
    if (!sameByNight) {
      out.add(new Fact(words.text("cue.night"), night.orElse(words.text("cue.night-none"))));
    }
    if (cues.secondsBefore() >= 1) {
      String seconds = words.seconds(cues.secondsBefore());
      out.add(
          new Fact(
              words.text("cue.clock"),
              onEarlierPage
                  .map(o -> words.text("cue.seconds-after", seconds, o))
                  .orElse(words.text("cue.seconds-before", seconds))));
    }
    out.add(backstop(application));
    return out;
  }

  /**
   * The landmark that says that it is late while the next brake can still be asked for; where none
   * stands before that brake's last place, the clock.
   */
  private Fact backstop(Application application) {
    Cues cues = application.cues();
    double beyond = application.brakingPointM() + cues.backstopAfterM();
    Optional<Latest.Point> last = last(application);
    boolean inTime = last.filter(l -> beyond <= l.printedM() + 1e-6).isPresent();
    if (inTime && cues.backstop().isPresent()) {
      return new Fact(
          words.text("cue.backstop"),
          words.text(
              "cue.beyond", cues.backstop().get().name(), words.room(cues.backstopAfterM())));
    }
    double after = Math.floor(last.map(Latest.Point::afterPlannedS).orElse(0.0));
    return new Fact(
        words.text("cue.backstop-clock"),
        after >= 1
            ? words.text("cue.backstop-after", words.seconds(after))
            : words.text("cue.backstop-at-once"));
  }

  /** The last place of the brake that is asked for when the service brake gives nothing. */
  private static Optional<Latest.Point> last(Application application) {
    List<Rung> ladder = application.told().get(0).ladder();
    return ladder.stream()
        .filter(r -> r.brake().role() != BrakeSystem.Role.SERVICE)
        .findFirst()
        .or(() -> ladder.stream().findFirst())
        .flatMap(r -> r.latest().point());
  }
}
