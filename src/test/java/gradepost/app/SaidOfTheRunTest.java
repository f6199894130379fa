package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.LineSheet;
import gradepost.plan.Approach;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.units.Gradient;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: plain sentences and figures of the small lines are so, each against the data alone. */
@Tag("slow")
class SaidOfTheRunTest {
  private static final Pattern HANDLED = Pattern.compile(", at (\\d+) (mph|km/h)");

  /** The steepest fall and the steepest rise from the place that the sentence names. */
  @Test
  void theSteepestFallAndRiseAreThoseOfTheStretch() {
    int rises = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      Assignment a = paper.plan().assignment();
      for (Approach approach : paper.plan().approaches()) {
        ApproachPage page = paper.part().approaches().get(approach.number() - 1);
        double from = approach.brakingPointM().or(approach::shutOffM).orElse(approach.fromM());
        double fall = 0;
        double rise = 0;
        for (double at = from + 0.01; at < approach.target().atM(); at += 0.5) {
          double permille = permille(a, at);
          fall = Math.min(fall, permille);
          rise = Math.max(rise, permille);
        }
        String said =
            fall == 0 && rise == 0
                ? "Level from "
                : fall == 0
                    ? ": steepest rise " + slope(a, rise) + ", no fall."
                    : rise == 0
                        ? ": steepest fall " + slope(a, fall) + "."
                        : ": steepest fall %s, steepest rise %s."
                            .formatted(slope(a, fall), slope(a, rise));
        assertThat(page.headline()).as(paper.name()).contains(said).doesNotContain("Steepest on");
        rises += rise > 0 ? 1 : 0;
      }
    }
    assertThat(rises).isPositive();
  }

  private static String slope(Assignment a, double permille) {
    String text = a.route().units().gradient(new Gradient(permille));
    return text.substring(0, text.lastIndexOf(' '));
  }

  private static double permille(Assignment a, double atM) {
    return a.route().gradients().stream()
        .filter(
            g -> {
              double one = a.path().metresAt(g.extent().from());
              double other = a.path().metresAt(g.extent().to());
              return Math.min(one, other) < atM && atM < Math.max(one, other);
            })
        .mapToDouble(
            g ->
                a.direction() == Direction.FORWARD
                    ? g.gradient().permille()
                    : -g.gradient().permille())
        .findFirst()
        .orElse(0);
  }

  private static List<LineSheet.Row> rows(SmallLines.Paper paper) {
    return paper.part().line().stream().flatMap(s -> s.rows().stream()).toList();
  }

  @Test
  void aHandleIsMovedAtTheSpeedOfItsRow() {
    int moved = 0;
    for (SmallLines.Paper paper : SmallLines.papers()) {
      for (LineSheet.Row row : rows(paper)) {
        for (String todo : row.todo()) {
          Matcher said = HANDLED.matcher(todo);
          if (said.find()) {
            moved++;
            assertThat(row.speed()).as(paper.name() + ": " + row).isEqualTo(said.group(1));
          }
        }
      }
    }
    assertThat(moved).isPositive();
  }

  /** What a stretch measures is left to the places, which are printed rounded. */
  @Test
  void theRowsOfTheLineHaveNoDistances() {
    List<String> headings =
        List.of(gradepost.briefing.Messages.english().text("line.columns", "mph").split("\\|"));
    assertThat(headings).containsExactly("place", "mph", "there", "what to do");
  }

  @Test
  void noPartIsForASpeedThatTheBoardAllows() {
    for (SmallLines.Paper paper : SmallLines.papers()) {
      double unit = paper.plan().assignment().route().units().speedUnitMps();
      for (Approach approach : paper.plan().approaches()) {
        approach
            .ifFaster()
            .filter(f -> f.application().isPresent())
            .ifPresent(
                f -> {
                  double board = Math.floor(approach.target().speedMps() / unit + 1e-6);
                  double braked = Math.floor(f.application().get().brakingSpeedMps() / unit + 1e-6);
                  double most = Math.floor(f.mostMps() / unit + 1e-6);
                  assertThat(most).isGreaterThan(board);
                  assertThat(braked > board || most > board + 1).isTrue();
                });
      }
    }
  }
}
