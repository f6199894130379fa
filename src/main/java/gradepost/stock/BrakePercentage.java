package gradepost.stock;

import gradepost.stock.law.DecelerationSteps;
import gradepost.units.Acceleration;
import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The brake of stock of which no more is known than its braked weight percentage λ, by the
 * conversion of UNISIG SUBSET-026 A.3.7 to A.3.9 for trains in position P (passenger). It is stated
 * for λ from 30 to 250, speeds up to 200 km/h and trains up to 900 m (ranges from memory). Below
 * about 60 the conversion is not monotonic in speed; that is the source's and is kept.
 *
 * <p>The deceleration is that of the loaded train as it runs, so the force follows the load. The
 * build-up is one step after a time that grows with the length of the train.
 */
public record BrakePercentage(double lambda) {
  /** What counts of λ in service braking (A.3.7.1); an emergency application counts all of it. */
  public static final double MOST_IN_SERVICE = 135;

  /** Up to this speed the conversion is stated. */
  public static final Speed MOST_SPEED = Speed.ofKmh(200);

  /** Up to this length of train the conversion is stated. */
  public static final Length MOST_LENGTH = new Length(900);

  private static final Length NO_LEAST = new Length(0);

  /** Upper end of each band in km/h, then a3, a2, a1 and a0 of its deceleration (A.3.7.6). */
  private static final double[][] BANDS = {
    {100, -6.30e-7, 6.10e-5, 4.72e-3, 0.0663},
    {120, 2.73e-7, -4.54e-6, 5.14e-3, 0.1300},
    {150, 5.58e-8, -6.76e-6, 5.81e-3, 0.0479},
    {180, 3.00e-8, -3.85e-6, 5.52e-3, 0.0480},
    {1000, 3.23e-9, 1.66e-6, 5.06e-3, 0.0559}
  };

  public BrakePercentage {
    if (!(lambda >= 30 && lambda <= 250)) {
      throw new IllegalArgumentException("brake percentage is converted from 30 to 250: " + lambda);
    }
  }

  /** The λ that counts in service braking. */
  public BrakePercentage inService() {
    return new BrakePercentage(Math.min(lambda, MOST_IN_SERVICE));
  }

  /** Up to this speed the deceleration is one figure. */
  public Speed firstLimit() {
    return Speed.ofKmh(16.85 * Math.pow(lambda, 0.428));
  }

  /** Deceleration by bands of speed, brake fully applied. */
  public DecelerationSteps decelerations() {
    List<DecelerationSteps.Step> steps = new ArrayList<>();
    Speed first = firstLimit();
    steps.add(new DecelerationSteps.Step(first, new Acceleration(0.0075 * lambda + 0.076)));
    for (double[] band : BANDS) {
      Speed upTo = Speed.ofKmh(band[0]);
      if (upTo.compareTo(first) > 0) {
        double a = ((band[1] * lambda + band[2]) * lambda + band[3]) * lambda + band[4];
        steps.add(new DecelerationSteps.Step(upTo, new Acceleration(a)));
      }
    }
    return new DecelerationSteps(steps);
  }

  /**
   * The force of a brake that counts with this λ.
   *
   * @param full what its gauge shows when it is fully applied
   */
  public StatedBrakeForce force(Pressure full) {
    DecelerationSteps counted = decelerations();
    Speed from = counted.steps().get(0).upTo();
    return new StatedBrakeForce(
        counted.steps().get(0).deceleration(),
        from,
        full,
        LoadCase.SEATED,
        new Pressure(0),
        counted,
        true);
  }

  /**
   * Full service with what counts in service of this λ (A.3.8): 3.00 + 1.50·(L/100) + 0.10·(L/100)²
   * seconds, L in metres.
   */
  public BrakeSystem service(Pressure full) {
    return inService()
        .system(
            "continuous brake",
            "Service",
            BrakeSystem.Role.SERVICE,
            new BrakeAction.ByLength(3.00, 1.50, 0.10, NO_LEAST),
            full);
  }

  /**
   * Emergency with all of this λ (A.3.8): 2.30 + 0.17·(L/100)² seconds, L in metres, at least 400.
   */
  public BrakeSystem emergency(Pressure full) {
    return system(
        "emergency",
        "Emergency",
        BrakeSystem.Role.EMERGENCY,
        new BrakeAction.ByLength(2.30, 0, 0.17, new Length(400)),
        full);
  }

  private BrakeSystem system(
      String name, String shortName, BrakeSystem.Role role, BrakeAction action, Pressure full) {
    PressureRate atOnce = new PressureRate(full.pascals() / 1e-6);
    return new BrakeSystem(
        name,
        shortName,
        role,
        action,
        atOnce,
        atOnce,
        role == BrakeSystem.Role.SERVICE,
        new BrakeControl.Continuous(),
        full,
        Optional.empty(),
        Optional.empty(),
        Optional.of(this));
  }
}
