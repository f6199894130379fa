package gradepost.route;

import gradepost.units.Rounding;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;

/**
 * A fall of the permissible speed that wants a warning board: by more than 20 mph (US Federal
 * Railroad Administration, Safety Advisory 2015-03) or by a third or more (British practice).
 */
public final class BigDrop {
  private static final double SHARE = 1.0 / 3;

  /** A fall by more than this is big from whatever speed. */
  public static final Speed FAR = Speed.ofMph(20);

  /** What the arithmetic of two speeds may lack, m/s. */
  private static final double SLACK_MPS = 1e-9;

  /** {@link #FAR} as it is written, for those who mend the data. */
  public static String far(UnitStyle units) {
    return units.speed(FAR.metresPerSecond(), Rounding.NEAREST);
  }

  /** Whether the fall is a big one; speeds in m/s. */
  public static boolean is(double fromMps, double toMps) {
    return isThird(fromMps, toMps) || fromMps - toMps > FAR.metresPerSecond() + SLACK_MPS;
  }

  /** Whether the speed falls by a third of what it was or more; speeds in m/s. */
  public static boolean isThird(double fromMps, double toMps) {
    return fromMps > toMps && fromMps - toMps >= fromMps * SHARE - SLACK_MPS;
  }

  private BigDrop() {}
}
