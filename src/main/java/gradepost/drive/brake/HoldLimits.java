package gradepost.drive.brake;

import gradepost.plan.Command;
import gradepost.task.Assignment;

/**
 * How near to the permissible speed a train may be held. The upper speed lies under it by the
 * policy's margin, and by what the train gains while the driver reacts and the handle takes effect:
 * on the steepest fall of the stretch, with the load and the resistance with which it gains most.
 */
public final class HoldLimits {
  private static final double STEP_M = 10;

  private final Assignment assignment;
  private final TrainModels models;

  /** For a train and its track. */
  public HoldLimits(Assignment assignment, TrainModels models) {
    this.assignment = assignment;
    this.models = models;
  }

  /**
   * The highest upper speed, m/s; not a printed one.
   *
   * @param fromM where the hold begins, distance run of the front
   * @param ceilingMps the lowest permissible speed up to where it ends
   */
  public double topMps(Command.Hold hold, double fromM, double ceilingMps) {
    double marginMps = assignment.policy().margins().underSpeed().metresPerSecond();
    return ceilingMps - marginMps - gainedMps(hold, fromM);
  }

  /** What the train may still gain above the upper speed before the handle takes effect, m/s. */
  public double gainedMps(Command.Hold hold, double fromM) {
    double fall = models.steepestFallMps2(fromM, hold.untilM(), STEP_M);
    double reactionS = assignment.policy().practice().correction().reaction().seconds();
    return hold.by()
        .match(
            notch -> (fall + models.mostEffortMps2(notch.notch(), hold.upperMps())) * reactionS,
            brake -> fall * (reactionS + models.takesHoldS(brake.pressurePa())));
  }
}
