package gradepost.briefing.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Property: what is spread keeps its order, its room and, where it can, its place. */
class SpreadingTest {
  @Test
  void nothingOverlapsNorLeaves() {
    Random random = new Random(19);
    for (int run = 0; run < 500; run++) {
      int n = 1 + random.nextInt(40);
      double[] wanted = random.doubles(n, -20, 1000).sorted().toArray();
      double[] sizes = random.doubles(n, 1, 24).toArray();
      double[] at = Spreading.of(wanted, sizes, 0, 1000);
      double end = 0;
      for (int i = 0; i < n; i++) {
        assertThat(at[i]).isGreaterThanOrEqualTo(end - 1e-6);
        end = at[i] + sizes[i];
      }
      assertThat(end).isLessThanOrEqualTo(1000 + 1e-6);
    }
  }

  @Test
  void whatHasRoomStaysWhereItBelongs() {
    assertThat(Spreading.of(new double[] {0, 30, 80}, new double[] {10, 20, 20}, 0, 100))
        .containsExactly(0, 30, 80);
  }

  /** Two that want the same place share the move; worked by hand. */
  @Test
  void aCrowdIsMovedBothWays() {
    double[] at = Spreading.of(new double[] {50, 50}, new double[] {10, 10}, 0, 100);
    assertThat(at[0]).isCloseTo(45, within(1e-9));
    assertThat(at[1]).isCloseTo(55, within(1e-9));
  }

  /** No other placing found at random comes nearer. */
  @Test
  void noOtherPlacingIsNearer() {
    Random random = new Random(4);
    double[] wanted = {10, 12, 13, 60, 61, 95};
    double[] sizes = {8, 8, 8, 8, 8, 8};
    double[] at = Spreading.of(wanted, sizes, 0, 100);
    for (int run = 0; run < 20_000; run++) {
      double[] other = Arrays.stream(at).map(x -> x + 6 * random.nextGaussian()).toArray();
      double end = 0;
      for (int i = 0; i < other.length; i++) {
        other[i] = Math.max(end, other[i]);
        end = other[i] + sizes[i];
      }
      if (end <= 100) {
        assertThat(moved(other, wanted)).isGreaterThanOrEqualTo(moved(at, wanted) - 1e-9);
      }
    }
  }

  private static double moved(double[] at, double[] wanted) {
    double sum = 0;
    for (int i = 0; i < at.length; i++) {
      sum += (at[i] - wanted[i]) * (at[i] - wanted[i]);
    }
    return sum;
  }

  @Test
  void whatHasNoRoomIsRefused() {
    assertThatThrownBy(() -> Spreading.of(new double[] {1, 2}, new double[] {60, 60}, 0, 100))
        .hasMessage("2 things of 120.0 together have no room in 100.0");
  }
}
