package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.plan.Plan;
import gradepost.route.GradientPiece;
import gradepost.task.Assignment;
import gradepost.units.Gradient;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Property: whoever has planned a run before makes the same plan as who has not, after every change
 * to its road, and searches only for the legs that the change touches.
 */
class PlannedBeforeTest {
  private static final int MANY = 1000;

  @Test
  void theSamePlanAfterEveryChange() {
    int kept = 0;
    for (int seed = 0; seed < Examples.of(1, 40); seed++) {
      Assignment was = RandomLines.of(seed).assignment();
      int gradients = was.route().gradients().size();
      PlannedBefore before = new PlannedBefore(MANY, MANY);
      Plan first = Planner.plan(was, before);
      for (int piece : new int[] {0, gradients - 1}) {
        Assignment is = lessSteep(was, piece);
        int known = before.legs().size();
        assertThat(Planner.plan(is, before)).as("line %d, %d", seed, piece).isEqualTo(fresh(is));
        int legs = is.calls().size() - 1;
        kept += before.legs().size() < known + legs ? 1 : 0;
      }
      int known = before.legs().size();
      int drawn = before.spreads().size();
      assertThat(Planner.plan(was, before)).as("line %d", seed).isEqualTo(first);
      assertThat(before.legs().size()).isEqualTo(known);
      assertThat(before.spreads().size()).isEqualTo(drawn);
    }
    assertThat(kept).isPositive();
  }

  @Test
  void whatWasAskedForLongestAgoIsForgotten() {
    PlannedBefore before = new PlannedBefore(1, 1);
    for (int permille = 0; permille < 2; permille++) {
      Assignment line = EvenLine.of(permille);
      assertThat(Planner.plan(line, before)).isEqualTo(fresh(line));
      assertThat(before.legs().size()).isEqualTo(1);
    }
  }

  private static Plan fresh(Assignment assignment) {
    return Planner.plan(assignment);
  }

  private static Assignment lessSteep(Assignment assignment, int piece) {
    List<GradientPiece> pieces = new ArrayList<>(assignment.route().gradients());
    GradientPiece one = pieces.get(piece);
    pieces.set(
        piece,
        new GradientPiece(one.extent(), new Gradient(one.gradient().permille() * 0.9 + 0.1)));
    return Changed.in(
        assignment, "route", Changed.in(assignment.route(), "gradients", List.copyOf(pieces)));
  }
}
