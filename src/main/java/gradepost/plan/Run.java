package gradepost.plan;

import gradepost.motion.EvenChange;
import java.util.List;

/** A run read between its points. */
public final class Run {
  private final double[] at;
  private final double[] time;
  private final double[] speed;

  /**
   * @throws IllegalArgumentException if the trace has no point
   */
  public Run(Trace trace) {
    List<Trace.Point> points = trace.points();
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a run has points");
    }
    at = points.stream().mapToDouble(Trace.Point::atM).toArray();
    time = points.stream().mapToDouble(Trace.Point::timeS).toArray();
    speed = points.stream().mapToDouble(Trace.Point::speedMps).toArray();
  }

  /** Seconds of the run at a distance run in metres. */
  public double timeAt(double distanceM) {
    int high = firstAtOrAfter(distanceM);
    if (high == 0 || high == at.length) {
      return time[Math.min(high, at.length - 1)];
    }
    double share = (distanceM - at[high - 1]) / (at[high] - at[high - 1]);
    return time[high - 1] + share * (time[high] - time[high - 1]);
  }

  /** Metres per second there. */
  public double speedAt(double distanceM) {
    int high = firstAtOrAfter(distanceM);
    if (high == 0 || high == at.length) {
      return speed[Math.min(high, at.length - 1)];
    }
    return EvenChange.speedMps(at[high - 1], speed[high - 1], at[high], speed[high], distanceM);
  }

  /** Distance run in metres at a time of the run; a stand takes no time here. */
  public double placeAt(double timeS) {
    int high = 0;
    while (high < time.length && time[high] < timeS) {
      high++;
    }
    if (high == 0 || high == time.length) {
      return at[Math.min(high, time.length - 1)];
    }
    double share = (timeS - time[high - 1]) / (time[high] - time[high - 1]);
    return at[high - 1] + share * (at[high] - at[high - 1]);
  }

  private int firstAtOrAfter(double distanceM) {
    int low = 0;
    int high = at.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (at[middle] < distanceM) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
