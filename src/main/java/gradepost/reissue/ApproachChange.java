package gradepost.reissue;

import gradepost.drive.Approach;
import java.util.Optional;
import java.util.Set;

/**
 * An approach that is not what it was.
 *
 * @param aspects what differs in print; empty where it was added or fell away, or has another
 *     number only
 * @param outside whether no permissible speed changed on the approach itself: the driver would not
 *     look for a change there
 */
public record ApproachChange(
    Optional<Approach> before, Optional<Approach> after, Set<Aspect> aspects, boolean outside) {

  /** What differs. */
  public enum Aspect {
    BRAKING_POINT,
    SHUT_OFF,
    ENTRY_SPEED,
    PRESSURE,
    /** The last places of the brakes, or what happens when one fails. */
    FALLBACK,
    /** Another action, or one elsewhere. */
    ACTIONS,
    FINDINGS,
    /** The same run to another mark, board or permissible speed. */
    TARGET
  }

  public Approach any() {
    return after.or(() -> before).orElseThrow();
  }

  public boolean renumberedOnly() {
    return aspects.isEmpty() && before.isPresent() && after.isPresent();
  }

  /** How far the printed braking point moved, metres in the direction of travel. */
  public Optional<Double> movedM() {
    return before
        .flatMap(Approach::brakingPointM)
        .flatMap(b -> after.flatMap(Approach::brakingPointM).map(a -> a - b))
        .filter(m -> Math.abs(m) > Print.GRAIN_M);
  }
}
