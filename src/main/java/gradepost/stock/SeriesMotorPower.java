package gradepost.stock;

import gradepost.units.Force;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The power of a unit with series motors: for each group of the controller the current is held at
 * its limit while the starting resistance is cut out, and then follows the motor's own curve. Gives
 * the efforts of the notches that the rest works with.
 *
 * @param lineVolts at the collector shoes or the pantograph
 * @param motors on each motored vehicle
 * @param groups in the order of the handle
 */
public record SeriesMotorPower(
    SeriesMotor motor, double lineVolts, int motors, List<Group> groups) {
  /** The curve is followed down to this share of the limiting current. */
  private static final double LEAST_CURRENT = 0.08;

  private static final int POINTS = 40;

  /**
   * A notch of the handle.
   *
   * @param inSeries motors that share the line voltage
   * @param limitAmperes current of one motor while resistance is cut out
   * @param fieldShare share of the current through the field: 1 is full field, less is weak field
   * @param fixedOhms resistance that stays in the circuit of these motors (a shunting notch)
   * @param longest it is kept; empty for a running notch
   */
  public record Group(
      String name,
      int inSeries,
      double limitAmperes,
      double fieldShare,
      double fixedOhms,
      Optional<Span> longest) {
    public Group {
      if (inSeries < 1 || !(limitAmperes > 0 && fixedOhms >= 0)) {
        throw new IllegalArgumentException("group " + name + " has motors and a current");
      }
      if (!(fieldShare > 0 && fieldShare <= 1)) {
        throw new IllegalArgumentException("group " + name + " has a field: " + fieldShare);
      }
    }

    /** A running notch. */
    public Group(
        String name, int inSeries, double limitAmperes, double fieldShare, double fixedOhms) {
      this(name, inSeries, limitAmperes, fieldShare, fixedOhms, Optional.empty());
    }
  }

  public SeriesMotorPower {
    groups = List.copyOf(groups);
    if (!(lineVolts > 0) || motors < 1 || groups.isEmpty()) {
      throw new IllegalArgumentException("motors have a line and a controller");
    }
  }

  /** The same unit where the line has another voltage. */
  public SeriesMotorPower atLineVolts(double volts) {
    return new SeriesMotorPower(motor, volts, motors, groups);
  }

  /**
   * Speed at which all starting resistance of a group is cut out with this current: where its own
   * curve begins and the next group can follow.
   */
  public Speed resistanceOut(Group group, double amperes) {
    return motor.speed(
        lineVolts / group.inSeries(),
        amperes,
        group.fieldShare(),
        group.fixedOhms() / group.inSeries());
  }

  /** Effort of one motored vehicle in each notch. */
  public List<Notch> notches() {
    return groups.stream().map(this::notch).toList();
  }

  /** The power as notches, each with its effort against speed. */
  public Traction traction(Span timePerNotch, boolean notchingDown) {
    return new Traction(notches(), timePerNotch, notchingDown);
  }

  private Notch notch(Group group) {
    List<EffortPoint> points = new ArrayList<>();
    double standing =
        lineVolts / group.inSeries() / (motor.ohms() + group.fixedOhms() / group.inSeries());
    double most = Math.min(group.limitAmperes(), standing);
    double least = group.limitAmperes() * LEAST_CURRENT;
    if (least >= most) {
      throw new IllegalArgumentException(
          "group " + group.name() + " lets no current through: " + most + " A");
    }
    points.add(new EffortPoint(new Speed(0), effort(group, most)));
    double ratio = Math.pow(least / most, 1.0 / POINTS);
    double amperes = most;
    Speed last = new Speed(0);
    for (int i = 0; i <= POINTS; i++) {
      Speed speed = resistanceOut(group, amperes);
      if (speed.compareTo(last) > 0) {
        points.add(new EffortPoint(speed, effort(group, amperes)));
        last = speed;
      }
      amperes *= ratio;
    }
    // The curve of a series motor never ends; what is left of it is let fall to nothing.
    points.add(new EffortPoint(new Speed(last.metresPerSecond() * 1.25), new Force(0)));
    return new Notch(group.name(), points, group.longest());
  }

  private Force effort(Group group, double amperes) {
    return new Force(motors * motor.effortN(amperes, group.fieldShare()));
  }
}
