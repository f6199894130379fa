package gradepost.drive.leg;

import gradepost.drive.brake.PointLimits;
import gradepost.drive.check.InstructionRun;
import gradepost.plan.Plan;
import gradepost.task.Target;
import java.util.List;

/**
 * The way to the next stop that was taken, the fastest one, and the time that is allowed.
 *
 * @param limits places by which the brake is on
 * @param plain the way that is taken where no speed is held
 * @param held the one that is taken where a speed may be
 */
record DecidedLeg(
    List<Target> targets,
    PointLimits limits,
    LegTests tests,
    LegChooser.Way plain,
    LegChooser.Way held,
    LegChooser.Way fastest,
    double allowedS) {
  Plan.Cost fastestCost() {
    InstructionRun quick = fastest.rerun();
    return new Plan.Cost(quick.timeS(), quick.energyJ(), quick.movements(), quick.actions());
  }
}
