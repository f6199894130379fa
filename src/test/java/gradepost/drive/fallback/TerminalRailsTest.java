package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.task.Ceiling;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Property: up a terminal platform the first brake of a step goes on no earlier on a damp rail than
 * on a low one, which bears less, no brake on any rail goes on later than planned, and nothing is
 * done there above the permissible speed.
 */
class TerminalRailsTest {
  @Test
  void theFirstPointOnADampRailIsNotBeforeThatOnALowOne() {
    List<String> earlier = new ArrayList<>();
    int looked = 0;
    for (int number : new int[] {0, 4, 5}) {
      Plan plan = DemoPlans.plan(number);
      for (var approach : plan.approaches()) {
        if (approach.target().stop().filter(s -> s.buffersM().isPresent()).isEmpty()
            || approach.applications().isEmpty()) {
          continue;
        }
        Application first = approach.applications().get(0);
        double damp = pointM(first, "damp");
        double low = pointM(first, "low");
        if (damp < low - 1e-6) {
          earlier.add("plan %d: damp %.0f m, low %.0f m".formatted(number, damp, low));
        }
        looked++;
      }
    }
    assertThat(looked).isGreaterThanOrEqualTo(3);
    assertThat(earlier).isEmpty();
  }

  /**
   * A train that comes slower than planned stops sooner; it is not told to brake later for that.
   */
  @Test
  void noBrakeGoesOnLaterThanPlanned() {
    List<String> later = new ArrayList<>();
    int looked = 0;
    for (int number : new int[] {0, 1, 4, 5, 8, 9}) {
      for (var approach : DemoPlans.plan(number).approaches()) {
        for (Application application : approach.applications()) {
          for (CaseResult rail : application.told()) {
            double atM = rail.plannedM().orElseThrow();
            if (atM > application.brakingPointM() + 1e-6) {
              later.add(
                  "plan %d, %s, %s: %.1f m for %.1f m"
                      .formatted(
                          number,
                          approach.target().name(),
                          rail.adhesion().name(),
                          atM,
                          application.brakingPointM()));
            }
            looked++;
          }
        }
      }
    }
    assertThat(looked).isGreaterThan(200);
    assertThat(later).isEmpty();
  }

  /** Let go at a higher speed than planned, it would come too fast to the next step. */
  @Test
  void theNextStepUpThePlatformIsMetOnEveryRail() {
    List<String> tooFast = new ArrayList<>();
    int looked = 0;
    for (int number : new int[] {0, 1, 4, 5, 8, 9}) {
      Plan plan = DemoPlans.plan(number);
      Ceiling ceiling = new Ceiling(plan.ceiling());
      for (var approach : plan.approaches()) {
        for (Application application : approach.applications()) {
          for (CaseResult rail : application.told()) {
            for (Action action : rail.actions()) {
              if (action.speedMps() > ceiling.speedAt(action.atM()) + 0.02) {
                tooFast.add(
                    "plan %d, %s, %s: %s"
                        .formatted(
                            number, approach.target().name(), rail.adhesion().name(), action));
              }
              looked++;
            }
          }
        }
      }
    }
    assertThat(looked).isGreaterThan(600);
    assertThat(tooFast).isEmpty();
  }

  /**
   * A lower speed on the way has its own page: whoever is too fast there is told to brake there.
   */
  @Test
  void anotherLowerSpeedOnTheWayDoesNotBringThePointForward() {
    int looked = 0;
    for (int number : new int[] {0, 8, 9}) {
      for (var approach : DemoPlans.plan(number).approaches()) {
        Application faster = approach.faster().orElse(null);
        if (faster != null && approach.target().name().startsWith("Eddle swing")) {
          for (CaseResult rail : faster.told()) {
            assertThat(rail.plannedM().orElseThrow())
                .isBetween(faster.brakingPointM() - 60, faster.brakingPointM());
            looked++;
          }
        }
      }
    }
    assertThat(looked).isGreaterThanOrEqualTo(3);
  }

  private static double pointM(Application application, String rail) {
    return application.cases().stream()
        .filter(c -> c.adhesion().name().equals(rail))
        .findFirst()
        .flatMap(CaseResult::plannedM)
        .orElseThrow();
  }
}
