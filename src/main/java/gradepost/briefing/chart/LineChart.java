package gradepost.briefing.chart;

import java.util.List;

/**
 * A stretch of the line to scale, read downwards in the direction of travel: speeds, gradients,
 * curves and the line side by side. What lies left of the train is drawn on the left.
 *
 * @param topSpeed end of the axis of speed, a whole number of steps
 * @param permissible steps of the permissible speed for the front of the train
 * @param planned the run: metres run against speed
 * @param held speeds that the plan holds
 * @param points where a brake goes on, by the numbers of their rows
 * @param structures each from its nearer end
 * @param gaps without current
 * @param magnets of the AWS, metres run
 * @param heads what its columns are called
 * @param levels the rows beside it
 * @param headPx height of the head, CSS pixels
 * @param heightPx height below it, CSS pixels
 */
public record LineChart(
    String id,
    String name,
    String says,
    double topSpeed,
    double speedStep,
    List<Step> permissible,
    Curve planned,
    List<HeldBand> held,
    List<RunChart.Point> points,
    List<TrackStrip.Stretch> structures,
    List<TrackStrip.Stretch> gaps,
    List<Double> magnets,
    Heads heads,
    TrackStrip track,
    List<Level> levels,
    int headPx,
    int heightPx)
    implements Chart {

  /** One permissible speed over a stretch; {@code temporary} is drawn apart. */
  public record Step(double fromM, double toM, double speed, String text, boolean temporary) {}

  /** What its columns are called, and the two sides of the line. */
  public record Heads(String speed, String slopes, String bends, String left, String right) {}

  /**
   * A row of what is told.
   *
   * @param atM its true place
   * @param topPx where the row begins, CSS pixels below the head
   */
  public record Level(double atM, int topPx) {}

  public LineChart {
    ApproachChart.wholeSteps(topSpeed, speedStep);
    permissible = List.copyOf(permissible);
    held = List.copyOf(held);
    points = List.copyOf(points);
    structures = List.copyOf(structures);
    gaps = List.copyOf(gaps);
    magnets = List.copyOf(magnets);
    levels = List.copyOf(levels);
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.line(this);
  }
}
