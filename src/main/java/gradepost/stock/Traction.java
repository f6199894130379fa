package gradepost.stock;

import gradepost.units.Span;
import java.util.List;

/**
 * The power handle.
 *
 * @param notches in the order of the handle, off left out
 * @param timePerNotch least time in a notch before the next one is taken
 * @param notchingDown whether a lower notch can be taken from a higher one; where not, the only way
 *     to less power is off and up again
 */
public record Traction(List<Notch> notches, Span timePerNotch, boolean notchingDown) {
  public Traction {
    notches = List.copyOf(notches);
    if (notches.isEmpty()) {
      throw new IllegalArgumentException("a power handle has a notch at least");
    }
  }
}
