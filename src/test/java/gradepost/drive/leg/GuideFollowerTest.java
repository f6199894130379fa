package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.ControlProfile;
import gradepost.drive.grid.ControlProfile.Notch;
import gradepost.drive.grid.ControlProfile.PowerPhase;
import gradepost.drive.grid.ControlProfile.SpeedPoint;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.motion.Stepper;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Validation, by hand: a run on {@link EvenLine} under 20 m/s keeps to a profile as far as the
 * rules let it. By them power comes off at 68 km/h, 2 mph under the 72.
 */
class GuideFollowerTest {
  private static final double KMH = 1 / 3.6;
  private static final double CEILING = 20;

  /** The first comes off at 14.95 m/s, which is 54 km/h as printed. */
  private static final ControlProfile PROFILE =
      new ControlProfile(
          List.of(
              new PowerPhase(0, List.of(new Notch(0, 1), new Notch(200, 9)), 500, 14.95),
              new PowerPhase(2000, List.of(new Notch(2000, 2)), 2300, Double.POSITIVE_INFINITY)),
          List.of(),
          List.of(new SpeedPoint(0, 10), new SpeedPoint(5000, 10)));

  private final Assignment even = EvenLine.of(0);
  private final TrainModels models = new TrainModels(even);
  private final Stepper stepper = models.plannedStepper();
  private GuideFollower follower = follower(PROFILE);

  private GuideFollower follower(ControlProfile profile) {
    DriverRules rules =
        new DriverRules(
            even,
            models,
            new Ceiling(List.of(new CeilingStep(0, 6000, CEILING, "line"))),
            0,
            DrivingStrategy.of(even.policy().run()).by(profile));
    return new GuideFollower(rules, stepper, 3, PlannerSettings.usual());
  }

  private GuideFollower at(double atM, double mps) {
    stepper.place(0, atM, mps);
    return follower;
  }

  @Test
  void powerComesOffBySpeedOfTheProfileOrOfTheRules() {
    assertThat(at(300, 10).offMps(CEILING)).isCloseTo(54 * KMH, within(1e-9));
    assertThat(at(300, 10).offMps(12)).as("39 of 43 km/h").isCloseTo(39 * KMH, within(1e-9));
    assertThat(at(2100, 10).offMps(CEILING)).isCloseTo(68 * KMH, within(1e-9));
    assertThat(at(-10, 10).offMps(CEILING)).isCloseTo(68 * KMH, within(1e-9));
    follower = follower(oneTo(0.1));
    assertThat(at(300, 0).offMps(CEILING)).isCloseTo(2 * KMH, within(1e-9));
  }

  private static ControlProfile oneTo(double mps) {
    return new ControlProfile(
        List.of(new PowerPhase(0, List.of(new Notch(0, 0)), 500, mps)), List.of(), List.of());
  }

  @Test
  void powerIsWantedUpToAUnitUnderItsSpeed() {
    assertThat(at(300, 53 * KMH - 0.01).wantsPower(CEILING)).isTrue();
    assertThat(at(300, 53 * KMH + 0.01).wantsPower(CEILING)).isFalse();
    assertThat(at(1000, 10).wantsPower(CEILING)).isFalse();
    assertThat(at(1000, 7.4).wantsPower(CEILING)).as("far behind").isTrue();
  }

  /** The profile's notch, but none that the handle has not; else that of the rules. */
  @Test
  void theNotchIsThatOfTheProfileWhereTheTrainIsAboutThere() {
    assertThat(at(100, 10).notchFor(CEILING, false)).isEqualTo(1);
    assertThat(at(300, 10).notchFor(CEILING, false)).isEqualTo(3);
    assertThat(at(2100, 10).notchFor(CEILING, false)).isEqualTo(2);
    assertThat(at(100, 7.4).holds()).isFalse();
    assertThat(at(1000, 10).holds()).isFalse();
    assertThat(at(1000, 10).notchFor(2, false)).as("at 2 m/s the first gains").isZero();
  }

  @Test
  void aTrainRestsWhereItIsWellPastThePower() {
    assertThat(at(-10, 10).rests()).isTrue();
    assertThat(at(300, 10).rests()).isFalse();
    assertThat(at(560, 10).rests()).isFalse();
    assertThat(at(560.1, 10).rests()).isTrue();
    assertThat(at(2360, 10).rests()).isFalse();
    assertThat(follower.nextM()).isEqualTo(Double.POSITIVE_INFINITY);
  }

  @Test
  void powerThatHasComeToItsSpeedIsOver() {
    at(300, 50 * KMH).shutOff();
    assertThat(at(301, 50 * KMH).wantsPower(CEILING)).as("taken off before").isTrue();
    at(400, 54 * KMH).shutOff();
    assertThat(at(401, 50 * KMH).wantsPower(CEILING)).isFalse();
    assertThat(at(2000, 10).wantsPower(CEILING)).as("the next one").isTrue();
  }

  @Test
  void powerThatHasComeToItsPlaceIsOver() {
    assertThat(at(2299, 10).offAtPlace()).isFalse();
    assertThat(at(2300, 10).offAtPlace()).isTrue();
    follower.passed();
    assertThat(at(2300, 10).offAtPlace()).isFalse();
    assertThat(at(2310, 10).wantsPower(CEILING)).isFalse();
    assertThat(follower.guides()).isTrue();
    assertThat(follower(ControlProfile.NONE).guides()).isFalse();
  }

  /** Before the first power there is none to be over. */
  @Test
  void shuttingOffBeforeTheFirstPowerEndsNone() {
    at(-10, 15).shutOff();
    assertThat(at(0, 10).wantsPower(CEILING)).isTrue();
  }
}
