package gradepost.stock;

import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import java.util.Optional;

/**
 * One way of braking the train. Another arrangement is another list of these; it needs no code.
 *
 * @param name in full ("electro-pneumatic")
 * @param shortName on charts and in tables ("EP")
 * @param application how fast a cylinder fills towards the demand
 * @param release how fast it empties towards the demand
 * @param gradualRelease whether it can be eased; where not, every release is a full release
 * @param full cylinder pressure at full service, or of the emergency application
 * @param pipe how the pipe governs it, where the gauges show a pipe
 * @param recharge how fast the reservoirs on the vehicles fill again after a full release; empty
 *     where they are always full. Until they are, another application has less to give.
 * @param percentage the braked weight percentage that gives it a force of its own; empty where the
 *     force is the one that the stock states for all its systems
 */
public record BrakeSystem(
    String name,
    String shortName,
    Role role,
    BrakeAction action,
    PressureRate application,
    PressureRate release,
    boolean gradualRelease,
    BrakeControl control,
    Pressure full,
    Optional<PipeLaw> pipe,
    Optional<PressureRate> recharge,
    Optional<BrakePercentage> percentage) {

  /** What it is for. */
  public enum Role {
    /** What planned braking uses. */
    SERVICE,
    /** What is left when the service brake gives nothing. */
    FALLBACK,
    /** The last recourse: no graduation, held until the train stands. */
    EMERGENCY
  }

  /** A brake whose reservoirs are always full. */
  public BrakeSystem(
      String name,
      String shortName,
      Role role,
      BrakeAction action,
      PressureRate application,
      PressureRate release,
      boolean gradualRelease,
      BrakeControl control,
      Pressure full,
      Optional<PipeLaw> pipe) {
    this(
        name,
        shortName,
        role,
        action,
        application,
        release,
        gradualRelease,
        control,
        full,
        pipe,
        Optional.empty(),
        Optional.empty());
  }

  public BrakeSystem {
    if (recharge.isPresent() && (pipe.isEmpty() || recharge.get().pascalsPerSecond() <= 0)) {
      throw new IllegalArgumentException("brake system " + name + " recharges from a pipe");
    }
    if (application.pascalsPerSecond() <= 0 || release.pascalsPerSecond() <= 0) {
      throw new IllegalArgumentException("brake system " + name + " never fills or never empties");
    }
    if (full.pascals() <= 0) {
      throw new IllegalArgumentException("brake system " + name + " has no pressure");
    }
  }

  /** The same brake in another role. */
  public BrakeSystem as(Role other) {
    return new BrakeSystem(
        name,
        shortName,
        other,
        action,
        application,
        release,
        gradualRelease,
        control,
        full,
        pipe,
        recharge,
        percentage);
  }

  /** The same brake used towards a speed above zero: its equivalent build-up may then be longer. */
  public BrakeSystem towardsASpeed() {
    BrakeAction slower = action.towardsASpeed();
    if (slower.equals(action)) {
      return this;
    }
    return new BrakeSystem(
        name,
        shortName,
        role,
        slower,
        application,
        release,
        gradualRelease,
        control,
        full,
        pipe,
        recharge,
        percentage);
  }
}
