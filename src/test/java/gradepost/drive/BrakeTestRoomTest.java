package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A running brake test that runs into a braking is a finding there. */
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
