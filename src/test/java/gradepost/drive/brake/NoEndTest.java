package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.drive.Arrangements;
import gradepost.drive.Mill;
import gradepost.drive.Planner;
import gradepost.motion.NoEnd;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.route.place.Direction;
import gradepost.stock.Stock;
import gradepost.stock.Traction;
import gradepost.task.Assignment;
import gradepost.units.Span;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** Property: what is worked out comes to an end, or is given up with a message. */
class NoEndTest {
  private static final Duration LONG = Duration.ofSeconds(60);

  @Test
  void aHandleThatMayGoToTheTopAtOnceHasAPlan() {
    Assignment atOnce =
        Arrangements.assignment(Direction.FORWARD, 0, perNotch(new Span(0)), Mill.policy());
    Plan plan = Assertions.assertTimeoutPreemptively(LONG, () -> Planner.plan(atOnce));
    assertThat(plan.failures()).isEmpty();
    List<Action> first = plan.actions().subList(0, 2);
    assertThat(first).extracting(Action::command).hasOnlyElementsOfType(Command.Power.class);
    assertThat(first).extracting(Action::timeS).containsOnly(0.0);
  }

  private static Stock perNotch(Span time) {
    Stock mill = Mill.stock();
    return Arrangements.with(
        mill.brakeForce(), mill.brakes(), new Traction(mill.traction().notches(), time, false));
  }

  @Test
  void aForceThatIsNoNumberIsNotRunOn() {
    Stepper stepper = new TrainModels(Mill.assignment(Direction.FORWARD, "4-car")).plannedStepper();
    stepper.place(0, 100, Double.NaN);
    assertThatThrownBy(() -> stepper.advance(new StopConditions().place(200)))
        .isInstanceOf(NoEnd.class)
        .hasMessage(
            "after 0 steps the run is at 100.000 m and NaN m/s, with an acceleration of NaN m/s2");
  }
}
