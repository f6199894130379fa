package gradepost.briefing.chart;

import java.util.List;
import java.util.Optional;

/**
 * Speed against distance to one target, over the track.
 *
 * @param speedUnit at the axis
 * @param topSpeed end of the axis, in that unit, a whole number of steps: the unit stands there;
 *     curves are in it too
 * @param speedStep between its marks
 * @param heightMm of the whole drawing
 * @param last from the last place of one brake to that of another; empty where there is none
 * @param pins the numbered actions on the planned line; some may come before the track shown
 * @param held speeds that are held on the track shown
 */
public record ApproachChart(
    String id,
    String name,
    String says,
    String speedUnit,
    double topSpeed,
    double speedStep,
    List<Curve> curves,
    List<Pin> pins,
    List<HeldBand> held,
    double targetM,
    double heightMm,
    Optional<Last> last,
    TrackStrip track)
    implements Chart {

  /** The number of an action, at its place and speed. */
  public record Pin(String number, double atM, double speed) {}

  /** Between which places the last ones of two brakes lie, and the words for it. */
  public record Last(double fromM, double toM, String text) {}

  public ApproachChart {
    wholeSteps(topSpeed, speedStep);
    curves = List.copyOf(curves);
    pins = List.copyOf(pins);
    held = List.copyOf(held);
  }

  /** The unit is printed at the end of the axis; a figure just below it would overlap. */
  static void wholeSteps(double topSpeed, double speedStep) {
    if (Math.abs(Math.IEEEremainder(topSpeed, speedStep)) > 1e-6) {
      throw new IllegalArgumentException(
          "an axis up to %s is no whole number of steps of %s".formatted(topSpeed, speedStep));
    }
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.approach(this);
  }
}
