package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.policy.BrakePractice;
import gradepost.task.Target;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: where the brake goes on by speed; see {@link EvenLine}. A place may be
 * half a metre off.
 */
class BrakeCurveTest {
  private static final double AIM_M = 4000;
  private static final double OFF_M = 0.5;
  private static final Target STAND = new Target.Signal("S 1", AIM_M);
  private final TrainModels models = new TrainModels(EvenLine.of(0));

  private Braking to(double aimMps, double releaseMps) {
    boolean stand = releaseMps == 0;
    return new Braking(
        models.service(),
        aimMps,
        1e5,
        3,
        0,
        2e5,
        new double[] {stand ? 2 : releaseMps},
        new double[] {stand ? 0.6e5 : 0},
        BrakePractice.USUAL.lastEaseAlone(),
        false);
  }

  private BrakeCurve curve(Braking braking, double leastM) {
    return new BrakeCurve(
        models.settings().brake(), models.plannedStepper(), STAND, braking, AIM_M, leastM, 25);
  }

  private static PencilBraking toAStand(double mps) {
    return new PencilBraking(mps).after(1e5, 3).downTo(2e5, 2).downTo(0.6e5, 0);
  }

  @Test
  void aStandIsBrakedForWhereThePencilSays() {
    BrakeCurve curve = curve(to(0, 0), 1000);
    assertThat(curve.aimM()).isEqualTo(AIM_M);
    assertThat(curve.freeMps()).isZero();
    assertThat(curve.releaseMps()).isZero();
    assertThat(curve.staysOn()).isFalse();
    for (double mps : new double[] {10, 15, 20, 24.5}) {
      PencilBraking pencil = toAStand(mps);
      double placeM = AIM_M - pencil.distanceM();
      assertThat(curve.placeM(mps)).as("%s", mps).isCloseTo(placeM, within(OFF_M));
      assertThat(curve.seconds(mps)).isCloseTo(pencil.timeS(), within(0.01));
      assertThat(curve.mostMps(placeM)).isCloseTo(mps, within(0.02));
      assertThat(curve.moves(mps)).isEqualTo(3);
      assertThat(curve.endMps(mps)).isZero();
    }
    assertThat(curve.placeM(0)).isEqualTo(AIM_M);
    assertThat(curve.seconds(0)).isZero();
    assertThat(curve.moves(0)).isZero();
  }

  /** Straight between 20 and 20.5 m/s, where the true curve is a centimetre off that. */
  @Test
  void betweenTheSpeedsWorkedOutItIsStraight() {
    BrakeCurve curve = curve(to(0, 0), 1000);
    double low = curve.placeM(20);
    double high = curve.placeM(20.5);
    assertThat(curve.placeM(20.1)).isCloseTo(low + 0.2 * (high - low), within(1e-6));
    assertThat(curve.mostMps(low + 0.2 * (high - low))).isCloseTo(20.1, within(1e-6));
    double sooner = curve.seconds(20);
    assertThat(curve.seconds(20.1))
        .isCloseTo(sooner + 0.2 * (curve.seconds(20.5) - sooner), within(1e-6));
  }

  /** To 11 m/s, let go at 12: no brake is needed up to that. */
  @Test
  void aLowerSpeedIsFreeUpToWhereTheBrakeIsLetGo() {
    BrakeCurve curve = curve(to(11, 12), 1000);
    assertThat(curve.freeMps()).isEqualTo(12);
    assertThat(curve.releaseMps()).isEqualTo(12);
    assertThat(curve.placeM(12)).isEqualTo(AIM_M);
    assertThat(curve.endMps(11.5)).isEqualTo(11.5);
    double emptyS = 0.3 + 2e5 / EvenLine.pascals(15);
    PencilBraking pencil = new PencilBraking(20).after(1e5, 3).downTo(2e5, 12).after(0, emptyS);
    assertThat(curve.placeM(20)).isCloseTo(AIM_M - pencil.distanceM(), within(OFF_M));
    assertThat(curve.endMps(20)).isCloseTo(pencil.speedMps(), within(1e-3));
    assertThat(curve.seconds(20)).isCloseTo(pencil.timeS(), within(1e-3));
    assertThat(curve.mostMps(AIM_M + 1)).isEqualTo(12);
  }

  /** From 20 m/s it takes more than 450 m, from 15 m/s less. */
  @Test
  void beforeTheLegThereIsNoPlace() {
    assertThat(toAStand(20).distanceM()).isGreaterThan(450);
    assertThat(toAStand(15).distanceM()).isLessThan(449);
    BrakeCurve curve = curve(to(0, 0), AIM_M - 450);
    assertThat(curve.placeM(15)).isCloseTo(AIM_M - toAStand(15).distanceM(), within(OFF_M));
    assertThat(curve.placeM(20)).isEqualTo(Double.NEGATIVE_INFINITY);
    double most = curve.mostMps(AIM_M - 450);
    assertThat(toAStand(most + 0.5).distanceM()).isGreaterThan(450 - OFF_M);
    assertThat(toAStand(most).distanceM()).isLessThan(450 + OFF_M);
  }
}
