package gradepost.drive.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.HeldLines;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Train;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.PlanFailure;
import gradepost.plan.PlanFailure.NotHeld;
import gradepost.plan.PlanFailure.NotHeld.Why;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Property: a speed that is told to be held keeps a plan from issue just beyond what is safe. */
class HeldSpeedsTest {
  /** Standard gravity, m/s² (ISO 80000-3). */
  private static final double GRAVITY_MPS2 = 9.80665;

  private final List<Instruction> instructions = new ArrayList<>();

  private static Target stop(Assignment assignment) {
    return Targets.of(assignment, Ceiling.of(assignment)).stream()
        .filter(Target::isStop)
        .findFirst()
        .orElseThrow();
  }

  private static List<NotHeld> judged(Assignment assignment, List<Instruction> told) {
    TrainModels models = new TrainModels(assignment);
    List<NotHeld> found = new ArrayList<>();
    for (PlanFailure failure :
        new HeldSpeeds(assignment, models, Ceiling.of(assignment))
            .failures(
                Stops.markM(assignment, assignment.calls().get(0)),
                told,
                Map.of(stop(assignment), 1))) {
      if (failure instanceof NotHeld not) {
        found.add(not);
      }
    }
    return found;
  }

  /** Away from a stand down the fall, then held with the brake, then braked at a place. */
  private List<Instruction> down(Assignment assignment, double upperMps, double untilM) {
    instructions.clear();
    add(assignment, new Trigger.Start(), new Command.Power(0));
    add(assignment, new Trigger.SpeedUpTo(6), new Command.ShutOff());
    Command.WithBrake by = new Command.WithBrake(12 * 6894.76);
    add(
        assignment,
        new Trigger.AtPlace(1000),
        new Command.Hold(by, upperMps - 2, upperMps, untilM));
    return instructions;
  }

  private void add(Assignment assignment, Trigger trigger, Command command) {
    instructions.add(new Instruction(stop(assignment), trigger, command));
  }

  /**
   * Down 20 ‰: the heavy train, that nothing slows, gains g · 0.020 · m / (m + what turns) in the
   * second of the driver and the time in which the brake takes hold.
   */
  @Test
  void theUpperSpeedLeavesTheMarginAndWhatTheTrainGains() {
    Assignment assignment = HeldLines.withBrake();
    TrainModels models = new TrainModels(assignment);
    double most = 0;
    for (Train train : List.of(models.worstTrain(), models.plannedTrain())) {
      double massKg = train.weightN() / GRAVITY_MPS2;
      most = Math.max(most, GRAVITY_MPS2 * 0.020 * massKg / train.inertiaKg());
    }
    double lagS =
        models.slowing().deadTimeS()
            + (12 * 6894.76 + models.slowing().thresholdPa())
                / (2 * models.slowing().applyPaPerS());
    double marginMps = assignment.policy().margins().underSpeed().metresPerSecond();
    double top = 40 / 3.6 - marginMps - most * (1 + lagS);
    assertThat(why(judged(assignment, down(assignment, top - 0.002, 3000))))
        .doesNotContain(Why.TOP);
    List<NotHeld> beyond = judged(assignment, down(assignment, top + 0.002, 3000));
    assertThat(why(beyond)).contains(Why.TOP);
    assertThat(beyond.get(0).mayMps()).isCloseTo(top, within(0.002));
  }

  private static List<Why> why(List<NotHeld> found) {
    return found.stream().map(NotHeld::why).toList();
  }

  @Test
  void noSpeedIsHeldWithABrakeThatOnlyReleasesInFull() {
    Assignment eased = HeldLines.withBrake();
    Assignment full = HeldLines.withFullRelease();
    assertThat(why(judged(eased, down(eased, 8, 3000)))).doesNotContain(Why.FULL_RELEASE);
    assertThat(why(judged(full, down(full, 8, 3000)))).contains(Why.FULL_RELEASE);
  }

  /** A notch that does not hold the train on the rise loses the speed. */
  @Test
  void aTrainThatDropsOutOfTheBandDoesNotHoldIt() {
    Assignment assignment = HeldLines.withPower();
    instructions.clear();
    add(assignment, new Trigger.Start(), new Command.Power(0));
    add(assignment, new Trigger.After(2), new Command.Power(1));
    add(assignment, new Trigger.SpeedUpTo(5), new Command.ShutOff());
    Command.Hold hold = new Command.Hold(new Command.InNotch(1), 3, 5, 3000);
    add(assignment, new Trigger.AtPlace(400), hold);
    assertThat(judged(assignment, instructions)).isEmpty();
    instructions.set(
        3,
        new Instruction(
            stop(assignment),
            new Trigger.AtPlace(400),
            new Command.Hold(new Command.WithBrake(1e5), 3, 5, 3000)));
    assertThat(why(judged(assignment, instructions))).contains(Why.LEFT);
  }

  /**
   * 8 m/s at 0.85 m/s² and less the fall takes some 60 m, and the brake some seconds more: 400 m
   * are enough for it, and 100 m from a higher speed by the policy's technique are not.
   */
  @Test
  void aTrainAtTheUpperEdgeIsNotTooLateAtTheNextBrakingPoint() {
    Assignment assignment = HeldLines.withBrake();
    double stopM = stop(assignment).atM();
    assertThat(braked(assignment, stopM - 400)).isEmpty();
    List<NotHeld> late = braked(assignment, stopM - 100);
    assertThat(late).isNotEmpty();
    // Falling on from 8 m/s, with nothing on.
    assertThat(late.get(0).isMps()).isGreaterThan(8);
    assertThat(late.get(0).atM()).isCloseTo(stopM - 100, within(0.01));
  }

  private List<NotHeld> braked(Assignment assignment, double atM) {
    List<Instruction> told = down(assignment, 8, atM - 60);
    add(assignment, new Trigger.AtPlace(atM), new Command.Brake(15 * 6894.76, Command.Stage.FIRST));
    add(assignment, new Trigger.Standstill(), new Command.Stand());
    return judged(assignment, told).stream().filter(n -> n.why() == Why.EDGE).toList();
  }
}
