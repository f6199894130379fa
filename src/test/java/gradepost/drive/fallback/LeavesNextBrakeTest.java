package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.drive.DemoPlans;
import gradepost.plan.Application;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.stock.BrakeSystem;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: a point is called too late for the next brake if and only if that brake, asked for
 * after the noticing time, does not meet the target: of the planned train, which coasts, and of a
 * faster one, which has power on up to the point.
 */
@Tag("slow")
class LeavesNextBrakeTest {

  private int leaves;
  private int tooLate;

  @Test
  void aPointLeavesTheNextBrakeIfThatBrakeStillDoesIt() {
    for (int i = 0; i < 12; i += Examples.of(3, 1)) {
      Plan plan = DemoPlans.plan(i);
      plan.approaches().stream()
          .flatMap(a -> Stream.concat(a.applications().stream(), a.faster().stream()))
          .forEach(this::look);
    }
    assertThat(leaves).isGreaterThan(60);
    assertThat(tooLate).isGreaterThan(5);
  }

  private void look(Application application) {
    for (CaseResult rail : application.cases()) {
      Optional<FailureAnswer> next =
          rail.answers().stream()
              .filter(a -> a.brake().role() == BrakeSystem.Role.FALLBACK)
              .findFirst();
      if (next.isPresent() && rail.plannedM().isPresent()) {
        boolean meets = next.get().met().inTime();
        assertThat(rail.protectedM().equals(rail.plannedM()))
            .as(application.target().name() + " " + rail.adhesion().name())
            .isEqualTo(meets);
        leaves += meets ? 1 : 0;
        tooLate += meets ? 0 : 1;
      }
    }
  }
}
