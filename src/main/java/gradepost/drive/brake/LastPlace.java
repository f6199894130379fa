package gradepost.drive.brake;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * The last place from which a train still comes to its aim. It is looked for from the end back, by
 * how far short of the aim the train ends: what begins a metre later ends about a metre later. The
 * place found is never too late.
 *
 * @param firstM no place before this one
 * @param lastM nor behind this one
 * @param toleranceM how much earlier than the last place may be found
 */
public record LastPlace(double firstM, double lastM, double toleranceM) {
  /** How often a place further back is looked for by the slope alone. */
  private static final int LOOKS_BACK = 6;

  /** What begins a metre later ends at least and at most this much later, m. */
  private static final double LEAST_PER_M = 0.3;

  private static final double GREATEST_PER_M = 3;

  /**
   * The last place.
   *
   * @param shortM how far short of its aim a train ends that begins at a place, m; negative past it
   * @return empty where even the first place is too late
   */
  public OptionalDouble of(DoubleUnaryOperator shortM) {
    double atLast = shortM.applyAsDouble(lastM);
    return atLast >= 0 ? OptionalDouble.of(lastM) : of(shortM, atLast);
  }

  /**
   * The same where it is known that the last place is too late.
   *
   * @param atLastM how far short of its aim the train ends from there; negative
   */
  public OptionalDouble of(DoubleUnaryOperator shortM, double atLastM) {
    double late = lastM;
    double atLate = atLastM;
    double perM = 1;
    for (int i = 0; i < LOOKS_BACK; i++) {
      double x = late + atLate / perM - toleranceM / 8;
      if (x <= firstM) {
        break;
      }
      double fx = shortM.applyAsDouble(x);
      if (fx >= 0) {
        return OptionalDouble.of(Root.lastNotNegative(shortM, x, late, fx, atLate, toleranceM));
      }
      perM = Math.min(Math.max((fx - atLate) / (late - x), LEAST_PER_M), GREATEST_PER_M);
      late = x;
      atLate = fx;
    }
    double atFirst = shortM.applyAsDouble(firstM);
    return atFirst < 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            Root.lastNotNegative(shortM, firstM, late, atFirst, atLate, toleranceM));
  }
}
