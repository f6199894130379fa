package gradepost.motion;

import java.util.OptionalDouble;

/** The speed at which a train in one notch neither gains nor loses. */
public final class Balance {
  private static final double FASTEST_MPS = 150;
  private static final double WITHIN_MPS = 1e-6;

  /**
   * The lowest speed from which the train no longer gains on an even gradient, straight track and
   * with grip enough; empty when it cannot start there.
   *
   * @param permille rising is positive
   */
  public static OptionalDouble speedMps(Train train, int notch, double permille) {
    double grade = train.weightN() * permille / 1000;
    PiecewiseLinear effort = train.effort().get(notch);
    double low = 0;
    if (surplus(train, effort, grade, low) <= 0) {
      return OptionalDouble.empty();
    }
    double high = 0.1;
    while (high < FASTEST_MPS && surplus(train, effort, grade, high) > 0) {
      low = high;
      high += 0.1;
    }
    while (high - low > WITHIN_MPS) {
      double middle = (low + high) / 2;
      if (surplus(train, effort, grade, middle) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return OptionalDouble.of(low);
  }

  private static double surplus(Train train, PiecewiseLinear effort, double grade, double v) {
    return effort.at(v) - train.resistance().atN(v) - grade;
  }

  private Balance() {}
}
