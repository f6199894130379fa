package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.Examples;
import gradepost.drive.Changed;
import gradepost.drive.DemoPlans;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.policy.BrakePractice;
import gradepost.policy.Practice;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.units.Acceleration;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: where a train let go behind the board of a lower speed would gather speed at once, the
 * brake stays on past it, comes off as a checking application does, on the page of that board, and
 * does not go on again within some seconds.
 */
@Tag("slow")
class BrakeStaysOnTest {
  private static final double AT_ONCE_S = 8;

  @Test
  void theBrakeComesOffBehindTheBoardAndStaysOff() {
    int seen = 0;
    for (Assignment assignment : DemoPlans.tried()) {
      TrainModels bench = new TrainModels(assignment);
      Band band = new Band(assignment.policy().run(), assignment.route().units().speedUnitMps());
      Plan plan = DemoPlans.plan(assignment);
      for (Approach approach : plan.approaches()) {
        Target target = approach.target();
        boolean staysOn = target.speedMps() > 0 && Braking.of(assignment, bench, target).staysOn();
        List<Action> actions = approach.actions();
        if (!staysOn || actions.stream().noneMatch(BrakeStaysOnTest::first)) {
          continue;
        }
        Action last = actions.get(actions.size() - 1);
        assertThat(last.command()).isInstanceOf(Command.Release.class);
        assertThat(last.speedMps()).isCloseTo(band.checkToMps(target.speedMps()), within(0.01));
        assertThat(new Run(plan.trace()).speedAt(target.atM())).isLessThan(target.speedMps());
        assertThat(plan.actions())
            .filteredOn(a -> a.timeS() > last.timeS() && a.timeS() < last.timeS() + AT_ONCE_S)
            .noneMatch(a -> a.command() instanceof Command.Brake);
        seen++;
      }
    }
    assertThat(seen).isGreaterThan(Examples.of(2, 3));
  }

  /** Where the brake need not stay on and the train still gathers speed, it is braked further. */
  @Test
  void fromWhichGatheringATrainIsBrakedLowerIsThePolicys() {
    Practice never =
        Practice.USUAL.with(
            Changed.in(BrakePractice.USUAL, "brakedLowerFrom", new Acceleration(0.5)));
    int lower = 0;
    for (Assignment assignment : DemoPlans.tried()) {
      TrainModels bench = new TrainModels(assignment);
      Assignment other = assignment.with(assignment.policy().with(never));
      for (Target target : Targets.of(assignment, Ceiling.of(assignment))) {
        double aimMps = Braking.of(assignment, bench, target).aimMps();
        double otherMps = Braking.of(other, bench, target).aimMps();
        assertThat(otherMps).isGreaterThanOrEqualTo(aimMps);
        lower += otherMps > aimMps ? 1 : 0;
      }
    }
    assertThat(lower).isPositive();
  }

  private static boolean first(Action action) {
    return action.command() instanceof Command.Brake brake && brake.stage() == Command.Stage.FIRST;
  }
}
