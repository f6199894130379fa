package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.fallback.Spreads;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: while a plan is made again and again, what was drawn of a braking is kept; on the plan
 * that comes of it every spread is the one that its own sheets have when they are drawn afresh.
 */
@Tag("slow")
class KeptSpreadsTest {
  @Test
  void everySpreadIsThatOfItsSheets() {
    for (Assignment assignment : DemoPlans.tried()) {
      Plan plan = DemoPlans.plan(assignment);
      Spreads afresh =
          new Spreads(
              assignment,
              new TrainModels(assignment),
              Ceiling.of(assignment),
              new PlannedBefore().spreads());
      assertThat(plan.approaches()).extracting(Approach::spread).isEqualTo(afresh.of(plan.told()));
      assertThat(plan.approaches()).anyMatch(a -> a.spread().isPresent());
    }
  }
}
