package gradepost.stock;

import gradepost.units.Length;
import gradepost.units.Speed;

/**
 * A direct-current series motor on its axle, by its rating. With flux {@code Φ} of the field
 * current, in volts for each radian a second: the back voltage is {@code Φ·ω} and the torque {@code
 * Φ·I}. Saturation follows Fröhlich's curve {@code Φ = Φ∞·I/(I + Ik)} (from memory), scaled by the
 * rating; usable from some tenth of the rated current to twice it.
 *
 * @param ratedVolts across the motor at its rating
 * @param ratedAmperes at its rating
 * @param ratedRpm of the armature at its rating, full field
 * @param ohms of armature and field together
 * @param kneeAmperes {@code Ik}: the current that gives half the greatest flux
 * @param gear turns of the armature for one turn of the wheel
 * @param wheel diameter on the tread
 * @param gearEfficiency share of the torque that reaches the rail, above 0 and up to 1
 */
public record SeriesMotor(
    double ratedVolts,
    double ratedAmperes,
    double ratedRpm,
    double ohms,
    double kneeAmperes,
    double gear,
    Length wheel,
    double gearEfficiency) {
  public SeriesMotor {
    if (!(ratedVolts > 0 && ratedAmperes > 0 && ratedRpm > 0 && kneeAmperes >= 0 && gear > 0)) {
      throw new IllegalArgumentException("a motor has a rating and a gear");
    }
    if (!(ohms >= 0 && ratedVolts > ratedAmperes * ohms)) {
      throw new IllegalArgumentException("a motor at its rating turns against a back voltage");
    }
    if (!(gearEfficiency > 0 && gearEfficiency <= 1 && wheel.metres() > 0)) {
      throw new IllegalArgumentException("a motor drives a wheel");
    }
  }

  /**
   * Flux by the current in the field windings, volts for each radian a second of the armature.
   *
   * @param fieldShare share of the armature current that flows through the field: 1 is full field
   */
  public double flux(double amperes, double fieldShare) {
    double rated = (ratedVolts - ratedAmperes * ohms) / (ratedRpm * 2 * Math.PI / 60);
    double greatest = rated * (ratedAmperes + kneeAmperes) / ratedAmperes;
    double field = amperes * fieldShare;
    return greatest * field / (field + kneeAmperes);
  }

  /**
   * Speed of the train at which the motor takes this current.
   *
   * @param volts across the motor and its share of any resistance in the circuit
   * @param addedOhms that share
   */
  public Speed speed(double volts, double amperes, double fieldShare, double addedOhms) {
    double back = volts - amperes * (ohms + addedOhms);
    double radians = Math.max(0, back) / flux(amperes, fieldShare);
    return new Speed(radians / gear * wheel.metres() / 2);
  }

  /** Force of one motor at the rail. */
  public double effortN(double amperes, double fieldShare) {
    return flux(amperes, fieldShare) * amperes * gear * gearEfficiency * 2 / wheel.metres();
  }
}
