package gradepost.reissue;

import gradepost.pack.TemporaryRestriction;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * The hour at which each change of a restriction comes into force: the hour in the notice if it
 * gives one, else that of the issue.
 *
 * @param validFrom of the issue that tells the changes; taken where a notice gives no hour
 * @param withdrawn notices of that issue by which restrictions are withdrawn
 */
public record Changeover(LocalDateTime validFrom, List<TemporaryRestriction> withdrawn) {

  public Changeover {
    withdrawn = List.copyOf(withdrawn);
  }

  /**
   * Until when the earlier form is in force, never beyond its own end. The later form follows
   * without a gap.
   */
  public LocalDateTime earlierEnds(RestrictionChange change) {
    Optional<LocalDateTime> told =
        change.after().or(() -> withdrawal(change)).flatMap(r -> r.changedFrom());
    if (change.before().isEmpty()) {
      return told.orElse(change.any().imposed());
    }
    LocalDateTime changed = told.orElse(validFrom);
    return change
        .before()
        .flatMap(TemporaryRestriction::until)
        .filter(end -> end.isBefore(changed))
        .orElse(changed);
  }

  /** From when the later form is in force, or the restriction is gone. */
  public LocalDateTime inForce(RestrictionChange change) {
    LocalDateTime changed = earlierEnds(change);
    return change
        .after()
        .map(TemporaryRestriction::imposed)
        .filter(imposed -> imposed.isAfter(changed))
        .orElse(changed);
  }

  /** Whether a notice withdraws it; else it came to its end, or is in no file any more. */
  public boolean isWithdrawn(RestrictionChange change) {
    return withdrawal(change).isPresent();
  }

  private Optional<TemporaryRestriction> withdrawal(RestrictionChange change) {
    return withdrawn.stream().filter(w -> w.reference().equals(change.reference())).findFirst();
  }
}
