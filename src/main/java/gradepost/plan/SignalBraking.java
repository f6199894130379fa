package gradepost.plan;

import gradepost.route.Signal;
import gradepost.stock.BrakeSystem;
import java.util.List;
import java.util.Optional;

/**
 * Whether a signal at danger can be stood short of from where its caution is given.
 *
 * @param signalM distance run of the signal
 * @param standM where the train stands: the policy's distance short of it
 * @param caution the signal that shows caution for it; empty where the route data has none
 * @param warnedM where the driver is told: the AWS magnet of that signal, or the signal itself;
 *     where no caution is known, the signal at danger
 * @param plannedMps planned speed where he is told
 * @param ceilingMps permissible speed there
 * @param brakingM where the planned technique begins from the planned speed; empty if too late
 * @param technique what is done from there on, power off since the warning, and how it comes out;
 *     empty if too late, or if the train stands before that place
 * @param needs full braking on the safe side, for each brake but the emergency
 */
public record SignalBraking(
    Signal signal,
    double signalM,
    double standM,
    Optional<Signal> caution,
    double warnedM,
    double plannedMps,
    double ceilingMps,
    Optional<Double> brakingM,
    List<Action> technique,
    List<Need> needs) {

  /**
   * What one brake needs from the permissible speed.
   *
   * @param needM distance from the demand to the stand; infinite where the gradient beats it
   */
  public record Need(BrakeSystem brake, double needM) {}

  public SignalBraking {
    technique = List.copyOf(technique);
    needs = List.copyOf(needs);
  }

  /** Distance from the warning to the stand. */
  public double availableM() {
    return standM - warnedM;
  }

  /** Whether every one of these brakes has room from the permissible speed. */
  public boolean suffices() {
    return needs.stream().allMatch(n -> n.needM() <= availableM());
  }
}
