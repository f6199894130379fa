package gradepost.drive.fallback;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.HeldSpeed;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.policy.AdhesionCase;
import java.util.ArrayList;
import java.util.List;

/**
 * How a train goes on after it was braked in another state of the rail than the planned one: the
 * plan's next actions are carried out by their own triggers, as far as these are met.
 */
final class RailRun {
  private final TrainModels bench;
  private final AdhesionCase adhesion;
  private final StopConditions until = new StopConditions();

  RailRun(TrainModels bench, AdhesionCase adhesion) {
    this.bench = bench;
    this.adhesion = adhesion;
  }

  /**
   * The run to the next application.
   *
   * @param planned what the run of {@code piece} is picked up with
   * @param point on this rail
   * @param next what the plan does behind it, up to its braking point
   */
  RailLine braked(
      ApproachSolution piece, Stepper planned, PlannedPoint point, ApproachSolution next) {
    double atM = point.atM().orElseThrow();
    Stepper stepper = bench.plannedStepper(adhesion);
    piece.line().pickUpBraked(planned, atM);
    stepper.restore(planned.save());
    stepper.shutOff();
    RailLine line = new RailLine(piece.line(), planned, atM);
    stepper.record((t, s, v, p, n) -> line.add(stepper.save()));
    Braking braking = point.braking().orElseThrow();
    braking.run(stepper);
    double lastS = stepper.timeS();
    double endM = next.target().atM();
    List<Instruction> then = new ArrayList<>(next.instructions());
    if (braking.staysOn()) {
      // It comes off on the page of its own board.
      piece.instructions().stream()
          .filter(i -> i.command().isRelease())
          .reduce((a, b) -> b)
          .ifPresent(i -> then.add(0, i));
    }
    for (Instruction instruction : then) {
      boolean own = instruction.command().brakesForTarget();
      if (own || !await(instruction.trigger(), stepper, lastS, endM)) {
        break;
      }
      carryOut(instruction.command(), stepper, braking, endM);
      lastS = stepper.timeS();
    }
    stepper.advance(until.clear().place(endM));
    stepper.record(null);
    return line;
  }

  /** False where the end comes first. */
  private boolean await(Trigger trigger, Stepper stepper, double lastS, double endM) {
    until.clear().place(endM);
    stepper.advance(
        trigger.match(
            place -> until.place(Math.min(place.atM(), endM)),
            up -> until.speedUp(up.speedMps()),
            down -> until.speedDown(down.speedMps()),
            after -> until.time(lastS + after.seconds()),
            start -> until,
            stand -> until));
    return stepper.atM() < endM && stepper.speedMps() > 0;
  }

  private void carryOut(Command command, Stepper stepper, Braking last, double endM) {
    command.act(
        power -> stepper.power(power.notch()),
        off -> stepper.shutOff(),
        brake -> stepper.brake(bench.slowing(), brake.pressurePa()),
        release -> stepper.brake(last.rig(), 0),
        stand -> {},
        hold -> hold(hold, stepper, endM));
  }

  private void hold(Command.Hold hold, Stepper stepper, double endM) {
    HeldSpeed held = new HeldSpeed(hold, bench, stepper, (trigger, command) -> {});
    held.run(endM);
    held.end();
  }
}
