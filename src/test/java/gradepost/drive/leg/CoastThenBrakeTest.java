package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.ControlProfile;
import gradepost.drive.grid.ControlProfile.SpeedPoint;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.drive.grid.GuideDependencies;
import gradepost.motion.Stepper;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: how a braking point is come to on {@link EvenLine} under 20 m/s. By
 * the policy a train coasts for 12 s before, and down to three quarters of its speed at most.
 */
class CoastThenBrakeTest {
  private static final double COASTS_S = 12;
  private static final Target STOP = new Target.Signal("S 1", 3000);
  private static final Target BOARD =
      new Target.Reduction(
          "board",
          Target.Reduction.Kind.PERMANENT,
          "board",
          2000,
          10,
          20,
          Optional.empty(),
          Optional.empty());

  private Assignment line = EvenLine.of(0);
  private ControlProfile profile = ControlProfile.NONE;
  private TrainModels models = new TrainModels(line);
  private Stepper stepper = models.plannedStepper();
  private final RunStates run = new RunStates();

  private CoastThenBrake on(double permille) {
    line = EvenLine.of(permille);
    models = new TrainModels(line);
    stepper = models.plannedStepper();
    DriverRules rules =
        new DriverRules(
            line,
            models,
            new Ceiling(List.of(new CeilingStep(0, 6000, 20, "line"))),
            0,
            DrivingStrategy.of(line.policy().run()).by(profile));
    return new CoastThenBrake(line, models, rules, stepper);
  }

  private void coasting(double timeS, double atM, double mps) {
    stepper.place(timeS, atM, mps);
    run.add(stepper.save());
  }

  private void powered(double atM, double mps) {
    stepper.place(0, atM, mps);
    stepper.power(0);
    run.add(stepper.save());
  }

  /** Off at 1000 m, at 15 m/s. */
  @Test
  void whatHasBeenCoastedCounts() {
    CoastThenBrake level = on(0);
    powered(990, 15);
    coasting(1, 1000, 15);
    for (double x : new double[] {1000, 1090, 1180}) {
      level.approach(run, x);
      assertThat(stepper.atM()).as("from %f", x).isCloseTo(1000 + COASTS_S * 15, within(1e-3));
    }
    level.approach(run, 1250);
    assertThat(stepper.atM()).isEqualTo(1250);
  }

  @Test
  void powerThatIsOnComesOff() {
    CoastThenBrake level = on(0);
    powered(1000, 15);
    level.approach(run, 1000);
    assertThat(stepper.notch()).isEqualTo(-1);
    assertThat(stepper.atM()).isCloseTo(1000 + COASTS_S * 15, within(1e-3));
  }

  /** 30 ‰ take 0.276 m/s²: from 10 to 7.5 m/s in nine seconds. */
  @Test
  void coastingEndsWhereItCostsTooMuchSpeed() {
    CoastThenBrake rising = on(30);
    coasting(0, 1000, 10);
    rising.approach(run, 1000);
    assertThat(stepper.speedMps()).isCloseTo(7.5, within(1e-6));
  }

  /** 10 ‰ falling: a tenth of a metre a second under the ceiling it is at that in a second. */
  @Test
  void coastingEndsAtTheCeiling() {
    CoastThenBrake falling = on(-10);
    coasting(0, 1000, 19.9);
    falling.approach(run, 1000);
    assertThat(stepper.speedMps()).isCloseTo(20, within(1e-6));
    coasting(0, 1000, 20);
    falling.approach(run, 1000);
    assertThat(stepper.timeS()).as("there already").isCloseTo(COASTS_S, within(1e-6));
  }

  @Test
  void fromACheckingApplicationItIsBrakedAtOnce() {
    CoastThenBrake falling = on(-10);
    stepper.place(0, 1000, 15);
    stepper.brake(models.slowing(), 1e5);
    run.add(stepper.save());
    falling.approach(run, 1050);
    assertThat(stepper.atM()).isEqualTo(1050);
    assertThat(stepper.demandPa()).isEqualTo(1e5);
  }

  /** 20 m before it, unless the train is slower there anyway. */
  @Test
  void aSpeedIsAimedForBeforeItsBoard() {
    CoastThenBrake level = on(0);
    Braking braking = level.braking(BOARD);
    coasting(0, 1000, 12);
    assertThat(level.aimM(run, BOARD, braking)).as("not come to yet").isEqualTo(1980);
    coasting(90, 2500, 12);
    assertThat(level.aimM(run, BOARD, braking)).isEqualTo(1980);
    assertThat(level.aimM(run, STOP, level.braking(STOP))).isEqualTo(3000);
    RunStates slow = new RunStates();
    stepper.place(0, 1000, braking.aimMps());
    slow.add(stepper.save());
    stepper.place(200, 2500, braking.aimMps());
    slow.add(stepper.save());
    assertThat(level.aimM(slow, BOARD, braking)).isEqualTo(2000);
  }

  /** 2 mph under 10 m/s are 33 km/h; by the profile the brake comes off for less. */
  @Test
  void aProfileLowersTheSpeedOfARelease() {
    assertThat(on(0).braking(BOARD).aimMps()).isCloseTo(33 / 3.6, within(1e-9));
    profile = new ControlProfile(List.of(), List.of(new SpeedPoint(1990, 7)), List.of());
    CoastThenBrake guided = on(0);
    GuideDependencies asked = guided.askedFromNow();
    assertThat(guided.braking(BOARD).aimMps()).isLessThan(28 / 3.6);
    assertThat(asked.sameOf(profile, ControlProfile.NONE)).as("it has been asked").isFalse();
    assertThat(guided.braking(STOP).aimMps()).isZero();
  }
}
