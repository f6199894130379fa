package gradepost.drive;

import gradepost.motion.Stepper;

/**
 * The run in another state of the rail than the planned one: as another run up to an application,
 * and from there as the train was braked in that state.
 */
final class RailLine extends Line {
  private final Line before;
  private final Stepper own;
  private final double fromM;

  /**
   * @param before the run up to the application
   * @param own what that run is picked up with
   */
  RailLine(Line before, Stepper own, double fromM) {
    this.before = before;
    this.own = own;
    this.fromM = fromM;
  }

  @Override
  double startM() {
    return before.startM();
  }

  @Override
  void pickUp(Stepper stepper, double atM) {
    if (atM < fromM) {
      before.pickUp(own, atM);
      stepper.restore(own.save());
    } else {
      super.pickUp(stepper, atM);
    }
  }

  @Override
  void pickUpBraked(Stepper stepper, double atM) {
    pickUp(stepper, atM);
  }
}
