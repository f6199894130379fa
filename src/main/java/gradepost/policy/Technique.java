package gradepost.policy;

import gradepost.units.Pressure;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;

/**
 * How the brake is used towards a target.
 *
 * @param first first application, to feel the brake
 * @param firstHeld how long it is held before the main application
 * @param main main application; solved again for the printed place
 * @param eases in the order of use: falling speeds, falling pressures
 */
public record Technique(Pressure first, Span firstHeld, Pressure main, List<Ease> eases) {

  /**
   * Ease to {@code to} when the speed has fallen to so much above that of the target; zero pressure
   * is a release.
   */
  public record Ease(Speed aboveTarget, Pressure to) {}

  public Technique {
    eases = List.copyOf(eases);
  }
}
