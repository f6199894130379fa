package gradepost.plan;

import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Met;
import gradepost.plan.fallback.OverrunAllowance;
import gradepost.plan.fallback.Rung;
import gradepost.route.LowAdhesionSite;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedCues;
import gradepost.told.PrintedEnd;
import gradepost.told.PrintedLatest;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedPoint;
import gradepost.told.PrintedProtection;
import gradepost.told.PrintedRung;
import gradepost.told.PrintedSetBy;
import gradepost.told.PrintedSpeedRow;
import gradepost.told.PrintedTrigger;
import gradepost.told.Reason;
import gradepost.told.Seen;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Puts one application of the brake, and what is left if it fails, as a driver is told it. */
final class TellingBrake {
  /** Nearer than this to the planned point, a protected one is the same. */
  private static final double SAME_M = 0.5;

  /** A braking point that was planned at a landmark lies no further from it. */
  private static final double AT_M = 0.01;

  private final Assignment assignment;
  private final PrintGrid grid;
  private final Sightings sightings;
  private final TellingCues cues;
  private final OverrunAllowance leeway;

  TellingBrake(Assignment assignment, PrintGrid grid, Sightings sightings, TellingCues cues) {
    this.assignment = assignment;
    this.grid = grid;
    this.sightings = sightings;
    this.cues = cues;
    this.leeway = new OverrunAllowance(assignment);
  }

  /**
   * One of the plan's own.
   *
   * @param of the target of the whole approach
   * @param first whether it is the first of its sheet, whose answer is told whole
   */
  PrintedApplication told(Application a, Target of, int line, boolean first) {
    Target target = a.forStep() ? of : a.target();
    int poorest = poorest(a, target);
    CaseResult told = a.told().get(poorest);
    return application(
        a,
        of,
        line,
        Optional.empty(),
        poorest,
        cues.of(a),
        first || told.answers().isEmpty()
            ? Optional.empty()
            : a.atBuffersMps().map(grid::speedAtMost),
        first);
  }

  /** That of a faster train. */
  PrintedApplication faster(Application a, Target of) {
    Optional<PrintedSpeed> speed = Optional.of(grid.speed(a.brakingSpeedMps()));
    return application(a, of, 0, speed, 0, cues.ofFaster(a), Optional.empty(), false);
  }

  private PrintedApplication application(
      Application a,
      Target of,
      int line,
      Optional<PrintedSpeed> speed,
      int poorest,
      PrintedCues cues,
      Optional<PrintedSpeed> atBuffers,
      boolean whole) {
    Target target = a.forStep() ? of : a.target();
    List<PrintedCase> cases = new ArrayList<>();
    for (int i = 0; i < a.told().size(); i++) {
      Optional<PrintedLatest> step =
          a.forStep() ? stepLatest(a.cases().get(i), a.told().get(i), of.atM()) : Optional.empty();
      cases.add(one(a, a.told().get(i), step, target, of, i == 0, i == poorest, whole));
    }
    return new PrintedApplication(
        line,
        a.target().standsThere()
            ? Optional.empty()
            : Optional.of(grid.speed(a.target().speedMps())),
        point(a, of.atM()),
        line > 0 ? PrintedSetBy.valueOf(a.setBy().name()) : PrintedSetBy.COMPUTED,
        speed,
        cues,
        cases,
        poorest,
        poorest == 0 ? Optional.empty() : site(a.told().get(poorest), target.atM()),
        whole && a.forStep()
            ? cases.get(poorest).toUse().map(use -> stepAnswer(a.cases().get(poorest), use))
            : Optional.empty(),
        atBuffers,
        bySpeed(a, of.atM()));
  }

  /** One row alone says no more than the point itself. */
  private List<PrintedSpeedRow> bySpeed(Application a, double targetM) {
    return a.bySpeed().size() < 2
        ? List.of()
        : a.bySpeed().stream()
            .map(
                r ->
                    new PrintedSpeedRow(
                        grid.speed(r.speedMps()),
                        r.planned()
                            .map(
                                p ->
                                    new PrintedSpeedRow.Planned(
                                        point(p, targetM), grid.pressure(p.mostPa()))),
                        r.poorest()
                            .map(
                                p ->
                                    new PrintedSpeedRow.Poor(
                                        p.rail(), point(p, targetM), technique(p.actions())))))
            .toList();
  }

  private PrintedSpeedRow.Point point(SpeedRow.Point p, double targetM) {
    return new PrintedSpeedRow.Point(
        grid.placeTo(p.atM(), targetM), p.asPlanned(), p.brakeOnPa() > 0, p.leavesFallback());
  }

  /** At the landmark that anchors it, where one does. */
  private PrintedPlace point(Application a, double targetM) {
    return a.cues()
        .anchor()
        .filter(l -> Math.abs(assignment.path().metresAt(l.location()) - a.brakingPointM()) < AT_M)
        .map(l -> grid.landmark(l.name(), a.brakingPointM(), targetM))
        .orElseGet(() -> grid.placeTo(a.brakingPointM(), targetM));
  }

  // Rails

  private PrintedCase one(
      Application a,
      CaseResult c,
      Optional<PrintedLatest> stepLatest,
      Target target,
      Target of,
      boolean planned,
      boolean told,
      boolean whole) {
    List<PrintedAnswer> answers = new ArrayList<>();
    for (FailureAnswer answer : c.answers()) {
      boolean used = answers.stream().noneMatch(PrintedAnswer::suffices);
      answers.add(answer(answer, target, told, whole, used));
    }
    return new PrintedCase(
        c.adhesion().name(),
        c.plannedM().map(at -> point(a, c, at, of, planned, whole && !planned)),
        c.ownRun(),
        c.ladder().stream()
            .map(r -> new PrintedRung(Telling.brake(r.brake()), latest(r, of.atM(), told && whole)))
            .toList(),
        stepLatest,
        answers,
        c.answers().isEmpty() ? Optional.empty() : Optional.of(protection(c, of.atM())));
  }

  /** Where it is earlier than the one to stand. */
  private Optional<PrintedLatest> stepLatest(CaseResult step, CaseResult stand, double ofM) {
    double standM = fallbackM(stand).orElse(Double.POSITIVE_INFINITY);
    return fallback(step)
        .filter(r -> fallbackM(step).filter(m -> m < standM).isPresent())
        .map(r -> latest(r, ofM, false));
  }

  private static Optional<Double> fallbackM(CaseResult result) {
    return fallback(result).flatMap(r -> r.latest().point()).map(Latest.Point::printedM);
  }

  private static Optional<Rung> fallback(CaseResult result) {
    return result.ladder().stream()
        .filter(r -> r.brake().role() == BrakeSystem.Role.FALLBACK)
        .findFirst();
  }

  /** Nothing where the train comes no faster to the place that is told on the planned rail. */
  private Seen cue(Application a, CaseResult c, double atM, Target of) {
    boolean same = grid.placeTo(atM, of.atM()).equals(grid.placeTo(a.brakingPointM(), of.atM()));
    return same && cues.noFaster(c, atM) ? Seen.NOTHING : cues.onAnotherRail(c, atM);
  }

  /**
   * @param own whether its cue and speed are told
   */
  private PrintedPoint point(
      Application a, CaseResult c, double atM, Target of, boolean planned, boolean own) {
    return new PrintedPoint(
        grid.placeTo(atM, of.atM()),
        own ? Optional.of(grid.speed(c.actions().get(0).speedMps())) : Optional.empty(),
        planned ? List.of(stage(new PrintedTrigger.AtPlace(), mainOf(c))) : technique(c.actions()),
        own ? cue(a, c, atM, of) : Seen.NOTHING,
        c.pastLastM().map(grid::lengthUp));
  }

  private List<PrintedOrder> technique(List<Action> actions) {
    return actions.stream().filter(a -> !a.command().isStand()).map(this::stage).toList();
  }

  private PrintedCommand mainOf(CaseResult c) {
    return new PrintedCommand.Brake(grid.pressure(c.mainPressurePa()), PrintedCommand.Stage.MAIN);
  }

  /** A braking told in one line has no stages, only pressures, speeds and times. */
  private PrintedOrder stage(Action action) {
    PrintedCommand does =
        action
            .command()
            .brake()
            .<PrintedCommand>map(
                b ->
                    new PrintedCommand.Brake(
                        grid.pressure(b.pressurePa()), PrintedCommand.Stage.MAIN))
            .orElseGet(() -> Telling.command(grid, action.command()));
    PrintedTrigger on =
        action
            .trigger()
            .match(
                place -> new PrintedTrigger.AtPlace(),
                up -> new PrintedTrigger.AtPlace(),
                down -> Telling.trigger(grid, down),
                after -> Telling.trigger(grid, after),
                start -> new PrintedTrigger.AtPlace(),
                stand -> new PrintedTrigger.AtPlace());
    return stage(on, does);
  }

  private static PrintedOrder stage(PrintedTrigger on, PrintedCommand does) {
    return new PrintedOrder(on, does, List.of());
  }

  private PrintedLatest latest(Rung rung, double targetM, boolean answered) {
    boolean seen = answered && rung.brake().role() == BrakeSystem.Role.FALLBACK;
    return rung.latest()
        .match(
            point ->
                new PrintedLatest.At(
                    grid.placeTo(point.printedM(), targetM),
                    grid.timeLeft(point.afterPlannedS()).seconds(),
                    seen ? sightings.at(point.printedM()) : Seen.NOTHING),
            nowhere -> new PrintedLatest.Nowhere(Reason.valueOf(nowhere.reason().name())));
  }

  private PrintedProtection protection(CaseResult c, double targetM) {
    if (c.protectedM().isEmpty()) {
      return new PrintedProtection.Nowhere();
    }
    double atM = c.protectedM().get();
    if (c.plannedM().filter(p -> Math.abs(atM - p) < SAME_M).isPresent()) {
      return new PrintedProtection.Same();
    }
    return new PrintedProtection.At(
        grid.placeTo(atM, targetM),
        c.protectedCostS().map(cost -> grid.timeNeeded(Math.max(0, cost))));
  }

  // Answers

  /**
   * @param used whether no brake before it suffices
   */
  private PrintedAnswer answer(
      FailureAnswer answer, Target target, boolean told, boolean whole, boolean used) {
    boolean suffices = leeway.bears(target, answer);
    boolean buffers =
        told
            && !answer.holds()
            && answer.met().endsShortM().isPresent()
            && (!whole || (suffices && used));
    return new PrintedAnswer(
        Telling.brake(answer.brake()),
        end(answer.met()),
        answer.holds()
            ? Optional.empty()
            : Optional.of(grid.speedAtMost(answer.speedAtTargetMps())),
        suffices,
        told && whole && leeway.withinUnknownRoom(target, answer),
        buffers ? leftToBuffers(answer, target) : Optional.empty());
  }

  private Optional<PrintedLength> leftToBuffers(FailureAnswer answer, Target target) {
    double shortM = answer.met().endsShortM().orElse(0.0);
    return target
        .stop()
        .flatMap(Target.Stop::buffersM)
        .map(b -> grid.room(Math.max(0, b - target.atM() + shortM)));
  }

  private PrintedEnd end(Met met) {
    return met.match(
        at ->
            at.shortM() >= 0
                ? new PrintedEnd.ShortBy(grid.room(at.shortM()))
                : new PrintedEnd.PastBy(grid.lengthUp(-at.shortM())),
        nowhere -> new PrintedEnd.Nowhere(Reason.valueOf(nowhere.reason().name())));
  }

  private PrintedApplication.StepAnswer stepAnswer(CaseResult step, PrintedAnswer use) {
    FailureAnswer own =
        step.answers().stream()
            .filter(x -> Telling.brake(x.brake()).equals(use.brake()))
            .findFirst()
            .orElseThrow();
    return new PrintedApplication.StepAnswer(
        use.brake(),
        own.holds() ? Optional.empty() : Optional.of(grid.speedAtMost(own.speedAtTargetMps())));
  }

  // The rail that is told first

  /**
   * The planned rail, unless the braking passes a low-adhesion site: then the one on which the
   * first fallback does worst.
   */
  private int poorest(Application a, Target target) {
    List<CaseResult> cases = a.told();
    int worst = 0;
    for (int i = 1; i < cases.size(); i++) {
      if (site(cases.get(i), target.atM()).isPresent() && !better(cases.get(i), cases.get(worst))) {
        worst = i;
      }
    }
    return worst;
  }

  /** The first site that the train is on between its braking point and the target. */
  private Optional<String> site(CaseResult c, double targetM) {
    if (c.plannedM().isEmpty() || c.answers().isEmpty()) {
      return Optional.empty();
    }
    double rearM = c.plannedM().get() - assignment.formation().lengthM();
    return assignment.route().lowAdhesion().stream()
        .filter(s -> s.applies().to(assignment.direction(), assignment.lines()))
        .filter(s -> beginsM(s) < targetM && endsM(s) > rearM)
        .min(Comparator.comparingDouble(this::beginsM))
        .map(LowAdhesionSite::name);
  }

  private double beginsM(LowAdhesionSite site) {
    return Math.min(
        assignment.path().metresAt(site.extent().from()),
        assignment.path().metresAt(site.extent().to()));
  }

  private double endsM(LowAdhesionSite site) {
    return Math.max(
        assignment.path().metresAt(site.extent().from()),
        assignment.path().metresAt(site.extent().to()));
  }

  /** Whether the first fallback does better on one rail than on another. */
  private static boolean better(CaseResult one, CaseResult other) {
    if (other.answers().isEmpty()) {
      return false;
    }
    FailureAnswer a = one.answers().get(0);
    FailureAnswer b = other.answers().get(0);
    double aM = a.met().endsShortM().orElse(Double.NEGATIVE_INFINITY);
    double bM = b.met().endsShortM().orElse(Double.NEGATIVE_INFINITY);
    return aM > bM || (aM == bM && a.speedAtTargetMps() < b.speedAtTargetMps());
  }
}
