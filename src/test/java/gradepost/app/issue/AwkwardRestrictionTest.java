package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.app.Changes;
import gradepost.briefing.Messages;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.reissue.Comparison;
import gradepost.reissue.RestrictionChange;
import gradepost.reissue.RestrictionChange.Kind;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: every awkward restriction has a defined result. That the rear has to clear it is common
 * practice.
 */
@Tag("slow")
class AwkwardRestrictionTest extends Changes {
  private static final double MPH = 0.44704;

  @Test
  void adjoiningAndNestedRestrictionsTakeTheLowerSpeed() throws IOException {
    PackFile none = pack(packs.get(0));
    PackFile two =
        with(
            none,
            at("0.700 km", "0.900 km", "Out", "reference: A, speed: 40 km/h"),
            at("0.900 km", "1.000 km", "Out", "reference: B, speed: 20 km/h"));
    Comparison adjoining = compared(none, two);
    assertThat(adjoining.restrictions())
        .extracting(RestrictionChange::reference)
        .containsExactly("A", "B");
    assertThat(adjoining.speeds()).extracting(s -> s.cause()).containsExactly("A", "B");
    PackFile nested =
        with(
            none,
            at("0.700 km", "1.200 km", "Out", "reference: A, speed: 40 km/h"),
            at("0.900 km", "0.950 km", "Out", "reference: B, speed: 20 km/h"));
    assertThat(compared(none, nested).speeds())
        .extracting(s -> s.cause())
        .containsExactly("A", "B", "A");
    PackFile higher =
        with(nested, at("0.900 km", "0.950 km", "Out", "reference: B, speed: 60 km/h"));
    assertThat(compared(nested, higher).speeds()).hasSize(1);
  }

  @Test
  void oneShorterThanTheTrainHoldsUntilTheRearIsClear() throws IOException {
    PackFile none = pack(packs.get(0));
    PackFile one = with(none, at("0.900 km", "0.920 km", "Out", "reference: A, speed: 20 km/h"));
    double train = none.formations().get(0).lengthM();
    var speed = compared(none, one).speeds().get(0);
    assertThat(speed.toM() - speed.fromM()).isCloseTo(20 + train, within(1e-6));
  }

  @Test
  void oneThatBeginsBeyondAStationLeavesTheWayToItAlone() throws IOException {
    PackFile none = pack(packs.get(0));
    PackFile one = with(none, at("2.300 km", "2.500 km", "Out", "reference: A, speed: 20 km/h"));
    Comparison comparison = compared(none, one);
    assertThat(comparison.unchanged()).containsExactly(1);
    assertThat(comparison.approaches()).isNotEmpty();
  }

  @Test
  void directionsAndLinesSayWhoIsTouched() throws IOException {
    for (int way = 0; way < 2; way++) {
      PackFile none = pack(packs.get(way));
      String slow = "reference: A, speed: 20 km/h";
      PackFile out = with(none, at("0.9 km", "1.1 km", "Out", slow));
      assertThat(mayDiffer(none, out, 0)).isEqualTo(way == 0);
      PackFile both = with(none, at("0.9 km", "1.1 km", "both", slow));
      assertThat(mayDiffer(none, both, 0)).isTrue();
      PackFile line = with(none, at("0.9 km", "1.1 km", "both", slow + ", lines: [In Main]"));
      assertThat(mayDiffer(none, line, 0)).isEqualTo(way == 1);
    }
  }

  private static String valley(String from, String to, String line, String directions) {
    return "status: in force, from: {section: %s}, to: {section: %s}, directions: %s, lines: [%s], reference: Z, speed: 10 mph"
        .formatted(from, to, directions, line);
  }

  private static TemporaryRestriction last(Plan plan) {
    var all = plan.assignment().restrictions();
    return all.get(all.size() - 1);
  }

  /**
   * The demo line ends in two platforms behind one set of points. A Down train goes to platform 1,
   * an Up train comes from platform 2.
   */
  @Test
  void atADivergingJunctionOnlyTheWayTakenCounts() throws IOException {
    PackFile before = valley();
    for (int taken = 1; taken <= 2; taken++) {
      PackFile after =
          with(
              before,
              valley(
                  "Harbour, at: 1m 57ch",
                  "Harbour, at: 2m 02ch",
                  "Platform %d line".formatted(taken),
                  "both"));
      for (int direction = 0; direction < 2; direction++) {
        Plan then = plan(before, direction);
        Plan now = plan(after, direction);
        var path = now.assignment().path();
        var z = last(now);
        double a = path.metresAt(z.extent().from());
        double b = path.metresAt(z.extent().to());
        double inside = (a + b) / 2;
        boolean met = taken == direction + 1;
        assertThat(mayDiffer(before, after, direction)).isEqualTo(met);
        if (met) {
          assertThat(ceilingMps(now, inside)).isCloseTo(10 * MPH, within(1e-9));
          assertThat(ceilingMps(then, inside)).isGreaterThan(10 * MPH + 0.1);
          // The points themselves, short of it, are as they were.
          double points = Math.min(a, b) - 5;
          assertThat(ceilingMps(now, points)).isEqualTo(ceilingMps(then, points));
        } else {
          assertThat(now.ceiling()).isEqualTo(then.ceiling());
        }
      }
    }
  }

  /** On the stretch of single line, a restriction stands for the trains it is written for. */
  @Test
  void onASingleLineEachDirectionIsMetByItself() throws IOException {
    PackFile before = valley();
    for (String directions : List.of("both", "Down", "Up")) {
      PackFile after =
          with(before, valley("Mill, at: 13m 60ch", "Mill, at: 13m 50ch", "Single", directions));
      for (int direction = 0; direction < 2; direction++) {
        boolean met =
            directions.equals("both") || directions.equals(direction == 0 ? "Down" : "Up");
        assertThat(mayDiffer(before, after, direction)).isEqualTo(met);
        if (met) {
          Plan now = plan(after, direction);
          var step =
              now.ceiling().stream().filter(s -> s.cause().equals("Z")).findFirst().orElseThrow();
          assertThat(step.speedMps()).isCloseTo(10 * MPH, within(1e-9));
          // From the end that this train meets first, until its rear is clear of the other.
          var path = now.assignment().path();
          var z = last(now);
          double first = Math.min(path.metresAt(z.extent().from()), path.metresAt(z.extent().to()));
          assertThat(step.fromM()).isCloseTo(first, within(1e-6));
          assertThat(step.toM() - step.fromM())
              .isCloseTo(10 * 20.1168 + now.assignment().formation().lengthM(), within(1e-6));
        }
      }
    }
  }

  @Test
  void oneThatEndsEarlyIsGoneAndOneThatEndsLaterStaysWithItsDate() throws IOException {
    PackFile none = pack(packs.get(0));
    PackFile one = with(none, at("0.900 km", "1.100 km", "Out", "reference: A, speed: 30 km/h"));
    PackFile dated =
        with(
            one,
            at(
                "0.900 km",
                "1.100 km",
                "Out",
                "reference: A, speed: 30 km/h, until: 2027-01-10 04:00"));
    Comparison comparison = compared(one, dated);
    assertThat(comparison.restrictions().get(0).kinds()).containsExactly(Kind.RETIMED);
    assertThat(comparison.speeds()).isEmpty();
    PackFile early =
        with(
            one,
            "status: withdrawn, from: 0.900 km, to: 1.100 km, directions: Out, reference: A,"
                + " speed: 30 km/h, until: 2026-11-25 04:00");
    assertThat(compared(one, early).restrictions().get(0).kinds()).containsExactly(Kind.WITHDRAWN);
    assertThat(plan(early).ceiling()).isEqualTo(plan(none).ceiling());
  }

  @Test
  void aBlanketRestrictionWithoutBoardsIsOnPaperOnly() throws IOException {
    PackFile none = pack(packs.get(0));
    PackFile one =
        with(
            none,
            at("0.900 km", "1.100 km", "Out", "reference: A, speed: 20 km/h")
                .replace("status", "issued-by: office, status"));
    Plan after = plan(one);
    assertThat(after.approaches().get(0).findings()).anyMatch(f -> f instanceof Finding.NoBoard);
    Differences differences =
        new DifferenceFinder(Messages.english())
            .of(packs.get(0), one, Optional.of(new LastIssue(none, List.of())));
    assertThat(differences.inWords()).anyMatch(c -> c.contains("PAPER ONLY: no boards"));
  }
}
