package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.bound.EnergyBound;
import gradepost.drive.bound.RelaxedLeg;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.Plan;
import gradepost.policy.RunRules;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: on a long leg more time to spare is turned into less energy, and no plan does less work
 * than is possible in its time.
 */
@Tag("slow")
class SparedTimeTest {
  @Test
  void moreTimeIsLessEnergy() {
    Plan five = plan(0.05);
    Plan fifteen = plan(0.15);
    Plan thirty = plan(0.30);
    assertThat(fifteen.energyJ()).isLessThan(0.9 * five.energyJ());
    assertThat(thirty.energyJ()).isLessThan(0.9 * fifteen.energyJ());
    for (Plan plan : new Plan[] {five, fifteen, thirty}) {
      assertThat(plan.failures()).isEmpty();
      assertThat(share(plan)).isGreaterThanOrEqualTo(1);
    }
  }

  private static double share(Plan plan) {
    Assignment assignment = plan.assignment();
    TrainModels models = new TrainModels(assignment);
    double fromM = Stops.markM(assignment, assignment.calls().get(0));
    double toM = Stops.markM(assignment, assignment.calls().get(1));
    double least =
        EnergyBound.of(
                    RelaxedLeg.between(assignment, models, Ceiling.of(assignment), fromM, toM),
                    plan.runningTimeS())
                .joulesPerKg()
            * models.plannedTrain().inertiaKg();
    return plan.energyJ() / least;
  }

  private static Plan plan(double allowance) {
    Assignment is = OpenLine.assignment("one");
    RunRules run = Changed.in(is.policy().run(), "timeAllowance", allowance);
    return Planner.plan(is.with(Changed.in(is.policy(), "run", run)));
  }
}
