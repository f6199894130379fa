package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.ControlProfile;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.motion.Stepper;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import java.util.List;

/**
 * A run by the rules of driving on {@link EvenLine}, where a train that coasts on the level keeps
 * its speed. Places of the print grid are at 1.312 m and every 10 m.
 *
 * <p>Under 20 m/s, 72 km/h, power comes off at 68 and is taken again at 59 km/h; the brake checks
 * the speed from 70 down to 62 km/h. Under 10 m/s these are 32, 25, 34 and 27 km/h.
 */
abstract class FreeRuns {
  static final double KMH = 1 / 3.6;
  static final double END_M = 5500;
  static final double NEVER = Double.POSITIVE_INFINITY;

  Assignment line = EvenLine.of(0);
  List<CeilingStep> ceiling = List.of(step(0, 6000, 20));
  double capMps = NEVER;
  double capUntilM;
  double noPowerFromM = NEVER;
  double noPowerToM = NEVER;
  ControlProfile profile = ControlProfile.NONE;
  Stepper stepper = new TrainModels(line).plannedStepper();

  static CeilingStep step(double fromM, double toM, double mps) {
    return new CeilingStep(fromM, toM, mps, "line");
  }

  /** From a stand, or coasting at a speed. */
  FreeRun run(double fromM, double mps, double toM) {
    TrainModels models = new TrainModels(line);
    stepper = models.plannedStepper();
    stepper.place(0, fromM, mps);
    return run(models, toM);
  }

  FreeRun run(TrainModels models, double toM) {
    DriverRules rules =
        new DriverRules(
            line,
            models,
            new Ceiling(ceiling),
            stepper.atM(),
            DrivingStrategy.of(line.policy().run()).by(profile));
    FreeRun free =
        new FreeRun(
            rules, line, models, stepper, END_M, capMps, capUntilM, noPowerFromM, noPowerToM);
    SpeedsSeen seen = new SpeedsSeen();
    seen.from(stepper.speedMps());
    free.start(seen);
    free.run(toM);
    return free;
  }

  static void assertStep(FreeRun.Step step, Trigger trigger, Command command) {
    assertThat(step.command()).isEqualTo(command);
    assertThat(kind(step.trigger())).isEqualTo(kind(trigger));
    assertThat(value(step.trigger())).isCloseTo(value(trigger), within(1e-6));
    assertThat(step.after().notch())
        .as("handle, after " + command)
        .isEqualTo(command.power().map(Command.Power::notch).orElse(-1));
    assertThat(step.after().demandPa())
        .as("brake, after " + command)
        .isEqualTo(command instanceof Command.Brake brake ? brake.pressurePa() : 0);
  }

  static String kind(Trigger trigger) {
    return trigger.getClass().getSimpleName();
  }

  static double value(Trigger trigger) {
    return trigger.match(
        Trigger.AtPlace::atM,
        Trigger.SpeedUpTo::speedMps,
        Trigger.SpeedDownTo::speedMps,
        Trigger.After::seconds,
        start -> 0.0,
        stand -> 0.0);
  }

  static Command power(int notch) {
    return new Command.Power(notch);
  }

  static Command check(double pascals) {
    return new Command.Brake(pascals, Command.Stage.CHECK);
  }

  static final Command OFF = new Command.ShutOff();
  static final Command RELEASE = new Command.Release();

  static List<Command> commands(FreeRun free) {
    return free.steps().stream().map(FreeRun.Step::command).toList();
  }
}
