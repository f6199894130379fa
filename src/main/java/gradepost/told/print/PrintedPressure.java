package gradepost.told.print;

import gradepost.units.UnitStyle;

/**
 * A pressure as the gauge can show it.
 *
 * @param steps of the gauge: whole pounds per square inch, or tenths of a bar
 */
public record PrintedPressure(long steps, UnitStyle units) {

  /** What it means, pascals. */
  public double pascals() {
    return steps * units.pressureStepPa();
  }

  /** "28 psi", "2.1 bar". */
  public String text() {
    return units.pressure(pascals());
  }
}
