package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.plan.Application;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Property: up a terminal platform the first brake of a step goes on no earlier on a damp rail than
 * on a low one, which bears less; a lighter technique is looked for at each place before an earlier
 * one.
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

  private static double pointM(Application application, String rail) {
    return application.cases().stream()
        .filter(c -> c.adhesion().name().equals(rail))
        .findFirst()
        .flatMap(CaseResult::plannedM)
        .orElseThrow();
  }
}
