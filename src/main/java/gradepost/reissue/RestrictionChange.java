package gradepost.reissue;

import gradepost.pack.TemporaryRestriction;
import java.util.Optional;
import java.util.Set;

/**
 * A restriction by notice that is not what it was.
 *
 * @param kinds in the order of their weight; one at least
 * @param before empty where it was added
 * @param after empty where it stands no more
 */
public record RestrictionChange(
    String reference,
    Set<Kind> kinds,
    Optional<TemporaryRestriction> before,
    Optional<TemporaryRestriction> after) {

  /** How it differs. */
  public enum Kind {
    ADDED,
    WITHDRAWN,
    TIGHTENED,
    EASED,
    MOVED,
    /** Other dates or hours of day. */
    RETIMED,
    /** Other boards at the lineside. */
    REBOARDED,
    /** Other words only. */
    REWORDED
  }

  /** The one of the two that there is, the later where both are. */
  public TemporaryRestriction any() {
    return after.or(() -> before).orElseThrow();
  }

  /** Whether a driver who knows the old issue would drive too fast by it. */
  public boolean highRisk() {
    return kinds.contains(Kind.ADDED)
        || kinds.contains(Kind.TIGHTENED)
        || kinds.contains(Kind.MOVED);
  }
}
