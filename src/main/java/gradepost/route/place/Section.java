package gradepost.route.place;

import gradepost.units.Mileage;

/**
 * A stretch of the route with one mileage datum and one sense.
 *
 * @param name what the lineside mileage belongs to, unique on the route
 * @param from mileage at its forward start
 * @param to mileage at its forward end; less than {@code from} where mileage falls
 */
public record Section(String name, Mileage from, Mileage to) {
  public Section {
    if (from.equals(to)) {
      throw new IllegalArgumentException("section " + name + " has no length");
    }
  }

  /** How long it is, metres. */
  public double lengthM() {
    return Math.abs(to.metres() - from.metres());
  }

  /** Whether its mileage rises in the forward direction. */
  public boolean rises() {
    return to.metres() > from.metres();
  }

  /** Whether a mileage lies on it, its ends included. */
  public boolean holds(Mileage mileage) {
    double low = Math.min(from.metres(), to.metres());
    double high = Math.max(from.metres(), to.metres());
    return mileage.metres() >= low - SLACK_M && mileage.metres() <= high + SLACK_M;
  }

  /** Mileages are signed to the chain at best; a micrometre only absorbs the arithmetic. */
  public static final double SLACK_M = 1e-6;
}
