package gradepost.plan;

import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Rung;
import gradepost.route.Landmark;
import gradepost.stock.BrakeSystem;
import gradepost.told.PrintedCues;
import gradepost.told.Seen;
import gradepost.told.print.PrintGrid;
import java.util.List;
import java.util.Optional;

/** Puts what a driver goes by at a braking point as he is told it. */
final class TellingCues {
  /** Arithmetic leaves less than this of a speed, metres a second. */
  private static final double SAME_MPS = 1e-3;

  private final PrintGrid grid;
  private final Sightings sightings;
  private final Run run;
  private final CueWindow window;

  TellingCues(PrintGrid grid, Sightings sightings, Run run, CueWindow window) {
    this.grid = grid;
    this.sightings = sightings;
    this.run = run;
    this.window = window;
  }

  /** Those of an application of the plan. */
  PrintedCues of(Application a) {
    Cues cues = a.cues();
    double onM = a.exactBrakingPointM() - a.brakingPointM();
    boolean computed = cues.anchor().isPresent() && onM >= grid.units().lengthUnitM();
    return new PrintedCues(
        seen(a), computed ? Optional.of(grid.room(onM)) : Optional.empty(), backstop(a));
  }

  /** A landmark that the point was planned at is its own cue. */
  private Seen seen(Application a) {
    Seen counted = toCountFrom(a.brakingPointM());
    return a.cues()
        .anchor()
        .map(l -> new Seen(sightings.near(a.brakingPointM()).day(), counted.night()))
        .orElse(counted);
  }

  /** That of a faster train, which no count is for. */
  PrintedCues ofFaster(Application a) {
    return new PrintedCues(
        sightings.near(a.brakingPointM()),
        Optional.empty(),
        new PrintedCues.Backstop(Optional.empty(), Optional.empty(), Optional.empty()));
  }

  /**
   * What is told of another rail: what serves at night, else by day. A count of the planned run
   * holds where the train comes no faster there.
   */
  Seen onAnotherRail(CaseResult c, double atM) {
    Seen both = noFaster(c, atM) ? toCountFrom(atM) : sightings.near(atM);
    return both.night().isPresent() ? new Seen(Optional.empty(), both.night()) : both;
  }

  /**
   * Whether the train comes no faster than on the planned run: under the same handles it was slower
   * all the way from the cue.
   */
  boolean noFaster(CaseResult c, double atM) {
    return c.actions().stream()
        .findFirst()
        .filter(first -> first.speedMps() <= run.speedAt(atM) + SAME_MPS)
        .isPresent();
  }

  private Seen toCountFrom(double atM) {
    return sightings.toCountFrom(window.fromM(atM), atM, run);
  }

  /**
   * The landmark that says that it is too late while the next brake can still be applied; where
   * none stands before that brake's last place, the clock.
   */
  private PrintedCues.Backstop backstop(Application a) {
    Cues cues = a.cues();
    double beyondM = a.brakingPointM() + cues.backstopAfterM();
    Optional<Latest.Point> last = last(a);
    boolean inTime = last.filter(l -> beyondM <= l.printedM() + 1e-6).isPresent();
    if (inTime && cues.backstop().isPresent()) {
      return new PrintedCues.Backstop(
          cues.backstop().map(Landmark::name),
          Optional.of(grid.room(cues.backstopAfterM())),
          Optional.empty());
    }
    double after = last.map(Latest.Point::afterPlannedS).orElse(0.0);
    return new PrintedCues.Backstop(
        Optional.empty(),
        Optional.empty(),
        after >= 1 ? Optional.of(grid.timeLeft(after)) : Optional.empty());
  }

  /** The last place of the brake that is applied when the service brake fails. */
  private static Optional<Latest.Point> last(Application a) {
    List<Rung> ladder = a.told().get(0).ladder();
    return ladder.stream()
        .filter(r -> r.brake().role() != BrakeSystem.Role.SERVICE)
        .findFirst()
        .or(() -> ladder.stream().findFirst())
        .flatMap(r -> r.latest().point());
  }
}
