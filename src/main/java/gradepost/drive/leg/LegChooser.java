package gradepost.drive.leg;

import gradepost.drive.brake.PointLimits;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.HeldSpeeds;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.RuleBreaches;
import gradepost.drive.check.TestRoom;
import gradepost.drive.grid.ControlProfile;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.drive.grid.GuideChange;
import gradepost.drive.grid.HeldStretch;
import gradepost.drive.grid.LegCosts;
import gradepost.drive.grid.Places;
import gradepost.drive.grid.RunningTest;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.Step;
import gradepost.plan.Trace;
import gradepost.policy.Practice;
import gradepost.policy.RunRules;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Works out a leg in several ways that all obey the policy: by its rules alone, as fast as they
 * allow, and by guides that are the least energy at several prices of time and of a handle
 * movement. Each is run again from its printed numbers, and judged by that.
 */
public final class LegChooser {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final double startM;
  private final List<Target> targets;
  private final DrivingStrategy usual;
  private final DriverRules rules;
  private final Places places;
  private final Practice practice;
  private final List<RunningTest> tests;
  private final Map<Target, Integer> numbers = new HashMap<>();

  /** Several prices have the same guide. */
  private final Map<ControlProfile, Way> byGuide = new HashMap<>();

  private @Nullable LegCosts costs;

  /** From a stand at {@code startM} over the targets up to the stop that is the last of them. */
  public LegChooser(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      double startM,
      List<Target> targets) {
    this(assignment, bench, ceiling, startM, targets, PointLimits.NONE, List.of());
  }

  /**
   * The same with brakes that are on by these places, in whatever manner, and with running brake
   * tests: a way without one of them does not stand.
   */
  public LegChooser(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      double startM,
      List<Target> targets,
      PointLimits limits,
      List<RunningTest> tests) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.startM = startM;
    this.targets = targets;
    this.usual = DrivingStrategy.of(assignment.policy().run()).within(limits);
    this.tests = List.copyOf(tests);
    rules =
        new DriverRules(assignment, bench, ceiling, startM, usual)
            .with(tests.stream().filter(t -> t.offM() > startM).toList());
    places = new Places(assignment);
    practice = assignment.policy().practice();
    targets.forEach(t -> numbers.put(t, 0));
  }

  /**
   * One way of driving the leg, run again from its printed numbers.
   *
   * @param joints of the run, where each piece begins
   * @param idle movements for a moment, and stretches along which the train creeps
   * @param missing running brake tests for which it has no room
   * @param practice what an instruction is worth
   */
  public record Way(
      DrivingStrategy manner,
      LegPlanner.Leg leg,
      InstructionRun rerun,
      List<InstructionRun.Joint> joints,
      long idle,
      List<TestRoom.Missing> missing,
      Practice practice) {
    /** Whether the train comes through by the rules, and makes its running brake tests. */
    public boolean stands() {
      return !leg.stalled() && rerun.failures().isEmpty() && missing.isEmpty();
    }

    /** How long the leg takes, seconds. */
    public double timeS() {
      return rerun.timeS();
    }

    /** What a driver has to keep in mind: to take the handle through its notches is one. */
    long rows() {
      return Step.rows(rerun.actions());
    }

    /** Whether it stands, with no more to keep in mind, and no more movements for a moment. */
    boolean asGoodAs(Way other) {
      return stands() && idle <= other.idle && rows() <= other.rows();
    }

    /**
     * No handle moved for nothing; then fewer instructions, but for those that save more energy
     * than one is worth.
     */
    boolean betterThan(Way other) {
      if (stands() != other.stands()) {
        return stands();
      }
      if (idle != other.idle) {
        return idle < other.idle;
      }
      return dear() < other.dear();
    }

    /** Quicker, but not by movements for a moment that save hardly any time. */
    boolean quickerThan(Way other) {
      double savesS = practice.handles().movementSaves().seconds();
      return (stands() && !other.stands())
          || (stands() == other.stands()
              && timeS() + savesS * idle < other.timeS() + savesS * other.idle);
    }

    /**
     * Logarithm of the energy, and as much more for each of its rows as an instruction is worth.
     */
    double dear() {
      return Math.log(rerun.energyJ()) + rows() * Math.log(1 + practice.power().movement());
    }
  }

  /** By the rules alone. */
  public Way own() {
    return way(usual);
  }

  /** As fast as the rules allow. */
  public Way fastest() {
    return way(DrivingStrategy.of(fastest(usual.run())).within(usual.limits()));
  }

  /**
   * By the guide that costs least at these prices; empty where there is none, or it does not stand.
   *
   * @param timeW what a second is worth, watts for each kilogram
   * @param moveJ what a handle movement is worth, joules for each kilogram
   */
  public Optional<Way> guided(double timeW, double moveJ) {
    double kg = bench.plannedTrain().inertiaKg();
    double least = costs().solve(kg * timeW, kg * moveJ);
    if (least == Double.POSITIVE_INFINITY) {
      return Optional.empty();
    }
    return costs()
        .guide()
        .map(guide -> byGuide.computeIfAbsent(guide, g -> way(usual.by(g))))
        .filter(Way::stands);
  }

  private LegCosts costs() {
    if (costs == null) {
      costs = LegCosts.of(assignment, bench, rules, targets, startM);
    }
    return costs;
  }

  /** The leg as it is driven in this manner. */
  public Way way(DrivingStrategy manner) {
    return way(manner, leg(manner, List.of(), start -> false));
  }

  /** The same in a manner near that of another way: what is alike is not worked out again. */
  public Way way(DrivingStrategy manner, Way near) {
    return way(manner, leg(manner, near.leg().alike(near.manner(), manner), start -> false));
  }

  private LegPlanner.Leg leg(
      DrivingStrategy manner, List<LegPlanner.Stage> known, Predicate<LegStart> met) {
    return new LegPlanner(assignment, bench, rules, places)
        .plan(startM, targets, manner, known, met);
  }

  private Way way(DrivingStrategy manner, LegPlanner.Leg leg) {
    InstructionRun rerun = judged();
    rerun.startAt(startM);
    List<InstructionRun.Joint> joints = new ArrayList<>(List.of(rerun.joint()));
    for (int i = 0; i < leg.pieces().size(); i++) {
      if (!rerun.follow(leg.pieces().get(i).instructions(), numbers)) {
        break;
      }
      rerun.roll(leg.starts().get(i + 1).state().atM());
      joints.add(rerun.joint());
    }
    long idle = idle(rerun.made(), rerun.points());
    List<TestRoom.Missing> missing = TestRoom.missing(rerun, assignment.policy(), tests);
    return new Way(manner, leg, rerun, joints, idle, missing, practice);
  }

  /**
   * The same way with speeds held as one instruction where it does the same again and again, as far
   * as it is the better for it and no slower than is allowed.
   */
  Way held(Way way, double allowedS) {
    HoldFinder finder = new HoldFinder(assignment, bench, ceiling, rules.band());
    double withinS = Math.max(allowedS, way.timeS());
    Way best = way;
    for (int round = 0; round < bench.settings().choice().holds(); round++) {
      Way base = best;
      Optional<Way> better =
          finder.of(base.rerun().actions()).stream()
              .limit(bench.settings().choice().holdTries())
              .map(stretch -> holding(base, stretch))
              .filter(w -> w.timeS() <= withinS && w.betterThan(base) && holds(w))
              .findFirst();
      if (better.isEmpty()) {
        return best;
      }
      best = better.get();
    }
    return best;
  }

  private Way holding(Way base, HeldStretch stretch) {
    List<HeldStretch> holds = new ArrayList<>(base.manner().holds());
    holds.add(stretch);
    holds.sort(Comparator.comparingDouble(HeldStretch::fromM));
    return way(base.manner().holding(holds));
  }

  /**
   * Whether a way holds its speeds as it is told: along the whole stretches, in their bands, and
   * with no power where none may be taken.
   */
  boolean holds(Way way) {
    List<Instruction> told =
        way.leg().pieces().stream().flatMap(p -> p.instructions().stream()).toList();
    List<Command.Hold> holds = told.stream().flatMap(i -> i.command().hold().stream()).toList();
    boolean powered =
        way.manner().holds().stream()
            .filter(h -> h.hold().by().match(notch -> true, brake -> false))
            .anyMatch(h -> rules.powerForbidden(h.fromM(), h.hold().untilM()));
    return !powered
        && holds.equals(way.manner().holds().stream().map(HeldStretch::hold).toList())
        && HoldFinder.repeats(way.rerun().made())
        && new HeldSpeeds(assignment, bench, ceiling).failures(startM, told, numbers).isEmpty();
  }

  /** Movements for a moment, and stretches along which the train creeps. */
  private long idle(List<Action> actions, List<Trace.Point> points) {
    return RuleBreaches.count(
            actions,
            points,
            RuleBreaches.Limits.of(assignment.policy(), assignment.stock().traction()),
            bench.plannedBalance()::effortMps2)
        + Creeping.count(points, ceiling, practice);
  }

  /**
   * What a change of a way's guide does, worked out from where it begins to where the train is
   * again as it was; from there on it is taken to go on as it did. No gain where it does not stand,
   * or has too many more movements.
   */
  ChangeEffect effect(Way base, GuideChange change) {
    DrivingStrategy manner = base.manner().by(base.manner().guide().with(List.of(change)));
    LegMeeting meeting =
        new LegMeeting(
            bench.settings().choice(),
            base.leg(),
            change.upToM() + bench.settings().grid().nearM());
    LegPlanner.Leg part = leg(manner, base.leg().alike(base.manner(), manner), meeting::met);
    int from = base.leg().sharedPieces(part);
    double fromM = base.leg().starts().get(from).state().atM();
    int to = meeting.index();
    double toM = base.leg().starts().get(to).state().atM();
    if (part.stalled()) {
      return ChangeEffect.none(change, fromM, toM);
    }
    if (meeting.lost()) {
      LegStart last = part.starts().get(part.starts().size() - 1);
      return ChangeEffect.none(change, fromM, last.state().atM());
    }
    InstructionRun run = judged();
    InstructionRun.Joint began = base.joints().get(from);
    run.startFrom(began);
    for (ApproachSolution piece : part.pieces().subList(from, part.pieces().size())) {
      if (!run.follow(piece.instructions(), numbers) || !run.failures().isEmpty()) {
        return ChangeEffect.none(change, fromM, toM);
      }
    }
    run.roll(toM);
    InstructionRun.Joint was = base.joints().get(to);
    InstructionRun.Joint is = run.joint();
    long moves =
        Step.rows(run.actions())
            - Step.rows(base.rerun().actions().subList(began.actions(), was.actions()));
    if (moves > 1) {
      return ChangeEffect.none(change, fromM, toM);
    }
    long idle =
        idle(run.made(), run.points())
            - idle(
                base.rerun().made().subList(began.made(), was.made()),
                base.rerun().points().subList(began.points(), was.points()));
    double kg = bench.plannedTrain().inertiaKg();
    double slowerJ = kg / 2 * (square(was.train().speedMps()) - square(is.train().speedMps()));
    double behindM = was.train().atM() - is.train().atM();
    double behindS = behindM == 0 ? 0 : behindM / Math.max(1, is.train().speedMps());
    return new ChangeEffect(
        change,
        fromM,
        toM,
        is.energyJ() - (was.energyJ() - began.energyJ()) + slowerJ,
        is.train().timeS() - was.train().timeS() + behindS,
        moves,
        idle);
  }

  private InstructionRun judged() {
    return new InstructionRun(assignment, bench, ceiling)
        .within(bench.settings().check().stopMarginM());
  }

  private static double square(double x) {
    return x * x;
  }

  /** Close under the ceiling, and no coasting that only spares energy. */
  private RunRules fastest(RunRules rules) {
    double unit = assignment.route().units().speedUnitMps();
    return rules.with(new Speed(unit), new Speed(3 * unit), new Span(0));
  }
}
