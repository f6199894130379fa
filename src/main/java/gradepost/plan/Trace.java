package gradepost.plan;

import java.util.List;

/** A run as it was computed, in points close enough to draw and to check. */
public record Trace(List<Point> points) {

  /**
   * The train at one moment.
   *
   * @param atM distance run of the front, m
   * @param pressurePa cylinder pressure of the leading vehicle, Pa
   * @param notch index of the notch, −1 for off
   */
  public record Point(double timeS, double atM, double speedMps, double pressurePa, int notch) {}

  public Trace {
    points = List.copyOf(points);
  }

  /** The part of it from one distance run to another. */
  public Trace between(double fromM, double toM) {
    return new Trace(points.stream().filter(p -> p.atM() >= fromM && p.atM() <= toM).toList());
  }
}
