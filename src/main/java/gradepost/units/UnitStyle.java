package gradepost.units;

import java.util.Locale;

/**
 * One of the two worlds of units. A paper is written in one of them throughout.
 *
 * <p>Rounding is chosen by the caller, since only he knows which side is the safe one; see {@link
 * Rounding}.
 */
public enum UnitStyle {
  /** Miles and chains, yards, miles an hour, pounds per square inch, 1 in N. */
  MILES,
  /** Kilometres, metres, kilometres an hour, bar, per mille. */
  METRIC;

  /** Distance between places that can be told apart in print: one chain, or 10 m. */
  public double placeStepM() {
    return this == MILES ? Exact.CHAIN_M : 10.0;
  }

  /** A mileage on the grid of {@link #placeStepM()}, nearest: "3m 24ch", "12.46 km". */
  public String mileage(Mileage mileage) {
    if (this == MILES) {
      long chains = Math.round(mileage.metres() / Exact.CHAIN_M);
      long miles = Math.floorDiv(chains, 80L);
      long rest = chains - 80 * miles;
      return miles + (rest < 10 ? "m 0" : "m ") + rest + "ch";
    }
    return String.format(Locale.ROOT, "%.2f km", mileage.metres() / 1000.0);
  }

  /** A length in whole yards or metres. */
  public String length(double metres, Rounding rounding) {
    return rounding.whole(metres / lengthUnitM()) + " " + lengthUnit();
  }

  /** Whether a length is one of whole yards or metres. */
  public boolean wholeLength(double metres) {
    double units = metres / lengthUnitM();
    return Math.abs(units - Math.rint(units)) < 1e-6;
  }

  /** The unit of lengths in metres: a yard or a metre. */
  public double lengthUnitM() {
    return this == MILES ? Exact.YARD_M : 1.0;
  }

  /** How that unit is written. */
  public String lengthUnit() {
    return this == MILES ? "yd" : "m";
  }

  /** Speed in whole units, without the unit. */
  public long speedNumber(double metresPerSecond, Rounding rounding) {
    return rounding.whole(metresPerSecond / speedUnitMps());
  }

  /** Speed in whole units, with the unit. */
  public String speed(double metresPerSecond, Rounding rounding) {
    return speedNumber(metresPerSecond, rounding) + " " + speedUnit();
  }

  /** The unit of speeds in metres a second: one mile or one kilometre an hour. */
  public double speedUnitMps() {
    return this == MILES ? Exact.MPH_MPS : 1 / 3.6;
  }

  /** Speeds that differ by so many of them are told apart at a glance on the speedometer. */
  public long speedStep() {
    return this == MILES ? 5 : 10;
  }

  /** How that unit is written. */
  public String speedUnit() {
    return this == MILES ? "mph" : "km/h";
  }

  /** Least pressure step that a driver can set by the gauge: 1 psi, or 0.1 bar. */
  public double pressureStepPa() {
    return this == MILES ? Exact.PSI_PA : 1e4;
  }

  /** How the unit of pressures is written. */
  public String pressureUnit() {
    return this == MILES ? "psi" : "bar";
  }

  /** A pressure on the grid of {@link #pressureStepPa()}, nearest: "28 psi", "2.1 bar". */
  public String pressure(double pascals) {
    long steps = Math.round(pascals / pressureStepPa());
    return this == MILES
        ? steps + " psi"
        : String.format(Locale.ROOT, "%d.%d bar", steps / 10, steps % 10);
  }

  /** "1 in 66 rising", "12.5 ‰ falling", "level"; rounded to the steeper side. */
  public String gradient(Gradient gradient) {
    double slope = Math.abs(gradient.permille());
    if (slope < 1e-6) {
      return "level";
    }
    String way = gradient.permille() > 0 ? " rising" : " falling";
    return this == MILES
        ? "1 in " + (long) Math.floor(1000.0 / slope + 1e-6) + way
        : String.format(Locale.ROOT, "%.1f ‰", Math.ceil(slope * 10 - 1e-6) / 10) + way;
  }
}
