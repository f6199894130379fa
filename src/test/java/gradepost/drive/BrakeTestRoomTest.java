package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.BrakeTests;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.policy.LinePractice;
import gradepost.policy.Practice;
import gradepost.task.Assignment;
import gradepost.units.Span;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A running brake test that runs into a braking is a finding there. */
@Tag("slow")
class BrakeTestRoomTest {

  /**
   * By hand, Down with four cars at 13m 38ch: 30 mph is 13.4 m/s, five seconds of 15 psi and one to
   * let it go are some 80 m; the brake for 20 mph goes on at 13m 34ch, 80 m on, or just before.
   */
  @Test
  void itIsFoundWhereItsBrakeIsStillOnAtABrakingPoint() {
    Plan plan = DemoPlans.plan(0);
    for (BrakeTest test : plan.brakeTests()) {
      double mps = test.place().speed().metresPerSecond();
      assertThat(test.endM() - test.atM()).isBetween(5 * 0.85 * mps, 7 * mps);
    }
    for (Approach approach : plan.approaches()) {
      boolean runsInto =
          plan.brakeTests().stream()
              .anyMatch(
                  t ->
                      approach.applications().stream()
                          .map(Application::brakingPointM)
                          .anyMatch(p -> t.atM() < p && p < t.endM()));
      assertThat(approach.findings().stream().anyMatch(Finding.BrakeTestTooNear.class::isInstance))
          .as(approach.target().name())
          .isEqualTo(runsInto);
    }
  }

  @Test
  void oneThatIsOverBeforeThePointOrBeginsBehindItIsNot() {
    Plan plan = DemoPlans.plan(0);
    BrakeTest test = plan.brakeTests().get(0);
    List<Application> applications = plan.approaches().get(0).applications();
    double point = applications.get(0).brakingPointM();
    assertThat(Findings.brakeTests(List.of(moved(test, point - 50, 80)), applications))
        .containsExactly(new Finding.BrakeTestTooNear(point - 50, point + 30, point));
    assertThat(Findings.brakeTests(List.of(moved(test, point - 90, 80)), applications)).isEmpty();
    assertThat(Findings.brakeTests(List.of(moved(test, point + 10, 80)), applications)).isEmpty();
  }

  @Test
  void theBrakeIsHeldForAsLongAsThePolicySays() {
    Assignment assignment = DemoPlans.assignments().get(0);
    Practice longer = Practice.USUAL.with(Changed.in(LinePractice.USUAL, "testHeld", new Span(9)));
    Assignment other = assignment.with(assignment.policy().with(longer));
    Trace trace = DemoPlans.plan(0).trace();
    List<BrakeTest> tests = BrakeTests.of(other, new TrainModels(other), trace);
    assertThat(tests).isNotEmpty().allMatch(t -> t.heldS() == 9);
    BrakeTest usual = DemoPlans.plan(0).brakeTests().get(0);
    assertThat(tests.get(0).speedAfterMps()).isLessThan(usual.speedAfterMps());
  }

  private static BrakeTest moved(BrakeTest test, double atM, double takesM) {
    return new BrakeTest(
        test.place(),
        atM,
        test.plannedMps(),
        test.pressurePa(),
        test.heldS(),
        test.speedAfterMps(),
        test.decelerationMps2(),
        atM + takesM);
  }
}
