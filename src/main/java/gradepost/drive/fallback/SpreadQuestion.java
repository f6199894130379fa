package gradepost.drive.fallback;

import gradepost.drive.brake.PlannerSettings;
import gradepost.plan.Instruction;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.List;

/**
 * All on which the runs that are drawn of a braking depend, by a train on which no brake is on yet.
 *
 * @param road the run, of which nothing is known but what is met near the braking
 * @param settings by which runs are drawn
 * @param told from the instruction that begins the braking
 * @param atM where it begins, distance run
 * @param notch of the power handle, −1 where power is off
 * @param noneMayBe whether not one run may be late
 */
public record SpreadQuestion(
    Assignment road,
    PlannerSettings settings,
    Target target,
    List<Instruction> told,
    double atM,
    double speedMps,
    int notch,
    boolean noneMayBe) {
  public SpreadQuestion {
    told = List.copyOf(told);
  }
}
