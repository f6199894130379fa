package gradepost.drive.leg;

import gradepost.drive.brake.PointLimits;
import gradepost.plan.Plan;
import gradepost.task.Target;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A leg as it is driven.
 *
 * @param fromM where it begins: the mark at which the train stands, distance run
 * @param limits that it keeps
 * @param allowedS the time that is allowed for it
 * @param fastest what the fastest way costs
 * @param tests running brake tests that it makes
 */
public record DrivenLeg(
    double fromM,
    List<Target> targets,
    LegChooser.Way way,
    PointLimits limits,
    double allowedS,
    Plan.Cost fastest,
    LegTests tests) {
  /** The stop that it leads to. */
  public Target stop() {
    return targets.get(targets.size() - 1);
  }

  /** Whether a speed is held on it as one instruction. */
  public boolean holds() {
    return !way.manner().holds().isEmpty();
  }

  /** Work that traction does on it, joules. */
  public double energyJ() {
    return way.rerun().energyJ();
  }

  /** Its approaches, as they are told. */
  List<ApproachSolution> told() {
    return LegPlanner.told(way.leg());
  }

  /** Its own braking points: what moves one of them leaves none of the others later. */
  PointLimits points() {
    Map<Target, Double> points = new HashMap<>();
    told().forEach(p -> p.brakingM().ifPresent(m -> points.put(p.target(), m)));
    return new PointLimits(points);
  }
}
