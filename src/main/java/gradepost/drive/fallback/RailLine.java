package gradepost.drive.fallback;

import gradepost.drive.brake.RunStates;
import gradepost.motion.Stepper;

/**
 * The run in another state of the rail than the planned one: as another run up to an application,
 * and from there as the train was braked in that state.
 */
final class RailLine extends RunStates {
  private final RunStates before;
  private final Stepper own;
  private final double fromM;

  /**
   * @param before the run up to the application
   * @param own what that run is picked up with
   */
  RailLine(RunStates before, Stepper own, double fromM) {
    this.before = before;
    this.own = own;
    this.fromM = fromM;
  }

  /** Where the train was braked in that state, metres run: what comes next lies behind it. */
  double brakedM() {
    return fromM;
  }

  @Override
  public double startM() {
    return before.startM();
  }

  @Override
  public void pickUp(Stepper stepper, double atM) {
    if (atM < fromM) {
      before.pickUp(own, atM);
      stepper.restore(own.save());
    } else {
      super.pickUp(stepper, atM);
    }
  }

  @Override
  public void pickUpBraked(Stepper stepper, double atM) {
    pickUp(stepper, atM);
  }
}
