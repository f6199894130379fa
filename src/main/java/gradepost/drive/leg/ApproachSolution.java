package gradepost.drive.leg;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.RunStates;
import gradepost.plan.Instruction;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;

/**
 * The run to one target as it was worked out.
 *
 * @param line states of the whole leg up to the printed braking point; past it the train coasts
 * @param braking as solved for the printed place; empty when no brake is needed
 */
public record ApproachSolution(
    Target target,
    double fromM,
    Optional<Double> shutOffM,
    Optional<Double> exactBrakingM,
    Optional<Double> brakingM,
    double brakingMps,
    Optional<Braking> braking,
    RunStates line,
    List<Instruction> instructions,
    double endM,
    boolean found) {
  /** The same with other instructions. */
  public ApproachSolution with(List<Instruction> others) {
    return new ApproachSolution(
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

  /** The same from further back. */
  ApproachSolution from(double otherM) {
    return new ApproachSolution(
        target,
        otherM,
        shutOffM,
        exactBrakingM,
        brakingM,
        brakingMps,
        braking,
        line,
        instructions,
        endM,
        found);
  }

  /** The same on another run. */
  public ApproachSolution on(RunStates other) {
    return new ApproachSolution(
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
