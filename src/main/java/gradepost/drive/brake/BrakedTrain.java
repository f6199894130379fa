package gradepost.drive.brake;

import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrainBrake;

/** What a braking does to a train: it works the brake, and lets the train run. */
interface BrakedTrain {

  /** Asks for a pressure. */
  void brake(TrainBrake rig, double pressurePa);

  /**
   * Lets the train run to a time of the run or down to a speed, whichever comes first; a stand ends
   * it too.
   *
   * @param timeS infinite where it does not matter
   * @param downToMps minus infinite where it does not matter
   */
  StopReason advance(double timeS, double downToMps);

  /** The train of a stepper, from where it stands. */
  static BrakedTrain of(Stepper stepper) {
    double beganM = stepper.atM();
    StopConditions until = new StopConditions();
    return new BrakedTrain() {
      @Override
      public void brake(TrainBrake rig, double pressurePa) {
        stepper.brake(rig, pressurePa);
      }

      @Override
      public StopReason advance(double timeS, double downToMps) {
        return stepper.advance(until.clear().hopeless(beganM).time(timeS).speedDown(downToMps));
      }
    };
  }
}
