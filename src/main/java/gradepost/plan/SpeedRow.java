package gradepost.plan;

import java.util.List;
import java.util.Optional;

/**
 * Where to brake for one target from one speed.
 *
 * @param speedMps at which the train comes to the place
 * @param planned on the rail of the plan; empty where there is no room, or where no train may be so
 *     fast there
 * @param poorest the same on the poorest of the other states of the rail
 */
public record SpeedRow(double speedMps, Optional<Point> planned, Optional<Point> poorest) {
  /**
   * Where to brake from one speed in one state of the rail, with all that is needed to work it out
   * again: the train comes to the place at this speed, power is off there, and the technique
   * begins.
   *
   * @param rail name of the state
   * @param atM on the print grid
   * @param speedMps at the place
   * @param brakeOnPa what the brake is on with there: zero, but for a planned point up to which the
   *     brake checks the speed
   * @param asPlanned whether it is the point of the plan itself, at the speed of the plan
   * @param leavesFallback whether the first fallback, applied in full after the noticing time,
   *     still meets the target if the service brake gives nothing there; true where there is no
   *     such brake
   * @param actions the whole braking from there, and how it comes out on this rail
   */
  public record Point(
      String rail,
      double atM,
      double speedMps,
      double brakeOnPa,
      boolean asPlanned,
      boolean leavesFallback,
      List<Action> actions) {
    public Point {
      actions = List.copyOf(actions);
    }

    /** The heaviest application, pascals. */
    public double mostPa() {
      return actions.stream()
          .flatMap(a -> a.command().brake().stream())
          .mapToDouble(Command.Brake::pressurePa)
          .max()
          .orElse(brakeOnPa);
    }
  }

  /** Whether a planned braking point is in it. */
  public boolean holdsPlanned() {
    return planned.filter(Point::asPlanned).isPresent()
        || poorest.filter(Point::asPlanned).isPresent();
  }
}
