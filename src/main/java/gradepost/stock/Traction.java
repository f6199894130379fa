package gradepost.stock;

import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import java.util.stream.IntStream;

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

  /** Whether a notch is a running notch. */
  public boolean runs(int notch) {
    return notches.get(notch).longest().isEmpty();
  }

  /**
   * The running notch to keep where this one is wanted: itself, else the next higher one; where
   * none is higher, the next lower.
   */
  public int running(int notch) {
    return IntStream.concat(
            IntStream.range(notch, notches.size()),
            IntStream.iterate(notch - 1, n -> n >= 0, n -> n - 1))
        .filter(this::runs)
        .findFirst()
        .orElse(notch);
  }

  /**
   * The same where the line has this share of the voltage that the efforts are stated for. By
   * approximation: a direct-current motor has the same effort at the same current, and takes it at
   * a speed that goes with the voltage (its own resistance left out: a few per cent). For stock
   * described by its motors the exact figure is {@link SeriesMotorPower#atLineVolts}.
   */
  public Traction atLineVoltage(double share) {
    if (!(share > 0.4 && share < 1.4)) {
      throw new IllegalArgumentException("a line keeps 0.4 to 1.4 of its voltage: " + share);
    }
    List<Notch> other =
        notches.stream()
            .map(
                notch ->
                    new Notch(
                        notch.name(),
                        notch.effort().stream()
                            .map(
                                point ->
                                    new EffortPoint(
                                        new Speed(point.speed().metresPerSecond() * share),
                                        point.effort()))
                            .toList(),
                        notch.longest()))
            .toList();
    return new Traction(other, timePerNotch, notchingDown);
  }
}
