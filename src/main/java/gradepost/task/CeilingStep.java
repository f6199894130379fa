package gradepost.task;

import java.util.ArrayList;
import java.util.List;

/**
 * A stretch of one permissible speed for the front of this train: it ends where the rear has
 * cleared.
 *
 * @param cause what sets it where it begins ("line", the name of a restriction, a junction, a
 *     reference)
 * @param then what sets the same speed further on, when that before it has ended, in order
 */
public record CeilingStep(
    double fromM, double toM, double speedMps, String cause, List<String> then) {

  public CeilingStep {
    then = List.copyOf(then);
  }

  /** A stretch that one cause sets. */
  public CeilingStep(double fromM, double toM, double speedMps, String cause) {
    this(fromM, toM, speedMps, cause, List.of());
  }

  /** What sets it where it ends. */
  public String lastCause() {
    return then.isEmpty() ? cause : then.get(then.size() - 1);
  }

  /** Goes on to another place with the same speed. */
  CeilingStep on(double toM, String by) {
    List<String> causes = new ArrayList<>(then);
    if (!by.equals(lastCause())) {
      causes.add(by);
    }
    return new CeilingStep(fromM, toM, speedMps, cause, causes);
  }
}
