package gradepost.told.print;

import gradepost.units.UnitStyle;

/**
 * A length as it is printed.
 *
 * @param number whole yards or metres, never negative
 */
public record PrintedLength(long number, UnitStyle units) {
  public PrintedLength {
    if (number < 0) {
      throw new IllegalArgumentException("a length is not negative: " + number);
    }
  }

  /** What it means, metres. */
  public double metres() {
    return number * units.lengthUnitM();
  }

  /** "120 yd", "95 m". */
  public String text() {
    return number + " " + units.lengthUnit();
  }
}
