package gradepost.drive.check;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.drive.Planner;
import gradepost.drive.RandomLines;
import gradepost.plan.Action;
import gradepost.plan.Plan;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: what is printed is enough to drive the run that was planned. */
@Tag("slow")
class PlanVerifierTest {
  /** A place that was planned to the metre from one target may be told from another. */
  private static final double SAME_M = 1;

  private final List<String> wrong = new ArrayList<>();

  @Test
  void theDemoPacksAreDrivenFromTheirSheetsAsPlanned() {
    for (int i = 0; i < DemoPlans.assignments().size(); i++) {
      look("demo " + i, DemoPlans.plan(i));
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void soAreMadeUpLines() {
    for (int seed = 1; seed <= Integer.getInteger("gradepost.lines", 40); seed++) {
      look("line " + seed, Planner.plan(RandomLines.of(seed).assignment()));
    }
    assertThat(wrong).isEmpty();
  }

  private void look(String where, Plan plan) {
    PlanVerifier verifier = new PlanVerifier(plan.assignment());
    verifier.failures(plan.told()).forEach(f -> wrong.add(where + ": " + f));
    List<Action> driven = verifier.run(plan.told()).actions();
    List<Action> planned = plan.actions();
    for (int i = 0; i < planned.size(); i++) {
      if (i >= driven.size() || Math.abs(driven.get(i).atM() - planned.get(i).atM()) > SAME_M) {
        wrong.add(
            where
                + ": "
                + planned.get(i)
                + " is driven as "
                + (i < driven.size() ? driven.get(i) : "none"));
        return;
      }
    }
  }
}
