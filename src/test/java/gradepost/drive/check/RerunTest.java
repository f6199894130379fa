package gradepost.drive.check;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.Mill;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.PlanFailure;
import gradepost.plan.Trigger;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.units.Pressure;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Property: instructions that break a rule are caught when they are run again. */
class RerunTest {
  private final Assignment assignment = Mill.assignment(Direction.FORWARD, "4-car");
  private final TrainModels bench = new TrainModels(assignment);
  private final Ceiling ceiling = Ceiling.of(assignment);
  private final List<Target> targets = Targets.of(assignment, ceiling);
  private final Target first = targets.get(0);
  private final double startM = Stops.markM(assignment, assignment.calls().get(0));
  private final List<Instruction> instructions = new ArrayList<>();

  @BeforeEach
  void start() {
    add(new Trigger.Start(), new Command.Power(0));
    for (int n = 1; n < 4; n++) {
      add(new Trigger.After(3), new Command.Power(n));
    }
  }

  private void add(Trigger trigger, Command command) {
    instructions.add(new Instruction(first, trigger, command));
  }

  private List<PlanFailure> failures() {
    InstructionRun rerun = new InstructionRun(assignment, bench, ceiling);
    rerun.run(startM, instructions, Map.of(first, 1));
    return rerun.failures();
  }

  @Test
  void tooFastIsCaughtWhereTheCeilingIsBroken() {
    add(new Trigger.SpeedUpTo(Speed.ofMph(62).metresPerSecond()), new Command.ShutOff());
    assertThat(failures())
        .first()
        .isInstanceOfSatisfying(
            PlanFailure.OverCeiling.class,
            over -> assertThat(over.speedMps()).isGreaterThan(Speed.ofMph(60).metresPerSecond()));
  }

  @Test
  void aReductionThatIsNotBrakedForIsCaughtAtItsBoard() {
    add(new Trigger.SpeedUpTo(Speed.ofMph(58).metresPerSecond()), new Command.ShutOff());
    add(new Trigger.AtPlace(first.atM() + 1), new Command.ShutOff());
    assertThat(failures())
        .anySatisfy(
            f ->
                assertThat(f)
                    .isInstanceOfSatisfying(
                        PlanFailure.OverCeiling.class,
                        over -> assertThat(over.atM()).isEqualTo(first.atM())));
  }

  @Test
  void notchingDownIsCaughtWhereTheStockForbidsIt() {
    add(new Trigger.After(3), new Command.Power(1));
    assertThat(failures())
        .contains(new PlanFailure.ForbiddenMovement(lastPlace(), new Command.Power(1)));
  }

  @Test
  void skippingANotchIsCaught() {
    instructions.remove(1);
    assertThat(failures()).anyMatch(f -> f instanceof PlanFailure.ForbiddenMovement);
  }

  @Test
  void brakingUnderPowerIsCaught() {
    Command brake = new Command.Brake(Pressure.ofPsi(15).pascals(), Command.Stage.FIRST);
    add(new Trigger.After(3), brake);
    assertThat(failures()).contains(new PlanFailure.ForbiddenMovement(lastPlace(), brake));
  }

  @Test
  void aSpeedThatIsNeverReachedIsCaught() {
    add(new Trigger.SpeedUpTo(Speed.ofMph(200).metresPerSecond()), new Command.ShutOff());
    assertThat(failures()).anyMatch(f -> f instanceof PlanFailure.NeverComes);
  }

  private double lastPlace() {
    InstructionRun rerun = new InstructionRun(assignment, bench, ceiling);
    rerun.run(startM, instructions, Map.of(first, 1));
    List<Action> actions = rerun.actions();
    return actions.get(actions.size() - 1).atM();
  }
}
