package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.EvenLine;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import org.junit.jupiter.api.Test;

/** The states of a run on an even line, from which it is picked up again. */
class RunStatesTest {
  private final Stepper stepper = new TrainModels(EvenLine.of(0)).plannedStepper();
  private final RunStates line = new RunStates();

  private void on(double atM) {
    stepper.advance(new StopConditions().place(atM));
    line.add(stepper.save());
  }

  @Test
  void theTrainCoastsFromWherePowerCameOff() {
    stepper.place(0, 1000, 3);
    stepper.power(0);
    line.add(stepper.save());
    assertThat(line.idleFromM()).isEqualTo(1000);
    on(1010);
    assertThat(line.idleFromM()).isEqualTo(stepper.atM());
    stepper.shutOff();
    double offM = stepper.atM();
    line.add(stepper.save());
    on(1020);
    on(1030);
    assertThat(line.idleFromM()).isEqualTo(offM);
    stepper.power(0);
    line.add(stepper.save());
    assertThat(line.idleFromM()).isEqualTo(stepper.atM());
  }
}
