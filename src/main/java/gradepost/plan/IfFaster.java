package gradepost.plan;

import java.util.List;
import java.util.Optional;

/**
 * What a train has to do that comes to a lower speed as fast as it may, where the planned one needs
 * no brake: full power from the last stand on, and never over the permissible speed.
 *
 * @param mostMps how fast such a train comes to the lower speed if it is not braked
 * @param nowhere whether it is too fast, and no place since the last stand is early enough for it
 * @param application its braking point, its ladder, and the other states of the rail; empty where
 *     that is not too fast, or where a page would tell a brake at a speed that the board allows
 * @param actions from that point until the brake is let go
 */
public record IfFaster(
    double mostMps, boolean nowhere, Optional<Application> application, List<Action> actions) {
  public IfFaster {
    actions = List.copyOf(actions);
  }
}
