package gradepost.app;

import gradepost.pack.TemporaryRestriction;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A restriction, the same in all issues that are named.
 *
 * @param route that it is on, by name
 * @param where from and to, in the units of the route
 * @param speed in the units of the route
 * @param issues whose papers tell it, such as "valley/4", in their order
 */
public record KnownNotice(
    TemporaryRestriction restriction,
    String route,
    String where,
    String speed,
    List<String> issues) {
  /** Copies the list. */
  public KnownNotice {
    issues = List.copyOf(issues);
  }

  /** When it ends; empty for one that stands until further notice. */
  public Optional<LocalDateTime> until() {
    return restriction.until();
  }
}
