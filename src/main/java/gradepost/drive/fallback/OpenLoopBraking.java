package gradepost.drive.fallback;

import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrainBrake;
import gradepost.plan.Instruction;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One braking as it is printed, carried out by a train that may differ from the planned one: the
 * pressures at the speeds and after the seconds that are printed, whatever comes of it.
 */
final class OpenLoopBraking {
  private final double targetMps;
  private final List<Instruction> told;
  private final StopConditions until = new StopConditions();

  /**
   * @param told from the instruction that begins it
   */
  OpenLoopBraking(double targetMps, List<Instruction> told) {
    this.targetMps = targetMps;
    this.told = List.copyOf(told);
  }

  /**
   * Where the train stands, or its speed is down to the permissible one of the board; the stepper
   * is at the braking point. Empty where that is never.
   */
  OptionalDouble metM(Stepper stepper, TrainBrake rig) {
    double beganM = stepper.atM();
    for (int i = 0; i < told.size(); i++) {
      Instruction instruction = told.get(i);
      until.clear().hopeless(beganM).speedDown(targetMps);
      if (i > 0 && !waitFor(instruction, stepper)) {
        break;
      }
      if (stepper.speedMps() <= targetMps) {
        return OptionalDouble.of(stepper.atM());
      }
      instruction
          .command()
          .act(
              power -> {},
              off -> {},
              brake -> stepper.brake(rig, brake.pressurePa()),
              release -> stepper.brake(rig, 0),
              stand -> {},
              hold -> {});
    }
    StopReason ended = stepper.advance(until.clear().hopeless(beganM).speedDown(targetMps));
    return ended == StopReason.SPEED_DOWN || ended == StopReason.STANDSTILL
        ? OptionalDouble.of(stepper.atM())
        : OptionalDouble.empty();
  }

  /** False where there is nothing to wait for while the train is too fast for its target. */
  private boolean waitFor(Instruction instruction, Stepper stepper) {
    Optional<StopConditions> wait =
        instruction
            .trigger()
            .match(
                place -> Optional.empty(),
                up -> Optional.empty(),
                down -> Optional.of(until.speedDown(Math.max(down.speedMps(), targetMps))),
                after -> Optional.of(until.time(stepper.timeS() + after.seconds())),
                start -> Optional.empty(),
                stand -> Optional.empty());
    wait.ifPresent(stepper::advance);
    return wait.isPresent();
  }
}
