package gradepost.drive.fallback;

import gradepost.drive.brake.RunStates;
import gradepost.motion.Stepper;
import java.util.Optional;

/**
 * The run of a train that holds one speed up to wherever it is picked up, and has power and brakes
 * off there.
 */
final class HeldSpeed extends RunStates {
  private final RunStates run;
  private final Optional<Stepper> own;
  private final double mps;

  /**
   * @param run the planned one
   * @param own what that is picked up with, where the reservoirs hold what it leaves in them; empty
   *     where they are always full
   */
  HeldSpeed(RunStates run, Optional<Stepper> own, double mps) {
    this.run = run;
    this.own = own;
    this.mps = mps;
  }

  @Override
  public double startM() {
    return run.startM();
  }

  @Override
  public void pickUp(Stepper stepper, double atM) {
    own.ifPresent(as -> run.pickUp(as, atM));
    stepper.place(own.map(Stepper::timeS).orElse(0.0), atM, mps);
    own.ifPresent(stepper::chargeAs);
  }

  @Override
  public void pickUpBraked(Stepper stepper, double atM) {
    pickUp(stepper, atM);
  }
}
