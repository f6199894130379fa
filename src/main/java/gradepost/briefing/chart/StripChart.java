package gradepost.briefing.chart;

import java.util.List;

/**
 * A row of the strip: so much of the line, to one scale with its neighbours.
 *
 * @param scaleM length that a full row shows; the last row may show less
 * @param permissible steps of the permissible speed for the front of the train, in the speed unit
 * @param restrictions what makes it fall, named
 * @param held speeds that the plan holds
 */
public record StripChart(
    String id,
    String name,
    String says,
    double scaleM,
    String speedUnit,
    double topSpeed,
    List<Step> permissible,
    List<TrackStrip.Stretch> restrictions,
    List<HeldBand> held,
    TrackStrip track)
    implements Chart {

  /** One permissible speed over a stretch; {@code temporary} is drawn apart. */
  public record Step(double fromM, double toM, double speed, String text, boolean temporary) {}

  public StripChart {
    permissible = List.copyOf(permissible);
    restrictions = List.copyOf(restrictions);
    held = List.copyOf(held);
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.strip(this);
  }
}
