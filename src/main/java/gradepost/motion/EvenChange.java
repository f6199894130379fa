package gradepost.motion;

/**
 * A train between two places of its run where only the speeds at both are known: its speed is taken
 * to change evenly in time, so that the square of the speed is linear in the distance.
 */
public final class EvenChange {

  /**
   * Speed at a place, m/s. Beyond the two places the same acceleration goes on, down to a stand.
   *
   * @param toM not the place {@code fromM}, unless {@code atM} is that too
   */
  public static double speedMps(
      double fromM, double fromMps, double toM, double toMps, double atM) {
    double share = toM == fromM ? 0 : (atM - fromM) / (toM - fromM);
    return speedMps(fromMps, toMps, share);
  }

  /**
   * Speed after a share of the distance, m/s.
   *
   * @param share 0 at the first speed, 1 at the second
   */
  public static double speedMps(double fromMps, double toMps, double share) {
    double square = fromMps * fromMps + share * (toMps * toMps - fromMps * fromMps);
    return Math.sqrt(Math.max(0, square));
  }

  /**
   * The share of the distance after which a speed is reached.
   *
   * @param toMps not {@code fromMps}
   */
  public static double shareAt(double fromMps, double toMps, double mps) {
    return (mps * mps - fromMps * fromMps) / (toMps * toMps - fromMps * fromMps);
  }

  /** Time that a distance takes, s. */
  public static double seconds(double metres, double fromMps, double toMps) {
    return 2 * metres / (fromMps + toMps);
  }

  private EvenChange() {}
}
