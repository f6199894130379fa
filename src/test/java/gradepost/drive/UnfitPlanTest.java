package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.InstructionRun;
import gradepost.motion.NoEnd;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.PlanFailure;
import gradepost.plan.Trace;
import gradepost.plan.Trigger;
import gradepost.route.place.Direction;
import gradepost.stock.Stock;
import gradepost.stock.Traction;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.units.Pressure;
import gradepost.units.Span;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: each guard that makes a plan unfit for issue fires just beyond its bound, and does not
 * just within it. The bounds are written here anew: 1 mm/s over the ceiling (the rounding of a
 * printed speed), a centimetre past a mark, the policy's tolerance short of it, and what the
 * handles of the stock forbid.
 */
class UnfitPlanTest {
  private static final double OVER_MPS = 0.001;
  private static final double PAST_M = 0.01;
  private static final double HAIR = 1e-4;

  private static final double FIRST_PA = Pressure.ofPsi(15).pascals();
  private static final Command POWER = new Command.Power(0);
  private static final Command OFF = new Command.ShutOff();
  private static final Command BRAKE = new Command.Brake(FIRST_PA, Command.Stage.FIRST);
  private static final Command EASE = new Command.Brake(FIRST_PA / 2, Command.Stage.EASE);
  private static final Command MORE = new Command.Brake(FIRST_PA * 1.5, Command.Stage.MAIN);
  private static final Command RELEASE = new Command.Release();

  private static final Assignment MILL = Mill.assignment(Direction.FORWARD, "4-car");
  private static final Target.Stop STOP = Stops.target(MILL, MILL.calls().get(1));
  private static final Target AHEAD = Targets.of(MILL, Ceiling.of(MILL)).get(0);
  private static final double START_M = Stops.markM(MILL, MILL.calls().get(0));
  private static final Ceiling HIGH = ceiling(step(0, 10_000, 100));

  /** What a driver waits for and does then. */
  private record Act(Trigger trigger, Command command) {}

  private static Act after(double seconds, Command command) {
    return new Act(new Trigger.After(seconds), command);
  }

  private static final List<Act> OFF_AND_AWAY =
      List.of(new Act(new Trigger.Start(), POWER), after(12, OFF), after(3, OFF));

  private static final List<Act> TO_A_STAND =
      List.of(
          new Act(new Trigger.Start(), POWER),
          after(12, OFF),
          after(1, BRAKE),
          new Act(new Trigger.Standstill(), new Command.Stand()));

  private static CeilingStep step(double fromM, double toM, double mps) {
    return new CeilingStep(fromM, toM, mps, "made up");
  }

  private static Ceiling ceiling(CeilingStep... steps) {
    return new Ceiling(List.of(steps));
  }

  private static InstructionRun rerun(
      Assignment assignment, Ceiling ceiling, Target to, List<Act> acts) {
    InstructionRun rerun = new InstructionRun(assignment, new TrainModels(assignment), ceiling);
    List<Instruction> told =
        acts.stream().map(a -> new Instruction(to, a.trigger(), a.command())).toList();
    rerun.run(START_M, told, Map.of(to, 1));
    return rerun;
  }

  private static List<PlanFailure> over(Ceiling ceiling, List<Act> acts) {
    return rerun(MILL, ceiling, AHEAD, acts).failures();
  }

  @Test
  void theHighestSpeedMayNotBeOverTheCeiling() {
    double peak =
        rerun(MILL, HIGH, AHEAD, OFF_AND_AWAY).points().stream()
            .mapToDouble(Trace.Point::speedMps)
            .max()
            .orElseThrow();
    assertThat(peak).isGreaterThan(2);
    double most = peak - OVER_MPS;
    assertThat(over(ceiling(step(0, 10_000, most + HAIR)), OFF_AND_AWAY)).isEmpty();
    assertThat(over(ceiling(step(0, 10_000, most - HAIR)), OFF_AND_AWAY))
        .singleElement()
        .isInstanceOfSatisfying(
            PlanFailure.OverCeiling.class,
            f -> assertThat(f.speedMps()).isCloseTo(peak, within(HAIR)));
  }

  /** Between two points of the run the square of the speed is linear. */
  @Test
  void norMayTheSpeedAtWhichALowerCeilingIsMet() {
    List<Trace.Point> points = rerun(MILL, HIGH, AHEAD, TO_A_STAND).points();
    Trace.Point from = points.get(points.size() - 2);
    Trace.Point to = points.get(points.size() - 1);
    assertThat(from.speedMps()).isGreaterThan(0.1);
    assertThat(to.speedMps()).isZero();
    double at = (from.atM() + to.atM()) / 2;
    double met = from.speedMps() / Math.sqrt(2);
    assertThat(over(lower(at, met - OVER_MPS + HAIR), TO_A_STAND)).isEmpty();
    assertThat(over(lower(at, met - OVER_MPS - HAIR), TO_A_STAND))
        .singleElement()
        .isInstanceOfSatisfying(
            PlanFailure.OverCeiling.class,
            f -> {
              assertThat(f.atM()).isEqualTo(at);
              assertThat(f.speedMps()).isCloseTo(met, within(HAIR));
            });
  }

  private static Ceiling lower(double fromM, double mps) {
    return ceiling(step(0, fromM, 100), step(fromM, 10_000, mps));
  }

  @Test
  void theStandIsNoFurtherFromTheMarkThanThePolicyAllows() {
    double stands =
        rerun(MILL, HIGH, AHEAD, TO_A_STAND).points().stream()
            .mapToDouble(Trace.Point::atM)
            .max()
            .orElseThrow();
    double tolerance = 5;
    assertThat(MILL.policy().margins().stopTolerance().metres()).isEqualTo(tolerance);
    assertThat(stop(stands + tolerance - HAIR)).isEmpty();
    assertThat(stop(stands + tolerance + HAIR))
        .singleElement()
        .isInstanceOfSatisfying(
            PlanFailure.StopOutsideTolerance.class,
            f -> {
              assertThat(f.shortM()).isCloseTo(tolerance, within(2 * HAIR));
              assertThat(f.toleranceM()).isEqualTo(tolerance);
            });
    assertThat(stop(stands - PAST_M + HAIR)).isEmpty();
    assertThat(stop(stands - PAST_M - HAIR))
        .singleElement()
        .isInstanceOf(PlanFailure.StopOutsideTolerance.class);
  }

  /** What the stand is found to be for a mark here. */
  private static List<PlanFailure> stop(double markM) {
    Target.Stop there =
        new Target.Stop(
            STOP.name(), STOP.call(), "mark", markM, markM - 100, markM, Optional.empty());
    return rerun(MILL, HIGH, there, TO_A_STAND).failures();
  }

  static Stream<Arguments> movements() {
    Stock mill = Mill.stock();
    Stock downToo =
        Arrangements.with(
            mill.brakeForce(),
            mill.brakes(),
            new Traction(mill.traction().notches(), new Span(3), true));
    Stock onePipe = Arrangements.onePipe();
    Command one = new Command.Power(1);
    Command two = new Command.Power(2);
    return Stream.of(
        Arguments.of("one notch up", mill, List.of(POWER, one), true),
        Arguments.of("two notches up", mill, List.of(POWER, two), false),
        Arguments.of("the second notch from off", mill, List.of(one), false),
        Arguments.of("one notch down", downToo, List.of(POWER, one, POWER), true),
        Arguments.of("one notch down, forbidden", mill, List.of(POWER, one, POWER), false),
        Arguments.of("brake with power off", mill, List.of(POWER, OFF, BRAKE), true),
        Arguments.of("brake under power", mill, List.of(POWER, BRAKE), false),
        Arguments.of(
            "power after the release", mill, List.of(POWER, OFF, BRAKE, RELEASE, POWER), true),
        Arguments.of("power with the brake on", mill, List.of(POWER, OFF, BRAKE, POWER), false),
        Arguments.of("an ease", mill, List.of(POWER, OFF, BRAKE, EASE), true),
        Arguments.of("an ease, forbidden", onePipe, List.of(POWER, OFF, BRAKE, EASE), false),
        Arguments.of("more brake", onePipe, List.of(POWER, OFF, BRAKE, MORE), true));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("movements")
  void noHandleIsMovedAsTheStockForbids(
      String what, Stock stock, List<Command> commands, boolean allowed) {
    List<Act> acts = new ArrayList<>();
    for (Command command : commands) {
      acts.add(acts.isEmpty() ? new Act(new Trigger.Start(), command) : after(5, command));
    }
    Assignment train = Arrangements.assignment(Direction.FORWARD, 0, stock, Mill.policy());
    List<PlanFailure> failures = rerun(train, HIGH, AHEAD, acts).failures();
    if (allowed) {
      assertThat(failures).isEmpty();
    } else {
      assertThat(failures)
          .singleElement()
          .isInstanceOfSatisfying(
              PlanFailure.ForbiddenMovement.class,
              f -> assertThat(f.command()).isEqualTo(commands.get(commands.size() - 1)));
    }
  }

  @Test
  void whatIsWaitedForComes() {
    List<Trace.Point> points = rerun(MILL, HIGH, AHEAD, TO_A_STAND).points();
    double stands = points.get(points.size() - 1).atM();
    List<Act> braked = TO_A_STAND.subList(0, 3);
    assertThat(waited(braked, new Trigger.AtPlace(stands - 0.001))).isEmpty();
    assertThat(waited(braked, new Trigger.AtPlace(stands + 0.001))).hasSize(1);
    assertThat(waited(braked, new Trigger.SpeedDownTo(0.1))).isEmpty();
    assertThat(waited(TO_A_STAND, new Trigger.Start())).isEmpty();
    assertThat(waited(braked, new Trigger.Start())).hasSize(1);
    double shunt = balanceMps(0);
    List<Act> started = TO_A_STAND.subList(0, 1);
    assertThat(waited(started, new Trigger.SpeedUpTo(shunt - 0.1))).isEmpty();
    assertThat(waited(started, new Trigger.SpeedUpTo(shunt + 20))).hasSize(1);
    assertThat(waited(braked, new Trigger.SpeedUpTo(shunt - 0.1))).hasSize(1);
  }

  private static List<PlanFailure> waited(List<Act> acts, Trigger trigger) {
    List<Act> all = new ArrayList<>(acts);
    all.add(new Act(trigger, OFF));
    List<PlanFailure> failures = rerun(MILL, HIGH, AHEAD, all).failures();
    assertThat(failures).allMatch(f -> f instanceof PlanFailure.NeverComes);
    return failures;
  }

  /** On the level on which Mill begins. */
  private static double balanceMps(int notch) {
    TrainModels bench = new TrainModels(MILL);
    double mps = 0;
    while (bench.accelerationMps2(notch, mps, START_M) > 0) {
      mps += 0.01;
    }
    return mps;
  }

  /** The marks of two stations exchanged: the sheets would tell of them in the wrong order. */
  @Test
  void aMarkBehindTheTrainIsNoNextStop() {
    List<Call> calls = new ArrayList<>(MILL.calls());
    Collections.reverse(calls);
    Assignment back =
        new Assignment(
            MILL.route(),
            MILL.direction(),
            MILL.lines(),
            MILL.junctionRoutes(),
            calls,
            MILL.stock(),
            MILL.formation(),
            MILL.load(),
            MILL.policy(),
            MILL.restrictions());
    assertThatThrownBy(() -> Planner.plan(back))
        .isInstanceOf(NoEnd.class)
        .hasMessageContaining("is not ahead of it");
  }
}
