package gradepost.policy;

import gradepost.units.Acceleration;
import gradepost.units.Pressure;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;

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
   * An ease.
   *
   * @param aboveTarget when the speed has fallen to so much above that of the target
   * @param to what is then asked for at least; zero is a release
   * @param slows and so much that the train still slows by this at that speed; empty for the usual
   *     one ({@link BrakePractice#eased}), which only keeps it from rolling on
   */
  public record Ease(Speed aboveTarget, Pressure to, Optional<Acceleration> slows) {
    /** One by its pressure alone. */
    public Ease(Speed aboveTarget, Pressure to) {
      this(aboveTarget, to, Optional.empty());
    }
  }

  public Technique {
    eases = List.copyOf(eases);
  }
}
