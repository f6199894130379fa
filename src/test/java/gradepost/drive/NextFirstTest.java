package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.plan.SpeedRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: who is faster than planned and goes by the table of a lower speed alone does not run
 * past the place at which the table of the target behind it has him brake, but that its page says
 * so.
 */
@Tag("slow")
class NextFirstTest {

  /** Plans of the frozen valley, where there is one, of the coast, and of the demo. */
  private static final List<Integer> PLANS = List.of(0, 2, 6, 8);

  private static final double KMH = 1 / 3.6;

  @Test
  void aTableThatIsTooLateForTheNextTargetSaysSo() {
    int said = 0;
    int pages = 0;
    for (int i : PLANS) {
      Plan plan = DemoPlans.plan(i);
      List<Approach> approaches = plan.approaches();
      for (int k = 0; k + 1 < approaches.size(); k++) {
        Approach lower = approaches.get(k);
        if (lower.target().isLowerSpeed()) {
          for (boolean planned : new boolean[] {true, false}) {
            boolean late = late(points(lower, planned), behind(approaches, k, planned));
            assertThat(says(lower, points(lower, planned)))
                .as(i + " " + lower.target().name())
                .isEqualTo(late);
            said += late ? 1 : 0;
            pages++;
          }
        }
      }
    }
    assertThat(said).isBetween(2, pages / 4);
  }

  private static List<SpeedRow.Point> points(Approach of, boolean planned) {
    return Stream.concat(of.applications().stream(), of.faster().stream())
        .map(Application::bySpeed)
        .flatMap(List::stream)
        .map(r -> planned ? r.planned() : r.poorest())
        .flatMap(Optional::stream)
        .toList();
  }

  /** The tables up to the next stop. */
  private static List<List<SpeedRow.Point>> behind(
      List<Approach> approaches, int k, boolean planned) {
    List<List<SpeedRow.Point>> out = new ArrayList<>();
    for (Approach next : approaches.subList(k + 1, approaches.size())) {
      out.add(points(next, planned));
      if (next.target().isStop()) {
        break;
      }
    }
    return out;
  }

  private static boolean late(List<SpeedRow.Point> rows, List<List<SpeedRow.Point>> tables) {
    return rows.stream().anyMatch(row -> tables.stream().anyMatch(t -> isLate(row, t)));
  }

  /** By the rule that the page prints: between two speeds as for the faster. */
  private static boolean isLate(SpeedRow.Point row, List<SpeedRow.Point> table) {
    double counts = Double.NaN;
    double its = Double.POSITIVE_INFINITY;
    double fastest = 0;
    double atFastest = Double.NaN;
    for (SpeedRow.Point p : table) {
      if (p.speedMps() >= row.speedMps() - 0.2 * KMH && p.speedMps() < its) {
        its = p.speedMps();
        counts = p.atM();
      }
      if (p.speedMps() > fastest) {
        fastest = p.speedMps();
        atFastest = p.atM();
      }
    }
    double brakesM = Double.isNaN(counts) ? atFastest : counts;
    return brakesM <= row.atM();
  }

  private static boolean says(Approach page, List<SpeedRow.Point> rows) {
    List<String> rails = rows.stream().map(SpeedRow.Point::rail).distinct().toList();
    return page.findings().stream()
        .anyMatch(f -> f instanceof Finding.NextFirst first && rails.contains(first.adhesion()));
  }
}
