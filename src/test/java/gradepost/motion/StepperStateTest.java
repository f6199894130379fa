package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.brake.TrainModels;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Stock;
import gradepost.stock.law.FrictionTable;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: a run that is saved, told or taken over is the same run. */
class StepperStateTest {
  private final TrainModels models = new TrainModels(EvenLine.of(0));
  private final Stepper stepper = models.plannedStepper();
  private final TrainBrake brake = models.service();

  private void pass(double seconds) {
    stepper.advance(new StopConditions().time(stepper.timeS() + seconds));
  }

  /** Saved while the cylinders fill, with a demand of 2 bar and 0.7 s of it gone. */
  @Test
  void aStateIsTheTrainItsHandlesAndItsCylinders() {
    stepper.place(100, 1000, 20);
    stepper.brake(brake, 2e5);
    pass(0.7);
    Snapshot kept = stepper.save();
    assertThat(kept.timeS()).isEqualTo(stepper.timeS());
    assertThat(kept.atM()).isEqualTo(stepper.atM());
    assertThat(kept.speedMps()).isEqualTo(stepper.speedMps());
    assertThat(kept.demandPa()).isEqualTo(2e5);
    assertThat(kept.notch()).isEqualTo(-1);
    pass(5);
    double thenMps = stepper.speedMps();
    double thenPa = stepper.pressurePa();
    stepper.place(0, 0, 5);
    stepper.power(2);
    stepper.restore(kept);
    assertThat(stepper.notch()).isEqualTo(-1);
    assertThat(stepper.demandPa()).isEqualTo(2e5);
    pass(5);
    assertThat(stepper.speedMps()).isEqualTo(thenMps);
    assertThat(stepper.pressurePa()).isEqualTo(thenPa);
    Stepper other = models.plannedStepper();
    other.restore(kept);
    other.advance(new StopConditions().time(other.timeS() + 5));
    assertThat(other.speedMps()).isEqualTo(thenMps);
  }

  @Test
  void aSavedNotchComesBack() {
    stepper.place(0, 1000, 1);
    stepper.power(0);
    Snapshot kept = stepper.save();
    assertThat(kept.notch()).isZero();
    stepper.shutOff();
    assertThat(stepper.notch()).isEqualTo(-1);
    stepper.restore(kept);
    assertThat(stepper.notch()).isZero();
    stepper.place(0, 1000, 1);
    assertThat(stepper.notch()).isEqualTo(-1);
  }

  /** 44 kN on 172.8 t; asking changes no handle. */
  @Test
  void whatAnotherNotchWouldGiveIsAskedWithoutTakingIt() {
    stepper.place(0, 1000, 2);
    assertThat(stepper.accelerationInNotch(0)).isCloseTo(44 / EvenLine.SEATED_T, within(1e-9));
    assertThat(stepper.notch()).isEqualTo(-1);
    assertThat(stepper.accelerationMps2()).isZero();
    stepper.power(0);
    assertThat(stepper.accelerationInNotch(-1)).isZero();
    assertThat(stepper.accelerationMps2()).isCloseTo(44 / EvenLine.SEATED_T, within(1e-9));
  }

  /** Every movement of a handle is a point, and every end of a step. */
  @Test
  void aRecorderIsToldOfHandlesAndSteps() {
    List<double[]> points = new ArrayList<>();
    stepper.place(0, 1000, 2);
    stepper.record((t, s, v, p, n) -> points.add(new double[] {t, s, v, p, n}));
    assertThat(points).hasSize(1);
    assertThat(points.get(0)).containsExactly(0, 1000, 2, 0, -1);
    stepper.power(0);
    assertThat(points.get(1)).containsExactly(0, 1000, 2, 0, 0);
    pass(1);
    assertThat(points.get(points.size() - 1)[0]).isEqualTo(1);
    assertThat(points.get(points.size() - 1)[1]).isEqualTo(stepper.atM());
    int before = points.size();
    stepper.shutOff();
    stepper.brake(brake, 1e5);
    assertThat(points).hasSize(before + 2);
    stepper.record(null);
    pass(1);
    assertThat(points).hasSize(before + 2);
  }

  /** It empties by 15 psi a second, 0.3 s after it is let go. */
  @Test
  void aBrakeIsOffWhenEveryCylinderIsEmptyAndStaysSo() {
    stepper.place(0, 1000, 20);
    assertThat(stepper.brakeOff()).isTrue();
    stepper.brake(brake, EvenLine.pascals(15));
    assertThat(stepper.brakeOff()).isFalse();
    pass(5);
    stepper.brake(brake, 0);
    assertThat(stepper.brakeOff()).isFalse();
    pass(1.29);
    assertThat(stepper.brakeOff()).isFalse();
    pass(0.02);
    assertThat(stepper.brakeOff()).isTrue();
  }

  /** No more than full, and of a brake that cannot be eased a lower demand is a release. */
  @Test
  void whatIsAskedIsWhatTheBrakeCan() {
    stepper.place(0, 1000, 20);
    stepper.brake(brake, 9e5);
    assertThat(stepper.demandPa()).isEqualTo(brake.fullPa());
    Stock stock = EvenLine.of(0).stock();
    BrakeSystem automatic = stock.brakes().get(1);
    TrainBrake auto = models.worstRig(automatic);
    stepper.place(0, 1000, 20);
    stepper.brake(auto, 2e5);
    pass(10);
    stepper.brake(auto, 2e5);
    assertThat(stepper.demandPa()).isEqualTo(2e5);
    stepper.brake(auto, 1.9e5);
    assertThat(stepper.demandPa()).isZero();
  }

  /** What a search takes for never: eight kilometres on. */
  @Test
  void aTrainThatRollsOnIsGivenUpAfterEightKilometres() {
    stepper.place(0, 1000, 20);
    assertThat(stepper.advance(new StopConditions().hopeless(1500))).isEqualTo(StopReason.PLACE);
    assertThat(stepper.atM()).isEqualTo(9500);
  }

  /**
   * Friction that falls evenly from 0.3 at 5 m/s to 0.1 at 15: braked distance is the integral of
   * {@code v/a}, by fine strips. At the mean from 20 m/s the train of one vehicle gives 1 m/s²:
   * 20²/2 metres, whatever the friction is on the way.
   */
  @Test
  void aTableOfFrictionBrakesByItsStraightLines() {
    FrictionTable table =
        new FrictionTable(
            List.of(
                new FrictionTable.Point(new Speed(5), 0.3),
                new FrictionTable.Point(new Speed(15), 0.1)));
    Textbook train = Textbook.train(40, 0).brake(1).statedFrom(new Speed(20)).blocks(table);
    Stepper braked = train.onGradient(0);
    double perFriction = strips(0, 20) / 200;
    for (double toMps : new double[] {17, 15, 10, 5, 2, 0}) {
      braked.place(0, 0, 20);
      braked.brake(train.rig(), Textbook.FULL_PA);
      braked.advance(new StopConditions().speedDown(toMps));
      assertThat(braked.atM())
          .as("to %s", toMps)
          .isCloseTo(strips(toMps, 20) / perFriction, within(0.01));
    }
  }

  /** The integral of {@code v/f}. */
  private static double strips(double fromMps, double toMps) {
    int n = 100_000;
    double h = (toMps - fromMps) / n;
    double sum = 0;
    for (int i = 0; i < n; i++) {
      double v = fromMps + (i + 0.5) * h;
      double f = v < 5 ? 0.3 : v > 15 ? 0.1 : 0.3 - 0.02 * (v - 5);
      sum += v / f * h;
    }
    return sum;
  }
}
