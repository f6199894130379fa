package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.Planner;
import gradepost.drive.Scattered;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.Spread;
import gradepost.plan.Trigger;
import gradepost.policy.Scatter;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: of one cause of scatter, the run at each percentile is the one that
 * differs by that percentile of a normal distribution (5 % lie beyond 1.645 deviations, half beyond
 * 0.674 to either side; the cut at three moves that by less than the drawing does). See {@link
 * EvenLine}.
 */
class SpreadsTest {
  private static final int SAMPLES = 2000;
  private static final double FIVE = 1.645;
  private static final double TEN = 1.282;
  private static final Span AT_ONCE = new Span(0);
  private static final Speed AS_PLANNED = new Speed(0);

  private static Approach approach(Scatter scatter) {
    Plan plan = Planner.plan(Scattered.by(Optional.of(scatter), EvenLine.of(0)));
    assertThat(plan.approaches()).hasSize(1);
    return plan.approaches().get(0);
  }

  /** How far short of the mark a run ends, carried out as printed. */
  private static double shortM(Approach approach, double faster, double force, double fill) {
    List<Action> told =
        approach.actions().stream()
            .filter(a -> a.atM() > approach.brakingPointM().orElseThrow() - 0.01)
            .toList();
    PencilBraking pencil = new PencilBraking(approach.brakingSpeedMps() + faster, force, fill);
    for (int i = 0; i + 1 < told.size(); i++) {
      double pa = ((Command.Brake) told.get(i).command()).pressurePa();
      Trigger next = told.get(i + 1).trigger();
      if (next instanceof Trigger.After after) {
        pencil.after(pa, after.seconds());
      } else {
        pencil.downTo(pa, next instanceof Trigger.SpeedDownTo down ? down.speedMps() : 0);
      }
    }
    return approach.target().atM() - approach.brakingPointM().orElseThrow() - pencil.distanceM();
  }

  /** By the deviation that makes a run longer. */
  private static void assertSpread(Approach approach, DoubleUnaryOperator shortM) {
    Spread spread = approach.spread().orElseThrow();
    double most = shortM.applyAsDouble(0) - shortM.applyAsDouble(FIVE);
    assertThat(most).isGreaterThan(5);
    double drawn = 0.08 * most;
    assertThat(spread.shortM05().orElseThrow())
        .isCloseTo(shortM.applyAsDouble(FIVE), within(drawn));
    assertThat(spread.shortM10().orElseThrow()).isCloseTo(shortM.applyAsDouble(TEN), within(drawn));
    assertThat(spread.shortM50().orElseThrow()).isCloseTo(shortM.applyAsDouble(0), within(drawn));
    assertThat(spread.shortM95().orElseThrow())
        .isCloseTo(shortM.applyAsDouble(-FIVE), within(drawn));
    assertThat(spread.pastShare()).isBetween(0.35, 0.53);
    assertThat(spread.notHeldShare()).isZero();
    assertThat(spread.samples()).isEqualTo(SAMPLES);
  }

  @Test
  void withoutScatterItIsThePlannedRun() {
    Approach a = approach(new Scatter(0, 0, 0, AT_ONCE, AS_PLANNED, 0, 20));
    Spread spread = a.spread().orElseThrow();
    double planned = shortM(a, 0, 1, 1);
    assertThat(planned).isBetween(0.0, 5.0);
    assertThat(spread.shortM05().orElseThrow()).isCloseTo(planned, within(1e-2));
    assertThat(spread.shortM95().orElseThrow()).isCloseTo(planned, within(1e-2));
    assertThat(spread.pastShare()).isZero();
  }

  @Test
  void aFasterTrainTakesItsOwnBrakingDistance() {
    Approach a = approach(new Scatter(0, 0, 0, AT_ONCE, new Speed(0.5), 0, SAMPLES));
    assertSpread(a, z -> shortM(a, 0.5 * z, 1, 1));
  }

  @Test
  void blocksThatHoldLessTakeSoMuchForce() {
    Approach a = approach(new Scatter(0, 0.05, 0, AT_ONCE, AS_PLANNED, 0, SAMPLES));
    assertSpread(a, z -> shortM(a, 0, 1 - 0.05 * z, 1));
  }

  @Test
  void aHeavierTrainIsHeldByTheInverse() {
    Approach a = approach(new Scatter(0.05, 0, 0, AT_ONCE, AS_PLANNED, 0, SAMPLES));
    assertSpread(a, z -> shortM(a, 0, 1 / (1 + 0.05 * z), 1));
  }

  @Test
  void cylindersThatFillMoreSlowlyBrakeLater() {
    Approach a = approach(new Scatter(0, 0, 0.45, AT_ONCE, AS_PLANNED, 0, SAMPLES));
    assertSpread(a, z -> shortM(a, 0, 1, 1 + 0.45 * z));
  }

  /** Never early: half of all are later than 0.674 deviations, one in twenty than 1.960. */
  @Test
  void aLateDriverRunsOnAtTheSpeedThatHeHas() {
    Approach a = approach(new Scatter(0, 0, 0, new Span(2), AS_PLANNED, 0, SAMPLES));
    Spread spread = a.spread().orElseThrow();
    double planned = shortM(a, 0, 1, 1);
    double later = 2 * a.brakingSpeedMps();
    double drawn = 0.08 * later;
    assertThat(spread.shortM05().orElseThrow())
        .isCloseTo(planned - 1.960 * later, within(1.5 * drawn));
    assertThat(spread.shortM50().orElseThrow()).isCloseTo(planned - 0.674 * later, within(drawn));
    assertThat(spread.shortM95().orElseThrow()).isCloseTo(planned - 0.063 * later, within(drawn));
    assertThat(spread.pastShare()).isBetween(0.95, 1.0);
  }

  /**
   * By three fifths: a rail that bears less than planned by 1.645 of that bears nearly nothing, one
   * that bears more changes nothing, as one that is as planned.
   */
  @Test
  void onlyARailThatBearsLessMakesTheRunLonger() {
    Approach a = approach(new Scatter(0, 0, 0, AT_ONCE, AS_PLANNED, 0.6, SAMPLES));
    Spread spread = a.spread().orElseThrow();
    double planned = shortM(a, 0, 1, 1);
    assertThat(spread.shortM50().orElseThrow()).isCloseTo(planned, within(0.05));
    assertThat(spread.shortM95().orElseThrow()).isCloseTo(planned, within(0.05));
    assertThat(spread.pastShare()).isBetween(0.05, 0.2);
    assertThat(spread.shortM05().filter(m -> m > planned - 50)).isEmpty();
  }

  @Test
  void whereThePolicySetsNoneThereIsNone() {
    Plan plan = Planner.plan(EvenLine.of(0));
    assertThat(plan.approaches()).allMatch(a -> a.spread().isEmpty());
  }
}
