package gradepost.drive;

import gradepost.motion.BrakeRig;
import gradepost.motion.Stepper;
import gradepost.motion.Until;
import java.util.List;

/**
 * One braking as it is printed, carried out by a train that may differ from the planned one: the
 * pressures at the speeds and after the seconds that are printed, whatever comes of it.
 */
final class ToldBraking {
  /** A run that has not met its target so far past the start of the brake never will. */
  private static final double HOPELESS_M = 8000;

  private final double targetMps;
  private final List<Instruction> told;
  private final Until until = new Until();

  /**
   * @param piece one that is braked
   */
  ToldBraking(Piece piece) {
    targetMps = piece.target().speedMps();
    double point = piece.brakingM().orElseThrow();
    told =
        piece.instructions().stream()
            .dropWhile(
                i -> !(i.trigger() instanceof Trigger.AtPlace at && at.atM() >= point - 1e-6))
            .toList();
  }

  /**
   * Where the train stands, or its speed is down to the permissible one of the board; the stepper
   * is at the braking point.
   */
  double metM(Stepper stepper, BrakeRig rig) {
    double hopelessM = stepper.atM() + HOPELESS_M;
    for (Instruction instruction : told) {
      until.clear().place(hopelessM).speedDown(targetMps);
      if (instruction != told.get(0) && !waitFor(instruction, stepper)) {
        break;
      }
      if (stepper.speedMps() <= targetMps) {
        return stepper.atM();
      }
      if (instruction.command() instanceof Command.Brake brake) {
        stepper.brake(rig, brake.pressurePa());
      } else if (instruction.command() instanceof Command.Release) {
        stepper.brake(rig, 0);
      }
    }
    stepper.advance(until.clear().place(hopelessM).speedDown(targetMps));
    return stepper.atM();
  }

  /** False where there is nothing to wait for while the train is too fast for its target. */
  private boolean waitFor(Instruction instruction, Stepper stepper) {
    if (instruction.trigger() instanceof Trigger.After after) {
      until.time(stepper.timeS() + after.seconds());
    } else if (instruction.trigger() instanceof Trigger.SpeedDownTo down) {
      until.speedDown(Math.max(down.speedMps(), targetMps));
    } else {
      return false;
    }
    stepper.advance(until);
    return true;
  }
}
