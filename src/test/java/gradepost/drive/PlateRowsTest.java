package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.plan.Approach;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.plan.Step;
import gradepost.task.Target;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedCommand;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: no plate has more instructions than the policy says, seven, or ten for a terminal, but
 * that it says so; and few have to. The stand is none of them.
 */
@Tag("slow")
class PlateRowsTest {
  private static final int LINES = Integer.getInteger("gradepost.rows", Examples.of(6, 25));

  private final List<String> silent = new ArrayList<>();
  private int plates;
  private int over;

  @Test
  void ofTheFrozenPacksAndTheDemo() {
    for (int i = 0; i < DemoPlans.tried().size(); i++) {
      look("pack " + i, DemoPlans.plan(DemoPlans.tried().get(i)));
    }
    done();
    assertThat(plates).isGreaterThan(12 * DemoPlans.tried().size());
  }

  @Test
  void ofRandomLines() {
    for (int seed = 0; seed < LINES; seed++) {
      look("line " + seed, Planner.plan(RandomLines.of(seed).assignment()));
    }
    done();
    assertThat(plates).isGreaterThan(5 * LINES);
  }

  private void done() {
    System.out.printf(Locale.ROOT, "plates: %d, %d of them over%n", plates, over);
    assertThat(silent).isEmpty();
    assertThat(over).isLessThan(plates / 12);
  }

  private void look(String name, Plan plan) {
    for (Approach approach : plan.approaches()) {
      boolean terminal =
          approach.target() instanceof Target.Stop stop && stop.buffersM().isPresent();
      InstructionSheet sheet = plan.told().sheets().get(approach.number() - 1);
      long rows =
          sheet.steps().stream()
              .filter(s -> !s.order().does().equals(new PrintedCommand.Stand()))
              .count();
      long most = terminal ? 10 : 7;
      boolean says =
          approach.findings().stream()
              .anyMatch(
                  f ->
                      f instanceof Finding.RuleBroken broken
                          && broken.broken() == Finding.Rule.ROWS
                          && broken.is() == rows
                          && broken.rule() == most);
      plates++;
      over += rows > most ? 1 : 0;
      assertThat(Step.rows(approach.actions())).isEqualTo(rows);
      if (rows > most != says) {
        silent.add(name + ", " + sheet.target().name() + ": " + rows + " rows, said: " + says);
      }
    }
  }
}
