package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.drive.grid.Places;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: a leg by the rules of driving on {@link EvenLine}, from a stand at 300
 * m to a signal, where a train that coasts on the level keeps its speed. Places of the print grid
 * are at 1.312 m and every 10 m.
 *
 * <p>By the policy power comes off at 68 km/h under 20 m/s, 12 s before a braking, and is not taken
 * for less than 10 s. A speed is kept 2 mph under a board, from 20 m before it on.
 */
class LegPlannerTest {
  private static final double KMH = 1 / 3.6;
  private static final double START_M = 300;

  private Assignment line = EvenLine.of(0);
  private List<CeilingStep> ceiling = List.of(step(0, 6000, 20));

  private static CeilingStep step(double fromM, double toM, double mps) {
    return new CeilingStep(fromM, toM, mps, "line");
  }

  private static Target signal(double atM) {
    return new Target.Signal("S 1", atM);
  }

  private static Target board(double atM, double mps) {
    return new Target.Reduction(
        "board",
        Target.Reduction.Kind.PERMANENT,
        "board",
        atM,
        mps,
        20,
        Optional.empty(),
        Optional.empty());
  }

  private LegPlanner.Leg leg(Target... targets) {
    TrainModels models = new TrainModels(line);
    DrivingStrategy usual = DrivingStrategy.of(line.policy().run());
    DriverRules rules = new DriverRules(line, models, new Ceiling(ceiling), START_M, usual);
    LegPlanner.Leg leg =
        new LegPlanner(line, models, rules, new Places(line))
            .plan(START_M, List.of(targets), usual, List.of(), start -> false);
    assertThat(leg.stalled()).isFalse();
    return leg;
  }

  private List<ApproachSolution> told(Target... targets) {
    return LegPlanner.told(leg(targets));
  }

  private static List<Command> commands(ApproachSolution piece) {
    return piece.instructions().stream().map(Instruction::command).toList();
  }

  private static boolean onGrid(double atM) {
    return Math.abs((atM - 1.312) / 10 - Math.rint((atM - 1.312) / 10)) < 1e-6;
  }

  /** The technique from this speed on, with a pencil. */
  private static PencilBraking pencil(double fromMps, Braking braking) {
    PencilBraking pencil = new PencilBraking(fromMps).after(braking.firstPa(), 3);
    double pa = braking.mainPa();
    for (int i = 0; i < braking.easeAtMps().length; i++) {
      pencil.downTo(pa, braking.easeAtMps()[i]);
      pa = braking.easePa()[i];
    }
    return pencil.downTo(pa, 0);
  }

  @Test
  void aStopIsBrakedForFromAPlaceOfTheGridWithPressuresThatEndAtIt() {
    ApproachSolution stop = told(signal(4000)).get(0);
    assertThat(commands(stop).subList(0, 5))
        .containsExactly(
            new Command.Power(0),
            new Command.Power(1),
            new Command.Power(2),
            new Command.Power(3),
            new Command.ShutOff());
    assertThat(stop.shutOffM()).as("by its speed").isEmpty();
    Braking usual = Braking.of(line, new TrainModels(line), signal(4000));
    double byHandM = pencil(68 * KMH, usual).distanceM();
    assertThat(stop.exactBrakingM().orElseThrow()).isCloseTo(4000 - byHandM, within(0.1));
    double brakingM = stop.brakingM().orElseThrow();
    assertThat(onGrid(brakingM)).isTrue();
    assertThat(4000 - byHandM - brakingM).isBetween(0.0, 10.0);
    assertThat(stop.brakingMps()).isCloseTo(68 * KMH, within(1e-3));
    assertThat(stop.endM()).isBetween(3995.0, 4000.0);
    double toldM = pencil(68 * KMH, stop.braking().orElseThrow()).distanceM();
    assertThat(stop.endM()).isCloseTo(brakingM + toldM, within(0.01));
    assertThat(stop.found()).isTrue();
  }

  /** Every 3 km it is looked whether the train rests; what is told is one approach all the same. */
  @Test
  void aLongApproachIsToldAsOne() {
    LegPlanner.Leg leg = leg(signal(5700));
    assertThat(leg.pieces()).hasSize(2);
    assertThat(leg.pieces().get(0).endM()).isEqualTo(3000);
    assertThat(leg.pieces().get(0).brakingM()).isEmpty();
    List<ApproachSolution> told = LegPlanner.told(leg);
    assertThat(told).hasSize(1);
    assertThat(told.get(0).fromM()).isEqualTo(START_M);
    assertThat(told.get(0).target()).isEqualTo(signal(5700));
    assertThat(commands(told.get(0)).subList(0, 2))
        .containsExactly(new Command.Power(0), new Command.Power(1));
    assertThat(told.get(0).instructions()).allMatch(i -> i.target().equals(signal(5700)));
    assertThat(commands(told.get(0))).endsWith(new Command.Stand());
  }

  /** On a short leg power comes off at a place, 12 s of coasting and at most 20 m more before. */
  @Test
  void powerComesOffBeforeTheBraking() {
    ApproachSolution stop = told(signal(1000)).get(0);
    double offM = stop.shutOffM().orElseThrow();
    double brakingM = stop.brakingM().orElseThrow();
    assertThat(onGrid(offM)).isTrue();
    assertThat(brakingM - offM).isBetween(12 * stop.brakingMps(), 12 * stop.brakingMps() + 20);
    assertThat(stop.brakingMps()).isBetween(11.0, 15.0);
    assertThat(stop.endM()).isBetween(995.0, 1000.0);
  }

  /** 36 km/h less 2 mph are 33 km/h as printed; the brake comes off 1 mph above that, at 35. */
  @Test
  void aLowerSpeedIsMetBeforeItsBoard() {
    ceiling = List.of(step(0, 2500, 20), step(2500, 6000, 10));
    List<ApproachSolution> told = told(board(2500, 10), signal(5000));
    assertThat(told).hasSize(2);
    ApproachSolution lower = told.get(0);
    assertThat(lower.endM()).isBetween(2465.0, 2480.0);
    assertThat(commands(lower)).endsWith(new Command.Release());
    assertThat(onGrid(lower.brakingM().orElseThrow())).isTrue();
    assertThat(told.get(1).brakingMps()).isBetween(33 * KMH, 35 * KMH);
    Instruction last = lower.instructions().get(lower.instructions().size() - 1);
    assertThat(last.trigger()).isEqualTo(new Trigger.SpeedDownTo(35 * KMH));
    assertThat(told.get(1).fromM()).isEqualTo(lower.endM());
  }

  /** Braked for together: the lower one, in time for the first. */
  @Test
  void aLowerSpeedSoonBehindAnotherIsBrakedForInItsPlace() {
    ceiling = List.of(step(0, 2500, 20), step(2500, 2540, 15), step(2540, 6000, 5));
    List<ApproachSolution> told = told(board(2500, 15), board(2540, 5), signal(5000));
    assertThat(told.get(0).target()).isEqualTo(board(2540, 5));
    assertThat(told.get(0).endM()).isBetween(2500.0, 2520.0);
    assertThat(told).hasSize(2);
  }

  /** 8 ‰ take 0.0736 m/s²: down to 2 mph under 17 m/s takes half a minute. */
  @Test
  void whereCoastingDoesItNoBrakeIsUsed() {
    line = EvenLine.of(8);
    ceiling = List.of(step(0, 1200, 20), step(1200, 6000, 17));
    ApproachSolution lower = told(board(1200, 14), signal(4000)).get(0);
    assertThat(commands(lower)).noneMatch(Command::isBrake).endsWith(new Command.ShutOff());
    double offM = lower.shutOffM().orElseThrow();
    assertThat(onGrid(offM)).isTrue();
    assertThat(lower.endM()).isEqualTo(1180);
    double wanted = 14 - 2 * 0.44704;
    Stepper end = new TrainModels(line).plannedStepper();
    lower.line().pickUp(end, lower.endM());
    assertThat(end.speedMps()).isBetween(wanted - 0.3, wanted);
    end.advance(new StopConditions().place(1200));
    assertThat(end.speedMps()).isLessThan(14);
  }

  /** 2 ‰ take 0.018 m/s²: it would take two minutes, and 45 s is the longest. */
  @Test
  void whereCoastingTakesTooLongTheBrakeIsUsed() {
    line = EvenLine.of(2);
    ceiling = List.of(step(0, 2500, 20), step(2500, 6000, 17));
    ApproachSolution lower = told(board(2500, 17), signal(5000)).get(0);
    assertThat(commands(lower)).anyMatch(Command::isBrake);
  }

  /**
   * From a low speed to a higher one that ends soon: at 35 km/h 10 s of power are 97 m, and
   * coasting and braking take 285 m more.
   */
  @Test
  void powerIsNotTakenForAMomentBeforeABraking() {
    ceiling = List.of(step(0, 2500, 20), step(2500, 2800, 10), step(2800, 6000, 20));
    assertThat(commands(told(board(2500, 10), signal(3160)).get(1))).noneMatch(Command::takesPower);
    List<ApproachSolution> longer = told(board(2500, 10), signal(3400));
    Instruction on = longer.get(1).instructions().get(0);
    assertThat(on)
        .isEqualTo(
            new Instruction(
                signal(3400),
                new Trigger.AtPlace(line.path().printedAtOrAfter(2800)),
                new Command.Power(0)));
  }

  @Test
  void whereTheTrainIsHeldBackMoreThanItPullsTheLegStalls() {
    line = EvenLine.broken(0, 1000, 80);
    TrainModels models = new TrainModels(line);
    DrivingStrategy usual = DrivingStrategy.of(line.policy().run());
    DriverRules rules = new DriverRules(line, models, new Ceiling(ceiling), START_M, usual);
    assertThat(
            new LegPlanner(line, models, rules, new Places(line))
                .plan(START_M, List.of(signal(4000)), usual, List.of(), start -> false)
                .stalled())
        .isTrue();
  }
}
