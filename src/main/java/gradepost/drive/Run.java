package gradepost.drive;

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
    return between(time, distanceM);
  }

  /** Metres per second there. */
  public double speedAt(double distanceM) {
    return between(speed, distanceM);
  }

  private double between(double[] values, double distanceM) {
    int high = firstAtOrAfter(distanceM);
    if (high == 0) {
      return values[0];
    }
    if (high == at.length) {
      return values[at.length - 1];
    }
    double length = at[high] - at[high - 1];
    double share = length <= 0 ? 1 : (distanceM - at[high - 1]) / length;
    return values[high - 1] + share * (values[high] - values[high - 1]);
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
