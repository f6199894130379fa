package gradepost.told.print;

import gradepost.units.UnitStyle;

/**
 * A speed as it is printed.
 *
 * @param number whole miles or kilometres an hour
 */
public record PrintedSpeed(long number, UnitStyle units) {

  /** What it means, metres per second. */
  public double mps() {
    return number * units.speedUnitMps();
  }

  /** "40 mph", "65 km/h". */
  public String text() {
    return number + " " + units.speedUnit();
  }
}
