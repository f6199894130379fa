package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.plan.Spread;
import gradepost.policy.LinePractice;
import gradepost.policy.Policy;
import gradepost.policy.Practice;
import gradepost.route.audit.AuditRule;
import gradepost.task.Target;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: each finding of a plan is made just beyond its bound, and not just within it. */
class WarningBoundsTest {
  private static final double LINE_MPS = 20;

  /**
   * By hand: two motor cars with 22 kN each in the first notch, 162 t, 14 N/t against it: (44 000 −
   * 14 · 162) / (162 · 9.80665) = 26.3 ‰ is the steepest on which it leaves a stand.
   */
  @Test
  void aTrainStallsWhereItCannotStart() {
    Plan climbs = Planner.plan(LineOfOwn.of(26, LINE_MPS, List.of()));
    assertThat(climbs.failures()).isEmpty();
    Plan stalls = Planner.plan(LineOfOwn.of(26.6, LINE_MPS, List.of()));
    assertThat(stalls.failures()).anyMatch(f -> f instanceof PlanFailure.Stalls);
  }

  private static final Target STAND = new Target.Signal("S 1", 1000);

  private static Target.Reduction board(double mps) {
    return new Target.Reduction(
        "curve",
        Target.Reduction.Kind.PERMANENT,
        "curve",
        1000,
        mps,
        LINE_MPS,
        Optional.empty(),
        Optional.empty());
  }

  private static List<Finding> late(Target target, double share, double notHeld) {
    Spread spread =
        new Spread(
            Optional.of(-30.0),
            Optional.of(-12.0),
            Optional.of(4.0),
            Optional.of(20.0),
            share,
            notHeld,
            1000,
            new Spread.Corrected(
                Optional.of(-3.0), Optional.of(0.0), Optional.of(3.0), 0, 0.003, false, 0));
    return Findings.oftenLate(gradepost.policy.WarningPractice.USUAL, target, spread);
  }

  /** What a normal spread has beyond one standard deviation: 15.9 %, so that 16 % will do. */
  @Test
  void moreThanSixteenInAHundredAreTooOftenLateAtABoard() {
    assertThat(late(board(10), 0.16, 0)).isEmpty();
    assertThat(late(board(10), 0.161, 0))
        .containsExactly(new Finding.OftenLate(0.161, Optional.of(12.0)));
    assertThat(late(STAND, 0.5, 0)).isEmpty();
  }

  @Test
  void oneInAThousandThatDoesNotHoldIsToldAtAStopToo() {
    assertThat(late(STAND, 0.5, 0.001)).containsExactly(new Finding.SometimesNotHeld(0.001));
  }

  /** Mill's unit of four has its motors at both ends: it bridges its own 80 m. */
  @Test
  void aGapIsTooLongWhereTheTrainNeitherBridgesItNorRunsOverItFast() {
    double slow = Speed.ofMph(14).metresPerSecond();
    double fast = Speed.ofMph(25).metresPerSecond();
    assertThat(tooLong(600, 680, slow)).isZero();
    assertThat(tooLong(600, 681, slow)).isEqualTo(1);
    assertThat(tooLong(600, 681, fast)).isZero();
    LinePractice other = Changed.in(LinePractice.USUAL, "overGap", Speed.ofMph(5));
    assertThat(tooLong(600, 681, slow, Mill.policy().with(Practice.USUAL.with(other)))).isZero();
  }

  private static long tooLong(double fromM, double toM, double lineMps) {
    return tooLong(fromM, toM, lineMps, Mill.policy());
  }

  private static long tooLong(double fromM, double toM, double lineMps, Policy policy) {
    Plan plan =
        Planner.plan(LineOfOwn.of(0, lineMps, List.of(new RandomLine.Gap(fromM, toM)), policy));
    assertThat(plan.failures()).isEmpty();
    return TrainAudit.of(plan).stream().filter(f -> f.rule() == AuditRule.GAP_LONG).count();
  }
}
