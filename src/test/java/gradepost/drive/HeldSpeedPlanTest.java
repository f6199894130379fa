package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.PlanVerifier;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.task.Assignment;
import gradepost.told.PrintedCommand;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Property: where a run would do the same again and again under one permissible speed, the plan
 * tells it as one instruction, and what is printed is the run of that instruction.
 */
class HeldSpeedPlanTest {
  private static List<Action> holds(Plan plan) {
    return plan.actions().stream().filter(a -> a.command().hold().isPresent()).toList();
  }

  private static Command.Hold hold(Plan plan) {
    return holds(plan).get(0).command().hold().orElseThrow();
  }

  @Test
  void powerAndOffAgainAndAgainAreOneInstruction() {
    Plan plan = Planner.plan(HeldLines.withPower());
    assertThat(plan.failures()).isEmpty();
    assertThat(holds(plan)).isNotEmpty();
    assertThat(hold(plan).by()).isInstanceOf(Command.InNotch.class);
    driven(plan);
  }

  @Test
  void checkAndReleaseAgainAndAgainAreOneInstruction() {
    Plan plan = Planner.plan(HeldLines.withBrake());
    assertThat(plan.failures()).isEmpty();
    assertThat(holds(plan)).isNotEmpty();
    assertThat(hold(plan).by()).isInstanceOf(Command.WithBrake.class);
    driven(plan);
  }

  @Test
  void noSpeedIsHeldWithABrakeThatOnlyReleasesInFull() {
    Plan plan = Planner.plan(HeldLines.withFullRelease());
    assertThat(holds(plan)).isEmpty();
    assertThat(plan.actions()).anyMatch(a -> a.command().checksSpeed());
  }

  /** Hardly more energy than without, no slower than is allowed, and fewer things to remember. */
  @Test
  void itIsTheBetterForIt() {
    for (Assignment assignment : List.of(HeldLines.withPower(), HeldLines.withBrake())) {
      Plan held = Planner.plan(assignment);
      Plan plain = Planner.plan(assignment, PlannerSettings.usual().holding(0));
      assertThat(holds(held)).isNotEmpty();
      assertThat(holds(plain)).isEmpty();
      assertThat(held.failures()).isEmpty();
      assertThat(held.energyJ()).isLessThan(1.01 * plain.energyJ());
      assertThat(held.handleMovements()).isLessThan(plain.handleMovements());
      double allowance = 1 + assignment.policy().run().timeAllowance();
      assertThat(held.runningTimeS()).isLessThan(allowance * held.fastest().timeS() + 1);
    }
  }

  /** From the sheets alone: the same times, and between the two speeds more than once. */
  private static void driven(Plan plan) {
    InstructionRun run = new PlanVerifier(plan.assignment()).run(plan.told());
    assertThat(run.timeS()).isCloseTo(plan.runningTimeS(), within(0.01));
    assertThat(run.energyJ()).isCloseTo(plan.energyJ(), within(1.0));
    for (Action action : holds(plan)) {
      Command.Hold hold = action.command().hold().orElseThrow();
      int times = 0;
      Trace.Point before = null;
      for (Trace.Point point : run.points()) {
        if (before != null && point.atM() > action.atM() && point.atM() < hold.untilM()) {
          boolean power = before.notch() < 0 && point.notch() >= 0;
          boolean brake = before.pressurePa() == 0 && point.pressurePa() > 0;
          times += power || brake ? 1 : 0;
          assertThat(point.speedMps()).isLessThan(hold.upperMps() + 0.5);
        }
        before = point;
      }
      assertThat(times).isGreaterThanOrEqualTo(2);
      assertThat(plan.assignment().path().printedAtOrBefore(hold.untilM()))
          .isCloseTo(hold.untilM(), within(1e-6));
    }
    assertThat(
            plan.told().sheets().stream()
                .flatMap(s -> s.steps().stream())
                .map(s -> s.order().does())
                .filter(PrintedCommand.Hold.class::isInstance))
        .hasSameSizeAs(holds(plan));
  }
}
