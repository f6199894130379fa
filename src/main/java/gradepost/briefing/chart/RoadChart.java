package gradepost.briefing.chart;

import java.util.List;

/**
 * The whole road, or as much of it as one sheet holds: speed against distance from stand to stand,
 * with the line below.
 *
 * @param curves permissible and planned
 * @param held speeds that the plan holds
 * @param stations at their stop marks, in order of travel
 * @param points where the brake goes on first, on the planned run, by the number of its row
 * @param temporary restrictions, each over its stretch
 * @param noTemporary what is said where there is none
 * @param roomPt how high it may be at the most, points
 */
public record RoadChart(
    String id,
    String name,
    String says,
    String speedUnit,
    double topSpeed,
    double speedStep,
    List<Curve> curves,
    List<HeldBand> held,
    List<Station> stations,
    List<RunChart.Point> points,
    List<Restricted> temporary,
    String noTemporary,
    TrackStrip track,
    double roomPt)
    implements Chart {

  /**
   * A stop.
   *
   * @param side of the platform, in words
   */
  public record Station(double atM, String name, String side) {}

  /** A stretch of the run, and what its restriction is called. */
  public record Restricted(double fromM, double toM, String text) {}

  public RoadChart {
    ApproachChart.wholeSteps(topSpeed, speedStep);
    curves = List.copyOf(curves);
    held = List.copyOf(held);
    stations = List.copyOf(stations);
    points = List.copyOf(points);
    temporary = List.copyOf(temporary);
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.road(this);
  }
}
