package gradepost.briefing.chart;

import java.util.Arrays;
import java.util.List;

/**
 * A line on a chart, point by point.
 *
 * @param text what is written on it
 * @param kind how it is drawn
 */
@SuppressWarnings("ArrayRecordComponent") // taken and given as copies
public record Curve(Kind kind, String text, double[] x, double[] y) {
  /** The voices of a chart; each has its own dash and weight. */
  public enum Kind {
    PERMISSIBLE,
    PLANNED,
    /** As an assessed run was driven. */
    DRIVEN
  }

  /** A point of the line, in what its axes count. */
  public record Point(double x, double y) {}

  /** The line through these points, in their order. */
  public static Curve through(Kind kind, String text, List<Point> points) {
    return new Curve(
        kind,
        text,
        points.stream().mapToDouble(Point::x).toArray(),
        points.stream().mapToDouble(Point::y).toArray());
  }

  public Curve {
    x = x.clone();
    y = y.clone();
    if (x.length != y.length) {
      throw new IllegalArgumentException("a curve has as many x as y");
    }
  }

  @Override
  public double[] x() {
    return x.clone();
  }

  @Override
  public double[] y() {
    return y.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Curve c
        && kind == c.kind
        && text.equals(c.text)
        && Arrays.equals(x, c.x)
        && Arrays.equals(y, c.y);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * kind.hashCode() + Arrays.hashCode(x)) + Arrays.hashCode(y);
  }
}
