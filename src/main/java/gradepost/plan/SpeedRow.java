package gradepost.plan;

import java.util.Optional;

/**
 * Where to brake for one target from one speed.
 *
 * @param speedMps at which the train comes to the place
 * @param planned on the rail of the plan; empty where there is no room, or where no train may be so
 *     fast there
 * @param poorest the same on the poorest of the other states of the rail
 */
public record SpeedRow(
    double speedMps, Optional<SpeedPoint> planned, Optional<SpeedPoint> poorest) {

  /** Whether a planned braking point is in it. */
  public boolean holdsPlanned() {
    return planned.filter(SpeedPoint::asPlanned).isPresent()
        || poorest.filter(SpeedPoint::asPlanned).isPresent();
  }
}
