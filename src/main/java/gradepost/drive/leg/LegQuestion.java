package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.PointLimits;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.List;

/**
 * All on which the way of driving a leg depends.
 *
 * @param road the run, of which nothing is known but what is met along the leg
 * @param settings by which a way is searched for
 * @param startM where the train stands at first, distance run
 * @param targets of the leg; the last is the stop
 * @param limits places by which the brake is on
 */
public record LegQuestion(
    Assignment road,
    PlannerSettings settings,
    double startM,
    List<Target> targets,
    PointLimits limits) {
  public LegQuestion {
    targets = List.copyOf(targets);
  }
}
