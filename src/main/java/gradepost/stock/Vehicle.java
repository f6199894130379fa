package gradepost.stock;

import gradepost.units.Length;
import gradepost.units.Mass;

/**
 * A kind of vehicle.
 *
 * @param length over couplers: the share of the train that it takes up
 * @param tare mass empty
 * @param seated mass with every seat taken
 * @param crush mass with all the load that it may carry
 * @param axles number of axles
 * @param motoredShare share of its mass that rests on driven axles, 0 to 1
 * @param rotating allowance for rotating mass as a share of its mass (0.08 is 8 %)
 * @param brakeWeight its share of the brake force against other vehicles; 1 is usual
 */
public record Vehicle(
    String type,
    Length length,
    Mass tare,
    Mass seated,
    Mass crush,
    int axles,
    double motoredShare,
    double rotating,
    double brakeWeight) {
  public Vehicle {
    if (length.metres() <= 0 || tare.kilograms() <= 0) {
      throw new IllegalArgumentException("vehicle " + type + " has no length or no mass");
    }
  }

  public double massKg(LoadCase load) {
    return switch (load) {
      case TARE -> tare.kilograms();
      case SEATED -> seated.kilograms();
      case CRUSH -> crush.kilograms();
    };
  }

  public boolean motored() {
    return motoredShare > 0;
  }
}
