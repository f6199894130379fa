package gradepost.policy;

import gradepost.units.Acceleration;
import gradepost.units.Length;
import gradepost.units.Span;
import gradepost.units.Speed;

/**
 * How power and coasting are used where no rule of the operator says it.
 *
 * @param gain a notch is high enough to gain speed where it gives this against the steepest rise a
 *     little ahead
 * @param hold a notch is high enough to hold speed where it gives this there
 * @param check a checking application is strong enough where it slows the train by this
 * @param longestCoast coasting stands in for a brake before a lower speed for no longer than this
 * @param coastKeeps coasting before a braking point ends where the speed has fallen to this share
 * @param sparedKeeps power is spared only where the train keeps this share of its speed
 * @param offAtLeast power that comes off stays off for this at least
 * @param movement what an instruction is worth, as a share of the energy of a leg; to take the
 *     handle through several notches in one go is one
 * @param creeping no train coasts at less than this for long
 * @param gradientAhead a notch and a checking application are chosen for the gradients of so much
 *     line ahead
 */
public record PowerPractice(
    Acceleration gain,
    Acceleration hold,
    Acceleration check,
    Span longestCoast,
    double coastKeeps,
    double sparedKeeps,
    Span offAtLeast,
    double movement,
    Speed creeping,
    Length gradientAhead) {

  /** Common practice, from memory. */
  public static final PowerPractice USUAL =
      new PowerPractice(
          new Acceleration(0.12),
          new Acceleration(0.04),
          new Acceleration(0.08),
          new Span(45),
          0.75,
          0.6,
          new Span(5),
          0.03,
          new Speed(5.4),
          new Length(400));
}
