package gradepost.drive;

import java.util.List;
import java.util.Optional;

/**
 * The run to one target as it was worked out.
 *
 * @param line states of the whole leg up to the printed braking point; past it the train coasts
 * @param braking as solved for the printed place; empty when no brake is needed
 */
record Piece(
    Target target,
    double fromM,
    Optional<Double> shutOffM,
    Optional<Double> exactBrakingM,
    Optional<Double> brakingM,
    double brakingMps,
    Optional<Braking> braking,
    Line line,
    List<Instruction> instructions,
    double endM,
    boolean found) {
  Piece with(List<Instruction> others) {
    return new Piece(
        target,
        fromM,
        shutOffM,
        exactBrakingM,
        brakingM,
        brakingMps,
        braking,
        line,
        others,
        endM,
        found);
  }

  /** The same on another run. */
  Piece on(Line other) {
    return new Piece(
        target,
        fromM,
        shutOffM,
        exactBrakingM,
        brakingM,
        brakingMps,
        braking,
        other,
        instructions,
        endM,
        found);
  }

  /** Whether the brake is on at its end. */
  boolean staysOn() {
    return braking.filter(Braking::staysOn).isPresent();
  }
}
