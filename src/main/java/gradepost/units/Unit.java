package gradepost.units;

import gradepost.units.Parsed.Convention;
import java.util.List;

/**
 * A unit as it is written, and what one of it is in SI.
 *
 * @param alsoMeant spellings that are not accepted but say clearly enough what was meant
 */
record Unit(String symbol, double si, Convention convention, List<String> alsoMeant) {
  static Unit miles(String symbol, double si, String... alsoMeant) {
    return new Unit(symbol, si, Convention.MILES, List.of(alsoMeant));
  }

  static Unit metric(String symbol, double si, String... alsoMeant) {
    return new Unit(symbol, si, Convention.METRIC, List.of(alsoMeant));
  }

  static Unit neutral(String symbol, double si, String... alsoMeant) {
    return new Unit(symbol, si, Convention.NEUTRAL, List.of(alsoMeant));
  }
}
