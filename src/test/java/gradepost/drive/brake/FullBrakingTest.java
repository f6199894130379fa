package gradepost.drive.brake;

import static gradepost.drive.EvenLine.LENGTH_M;
import static gradepost.drive.EvenLine.SAFE_MPS2;
import static gradepost.drive.EvenLine.brakedM;
import static gradepost.drive.EvenLine.gravityMps2;
import static gradepost.drive.EvenLine.safeM;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.motion.Stepper;
import gradepost.plan.fallback.Met;
import gradepost.task.Assignment;
import gradepost.task.Stops;
import gradepost.task.Target;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Validation: full service on the safe side, with a pencil; see {@link EvenLine}. */
class FullBrakingTest {
  private static final double NEAR_M = 1e-3;
  private static final Target STAND = new Target.Signal("S 1", 4000);
  private static final Target BOARD =
      new Target.Reduction(
          "curve",
          Target.Reduction.Kind.PERMANENT,
          "curve",
          4000,
          12,
          25,
          Optional.empty(),
          Optional.empty());

  /** One that is at a place with this speed, on the safe side. */
  private static FullBraking at(double permille, Target target, double atM, double mps) {
    Assignment assignment = EvenLine.of(permille);
    TrainModels models = new TrainModels(assignment);
    Stepper worst = models.worstStepper(assignment.policy().plannedAdhesion());
    worst.place(0, atM, mps);
    return new FullBraking(
        LENGTH_M, target, worst, models.worstRig(assignment.stock().service(), target));
  }

  @Test
  void aStandIsAsFarShortAsThePencilSays() {
    assertThat(at(0, STAND, 3000, 20).shortM()).isCloseTo(1000 - safeM(20, 0), within(NEAR_M));
    assertThat(at(0, STAND, 3800, 20).shortM()).isCloseTo(200 - safeM(20, 0), within(NEAR_M));
  }

  @Test
  void aLowerSpeedIsMetWhereTheTrainIsDownToIt() {
    assertThat(at(0, BOARD, 3000, 20).shortM()).isCloseTo(1000 - safeM(20, 12), within(NEAR_M));
    assertThat(at(0, BOARD, 3000, 12).shortM()).isCloseTo(1000, within(NEAR_M));
  }

  /** 180 t of it, 190.8 t with what turns. */
  @Test
  void aFallTakesItsShareOfTheBrake() {
    double fall = gravityMps2(-20, 180, EvenLine.CRUSH_T);
    assertThat(at(-20, STAND, 3000, 20).shortM())
        .isCloseTo(1000 - brakedM(20, 0, 0.5, 2.3, SAFE_MPS2, fall), within(NEAR_M));
  }

  @Test
  void whereItEndsIsTold() {
    double shortM = 1000 - safeM(20, 0);
    assertThat(at(0, STAND, 3000, 20).met().endsShortM().orElseThrow())
        .isCloseTo(shortM, within(NEAR_M));
    Met past = at(0, STAND, 3900, 20).met();
    assertThat(past.endsShortM().orElseThrow()).isCloseTo(100 - safeM(20, 0), within(NEAR_M));
    assertThat(past.inTime()).isFalse();
  }

  /** Asked so that the stand would be just before the end of the track, and just behind it. */
  @Test
  void behindTheEndOfTheTrackNothingIsMet() {
    Target last = new Target.Signal("S 9", LENGTH_M - 10);
    double needs = safeM(20, 0);
    assertThat(at(0, last, LENGTH_M - needs - 0.01, 20).met()).isInstanceOf(Met.At.class);
    assertThat(at(0, last, LENGTH_M - needs + 0.01, 20).met())
        .isEqualTo(new Met.Nowhere(Met.Reason.TRACK_ENDS));
  }

  @Test
  void norBehindTheBufferStops() {
    Assignment assignment = EvenLine.of(0);
    Target.Stop usual = Stops.target(assignment, assignment.calls().get(1));
    Target.Stop end =
        new Target.Stop(
            usual.name(),
            usual.call(),
            usual.markText(),
            5000,
            usual.platformStartM(),
            usual.platformEndM(),
            Optional.of(5030.0));
    double needs = safeM(20, 0);
    assertThat(at(0, end, 5030 - needs - 0.01, 20).met().endsShortM().orElseThrow())
        .isCloseTo(-30 + 0.01, within(NEAR_M));
    assertThat(at(0, end, 5030 - needs + 0.01, 20).met())
        .isEqualTo(new Met.Nowhere(Met.Reason.BUFFER_STOPS));
  }

  /** What is left of the brake on the steepest fall that it holds is nothing. */
  @Test
  void aFallBeatsTheBrakeOrDoesNot() {
    double beaten = SAFE_MPS2 / (9.80665 * 180 / EvenLine.CRUSH_T) * 1000;
    FullBraking steeper = at(-beaten - 0.05, STAND, 3000, 20);
    assertThat(steeper.gains(4000)).isTrue();
    assertThat(steeper.met()).isEqualTo(new Met.Nowhere(Met.Reason.GRADIENT_DEFEATS_BRAKE));
    assertThat(steeper.shortM()).isLessThan(-1e5);
    FullBraking lessSteep = at(-beaten + 0.05, STAND, 3000, 20);
    assertThat(lessSteep.gains(4000)).isFalse();
    assertThat(lessSteep.met()).isEqualTo(new Met.Nowhere(Met.Reason.TRACK_ENDS));
  }

  /** While the brake fills, a train on a fall still gathers speed: that is not a brake beaten. */
  @Test
  void aBrakeIsNotBeatenWhileItFills() {
    assertThat(at(-40, STAND, 3950, 20).gains(4000)).isFalse();
  }

  @Test
  void asksTheTrainWithoutMovingIt() {
    FullBraking braking = at(0, STAND, 3000, 20);
    double shortM = braking.met().endsShortM().orElseThrow();
    assertThat(braking.gains(4000)).isFalse();
    assertThat(braking.met().endsShortM().orElseThrow()).isEqualTo(shortM);
    assertThat(braking.gains(3100)).isFalse();
    assertThat(braking.speedAtMps(3001)).isCloseTo(20, within(1e-9));
  }

  /** {@code v² − 2a} times the rest, from where the brake is wholly on. */
  @Test
  void theSpeedAtAPlaceIsWhatTheBrakeHasLeft() {
    double full = 20 - SAFE_MPS2 * 2.3 / 2;
    double onM = 20 * 2.8 - SAFE_MPS2 * 2.3 * 2.3 / 6;
    double there = Math.sqrt(full * full - 2 * SAFE_MPS2 * (100 - onM));
    assertThat(at(0, STAND, 3900, 20).speedAtMps(4000)).isCloseTo(there, within(1e-4));
    assertThat(at(0, STAND, 3000, 20).speedAtMps(4000)).isZero();
  }
}
