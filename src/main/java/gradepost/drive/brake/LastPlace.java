package gradepost.drive.brake;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * The last place from which a train still comes to its aim. It is looked for from the end back, by
 * how far short of the aim the train ends: what begins a metre later ends about a metre later. The
 * place found is never too late.
 *
 * @param settings how far back it is looked for by the slope alone
 * @param firstM no place before this one
 * @param lastM nor behind this one
 * @param toleranceM how much earlier than the last place may be found
 */
public record LastPlace(
    PlannerSettings.Brake settings, double firstM, double lastM, double toleranceM) {
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
    for (int i = 0; i < settings.looksBack(); i++) {
      double x = late + atLate / perM - toleranceM / 8;
      if (x <= firstM) {
        break;
      }
      double fx = shortM.applyAsDouble(x);
      if (fx >= 0) {
        return OptionalDouble.of(Root.lastNotNegative(shortM, x, late, fx, atLate, toleranceM));
      }
      perM =
          Math.min(
              Math.max((fx - atLate) / (late - x), settings.leastPerM()), settings.greatestPerM());
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
