package gradepost.drive.leg;

import gradepost.plan.Trace;
import gradepost.task.Ceiling;
import java.util.List;

/** Coasting so slowly that no driver would: it spares a little energy, and those behind wait. */
final class Creeping {
  private static final double SHARE = 0.5;

  /** So long before a braking it is let pass, seconds. */
  private static final double LET_PASS_S = 8;

  /** A lower speed so near ahead may be waited for. */
  private static final double AHEAD_M = 200;

  /**
   * How often the train creeps for longer than is let pass.
   *
   * @param slowMps it creeps below this, and below half of what is permissible
   */
  static long count(List<Trace.Point> points, Ceiling ceiling, double slowMps) {
    long count = 0;
    double sinceS = Double.NaN;
    for (Trace.Point point : points) {
      boolean coasts = point.notch() < 0 && point.pressurePa() == 0 && point.speedMps() > 0;
      boolean creeps =
          coasts
              && point.speedMps() < slowMps
              && point.speedMps() < SHARE * ceiling.lowest(point.atM(), point.atM() + AHEAD_M);
      if (creeps && Double.isNaN(sinceS)) {
        sinceS = point.timeS();
      } else if (!creeps && !Double.isNaN(sinceS)) {
        count += point.timeS() > sinceS + LET_PASS_S ? 1 : 0;
        sinceS = Double.NaN;
      }
    }
    return count;
  }

  private Creeping() {}
}
