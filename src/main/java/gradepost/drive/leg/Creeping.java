package gradepost.drive.leg;

import gradepost.plan.Trace;
import gradepost.policy.Practice;
import gradepost.task.Ceiling;
import java.util.List;

/** Coasting so slowly that no driver would: it spares a little energy, and those behind wait. */
final class Creeping {
  /**
   * How often the train creeps for longer than is let pass.
   *
   * @param practice what creeping is, and for how long it is let pass
   */
  static long count(List<Trace.Point> points, Ceiling ceiling, Practice practice) {
    double slowMps = practice.power().creeping().metresPerSecond();
    double aheadM = practice.coast().creepingBefore().metres();
    long count = 0;
    double sinceS = Double.NaN;
    for (Trace.Point point : points) {
      boolean coasts = point.notch() < 0 && point.pressurePa() == 0 && point.speedMps() > 0;
      boolean creeps =
          coasts
              && point.speedMps() < slowMps
              && point.speedMps()
                  < practice.coast().creepingShare()
                      * ceiling.lowest(point.atM(), point.atM() + aheadM);
      if (creeps && Double.isNaN(sinceS)) {
        sinceS = point.timeS();
      } else if (!creeps && !Double.isNaN(sinceS)) {
        count += point.timeS() > sinceS + practice.coast().creepingLongest().seconds() ? 1 : 0;
        sinceS = Double.NaN;
      }
    }
    return count;
  }

  private Creeping() {}
}
