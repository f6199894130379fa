package gradepost.briefing.chart;

import java.util.List;

/**
 * A stretch of a driven run laid over the planned one: speed against distance, over the line.
 *
 * @param curves permissible, planned, driven
 * @param held speeds that the plan holds
 * @param briefed where the brake was to go on, on the planned run
 * @param braked where it did, on the driven one
 */
public record RunChart(
    String id,
    String name,
    String says,
    String speedUnit,
    double topSpeed,
    double speedStep,
    List<Curve> curves,
    List<HeldBand> held,
    List<Point> briefed,
    List<Point> braked,
    TrackStrip track)
    implements Chart {

  /** A place and a speed, with the number of its approach. */
  public record Point(String number, double atM, double speed) {}

  public RunChart {
    ApproachChart.wholeSteps(topSpeed, speedStep);
    curves = List.copyOf(curves);
    held = List.copyOf(held);
    briefed = List.copyOf(briefed);
    braked = List.copyOf(braked);
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.run(this);
  }
}
