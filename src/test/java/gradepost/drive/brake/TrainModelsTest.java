package gradepost.drive.brake;

import static gradepost.drive.EvenLine.SEATED_T;
import static gradepost.drive.EvenLine.gravityMps2;
import static gradepost.drive.EvenLine.pascals;
import static gradepost.drive.EvenLine.plannedMps2;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import org.junit.jupiter.api.Test;

/** Validation, with a pencil: accelerations and pressures of the planned train. */
class TrainModelsTest {
  private final TrainModels level = new TrainModels(EvenLine.of(0));

  /** Two motor cars with 22 kN each in the first notch, up to 6 mph. */
  @Test
  void whatANotchGivesIsItsEffortOverAllThatIsMovedAndTurned() {
    assertThat(level.accelerationMps2(0, 2, 1000)).isCloseTo(44 / SEATED_T, within(1e-9));
    assertThat(level.accelerationMps2(-1, 2, 1000)).isCloseTo(0, within(1e-9));
    TrainModels fall = new TrainModels(EvenLine.of(-10));
    assertThat(fall.accelerationMps2(-1, 2, 1000))
        .isCloseTo(-gravityMps2(-10, 162, SEATED_T), within(1e-9));
  }

  @Test
  void aPressureTakesOffWhatIsAboveTheSprings() {
    assertThat(level.brakedMps2(level.service(), 10, pascals(50))).isCloseTo(0.85, within(1e-9));
    assertThat(level.brakedMps2(level.service(), 10, pascals(27)))
        .isCloseTo(plannedMps2(27), within(1e-9));
    assertThat(level.brakedMps2(level.service(), 10, pascals(3))).isZero();
  }

  /** Up to the step of the gauge, so that it never takes less off. */
  @Test
  void thePressureForADecelerationIsUpToTheGauge() {
    double needs = plannedMps2(27);
    double exact = pascals(27);
    assertThat(level.servicePressurePa(10, needs, pascals(1))).isCloseTo(exact, within(1e-6));
    assertThat(level.servicePressurePa(10, needs + 1e-4, pascals(1)))
        .isCloseTo(pascals(28), within(1e-6));
    assertThat(level.servicePressurePa(10, needs, 1e4)).isCloseTo(1.9e5, within(1e-6));
    assertThat(level.servicePressurePa(10, 0, pascals(1))).isCloseTo(pascals(4), within(1e-6));
    assertThat(level.servicePressurePa(10, -1, pascals(1))).isCloseTo(pascals(4), within(1e-6));
  }

  /**
   * Cast iron by {@code f = (V + 100)/(5V + 100)}, V in km/h: of its mean over the distance from 60
   * mph (96.56 km/h) to a stand, see {@link gradepost.drive.HandWorkedTest}.
   */
  @Test
  void blocksWhoseFrictionVariesTakeTheirShareOffAtEachSpeed() {
    TrainModels iron = new TrainModels(EvenLine.castIron());
    double sixty = 96.56064;
    double integral = 2.5 * sixty * sixty - 400 * sixty + 40_000 * Math.log(1 + sixty / 100);
    double mean = sixty * sixty / 2 / integral;
    double at36 = 136.0 / 280;
    assertThat(iron.brakedMps2(iron.service(), 10, pascals(27)))
        .isCloseTo(plannedMps2(27) * at36 / mean, within(1e-6));
    double halfOfIt = plannedMps2(27) * at36 / mean / 2;
    assertThat(iron.servicePressurePa(10, halfOfIt, pascals(0.5)))
        .isCloseTo(pascals(15.5), within(1e-6));
  }
}
