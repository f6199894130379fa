package gradepost.stock;

import gradepost.units.Length;
import gradepost.units.Mass;
import java.util.Optional;

/**
 * A kind of vehicle.
 *
 * @param length over couplers: the share of the train that it takes up
 * @param tare mass empty
 * @param seated mass with every seat taken
 * @param crush mass with all the load that it may carry
 * @param axles number of axles
 * @param motoredShare share of its mass that rests on driven axles, 0 to 1
 * @param rotating what its rotating parts add to the mass that has to be slowed, in every load
 * @param brakeWeight its share of the brake force against other vehicles; 1 is usual
 * @param valveAt from one of its ends to the valve that answers the brake pipe; empty where it is
 *     not stated: its middle then counts
 */
public record Vehicle(
    String type,
    Length length,
    Mass tare,
    Mass seated,
    Mass crush,
    int axles,
    double motoredShare,
    RotatingMass rotating,
    double brakeWeight,
    Optional<Length> valveAt) {
  public Vehicle {
    if (length.metres() <= 0 || tare.kilograms() <= 0) {
      throw new IllegalArgumentException("vehicle " + type + " has no length or no mass");
    }
    if (valveAt.isPresent() && valveAt.get().compareTo(length) > 0) {
      throw new IllegalArgumentException("vehicle " + type + " ends before its valve");
    }
  }

  /** Mass under a load without what turns, kilograms. */
  public double massKg(LoadCase load) {
    return switch (load) {
      case TARE -> tare.kilograms();
      case SEATED -> seated.kilograms();
      case CRUSH -> crush.kilograms();
    };
  }

  /** Its mass and that of its rotating parts: what a force has to slow. */
  public double inertiaKg(LoadCase load) {
    return massKg(load) + rotating.of(tare).kilograms();
  }

  /**
   * Metres of pipe from the leading end of the vehicle to its valve. A vehicle may stand either way
   * round, so that the farther of both ends counts: an application is late, never early.
   */
  public double valveM() {
    double whole = length.metres();
    double stated = valveAt.map(Length::metres).orElse(whole / 2);
    return Math.max(stated, whole - stated);
  }

  /** Whether it has motors. */
  public boolean motored() {
    return motoredShare > 0;
  }
}
