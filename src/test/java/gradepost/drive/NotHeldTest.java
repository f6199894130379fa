package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Met;
import gradepost.plan.fallback.Rung;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/**
 * Property: where a brake does not hold, or the track known ends before it does, that is what the
 * plan says, and never how far the search looked.
 *
 * <p>By hand: 0.85 m/s² on the seated train, 101.2 t and 72.8 t with what turns, are 148 kN; nine
 * tenths of it on one brake of four are 33 kN, on two 67 kN. The crush train of 180 t falls down 27
 * ‰ with 48 kN. One brake is beaten, two take 0.10 m/s² off 193 t. A rail of 0.02 carries less than
 * 0.027, whatever the brake.
 */
class NotHeldTest {

  private static List<FailureAnswer> answers(Plan plan, int adhesion) {
    return plan.approaches().stream()
        .flatMap(a -> a.applications().stream())
        .flatMap(a -> a.cases().get(adhesion).answers().stream())
        .toList();
  }

  private static List<Latest> latest(Plan plan, int adhesion) {
    return plan.approaches().stream()
        .flatMap(a -> a.applications().stream())
        .flatMap(a -> a.cases().get(adhesion).ladder().stream())
        .map(Rung::latest)
        .toList();
  }

  /**
   * For the slack the brake that checks the speed on the fall is enough; for the two stops it has
   * to be more. Down 30 ‰ the crush train falls with 53 kN.
   */
  @Test
  void aFallThatBeatsTheBrakeIsSaidToDoSo() {
    Met beaten = new Met.Nowhere(Met.Reason.GRADIENT_DEFEATS_BRAKE);
    List<FailureAnswer> all = new ArrayList<>();
    for (double permille : new double[] {27, 30}) {
      Plan plan = Planner.plan(MadeUp.falling(permille, MadeUp.isolated(0.75)).assignment());
      for (Approach approach : plan.approaches()) {
        if (approach.target().isStop()) {
          // The automatic brake and the emergency application.
          assertThat(approach.applications().get(0).cases().get(0).answers()).hasSize(2);
        }
      }
      all.addAll(answers(plan, 0));
      assertThat(latest(plan, 0))
          .contains(new Latest.Nowhere(Latest.Reason.GRADIENT_DEFEATS_BRAKE))
          .doesNotContain(new Latest.Nowhere(Latest.Reason.APPROACH_TOO_SHORT));
    }
    assertThat(all).hasSizeGreaterThan(4).allMatch(a -> a.met().equals(beaten));
  }

  @Test
  void aBrakeThatSlowsTheTrainPastTheEndOfTheTrackIsSaidToDoThat() {
    Plan plan = Planner.plan(MadeUp.steep(0.5));
    assertThat(answers(plan, 0))
        .anyMatch(a -> a.met().equals(new Met.Nowhere(Met.Reason.TRACK_ENDS)))
        .anyMatch(a -> a.met() instanceof Met.At)
        .noneMatch(a -> a.met().equals(new Met.Nowhere(Met.Reason.GRADIENT_DEFEATS_BRAKE)));
  }

  /** The approach is three miles long: that is not what is wrong. */
  @Test
  void aRailThatCarriesLessThanTheFallIsNotAnApproachThatIsTooShort() {
    Plan plan = Planner.plan(MadeUp.slippery());
    assertThat(latest(plan, 2))
        .contains(new Latest.Nowhere(Latest.Reason.GRADIENT_DEFEATS_BRAKE))
        .doesNotContain(new Latest.Nowhere(Latest.Reason.APPROACH_TOO_SHORT));
  }

  /** Neither a distance nor a time is longer than the line makes it. */
  @Test
  void nothingEndsWhereThereIsNoTrack() {
    List<String> wrong = new ArrayList<>();
    List<Assignment> lines = new ArrayList<>();
    for (double isolated : new double[] {0.25, 0.5, 0.75}) {
      lines.add(MadeUp.steep(isolated));
    }
    lines.add(MadeUp.slippery());
    for (Assignment line : lines) {
      Plan plan = Planner.plan(line);
      for (Approach approach : plan.approaches()) {
        for (Application a : approach.applications()) {
          a.cases().forEach(c -> check(line, plan, a.target(), c, wrong));
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  private static void check(
      Assignment line, Plan plan, Target target, CaseResult result, List<String> wrong) {
    for (FailureAnswer answer : result.answers()) {
      double endM = target.atM() - answer.met().endsShortM().orElse(0.0);
      if (endM > line.path().lengthM() + 0.01) {
        wrong.add(target.name() + " " + answer);
      }
    }
    double costS = result.protectedCostS().orElse(0.0);
    if (costS > plan.runningTimeS()) {
      wrong.add(String.format(Locale.ROOT, "%s: %.0f s longer", target.name(), costS));
    }
  }

  /** What the rail cannot carry has no braking point, and the finding says why. */
  @Test
  void noPlannedPointStandsTheTrainMilesShortOfItsMark() {
    Plan plan = Planner.plan(MadeUp.slippery());
    Approach last = plan.approaches().get(plan.approaches().size() - 1);
    assertThat(last.applications().get(0).cases().get(2).plannedM()).isEmpty();
    assertThat(last.findings())
        .contains(
            new Finding.NoBrakingPoint(
                "low", new Latest.Nowhere(Latest.Reason.GRADIENT_DEFEATS_BRAKE)));
  }
}
