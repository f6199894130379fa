package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Property. Functions whose last place is known beforehand. */
class LastPlaceTest {
  private static final double TOLERANCE = 0.05;

  private int looks;

  /** Metres short of the aim of a train that gathers speed, braked from a place: {@code v² ∝ x}. */
  private double gathering(double x) {
    looks++;
    return 900 - x - 0.3 * x;
  }

  private double curved(double x) {
    looks++;
    return 500 - x - x * x / 4000;
  }

  @Test
  void theLastPlaceIsFoundFromTheEndBackInFewLooks() {
    for (DoubleUnaryOperator f : new DoubleUnaryOperator[] {this::gathering, this::curved}) {
      double atHigh = f.applyAsDouble(2000);
      looks = 0;
      double x = last(f, 2000, atHigh);
      assertThat(looks).isLessThanOrEqualTo(8);
      assertThat(f.applyAsDouble(x)).isBetween(0.0, 2 * TOLERANCE);
    }
  }

  /** Where power comes on the margin jumps: the place just before it is the last. */
  @Test
  void aJumpCountsAsACrossing() {
    DoubleUnaryOperator f = x -> x < 300 ? 40 - 0.1 * x : -5 - 0.1 * x;
    double x = last(f, 1000, f.applyAsDouble(1000));
    assertThat(x).isBetween(300 - TOLERANCE, 300.0);
    assertThat(Root.lastNotNegative(f, 0, 1000, 40, f.applyAsDouble(1000), TOLERANCE))
        .isBetween(300 - TOLERANCE, 300.0);
  }

  @Test
  void whereItIsNegativeFromTheStartThereIsNone() {
    DoubleUnaryOperator f = x -> -1 - x;
    assertThat(new LastPlace(PlannerSettings.usual().brake(), 0, 1000, TOLERANCE).of(f)).isEmpty();
  }

  /** One that never holds is told by a great number: it says nothing of the slope. */
  @Test
  void oneThatDoesNotHoldAtTheEndIsLookedForFromTheStart() {
    DoubleUnaryOperator f = x -> x > 600 ? -1e6 : 500 - x;
    double x = last(f, 1000, -1e6);
    assertThat(f.applyAsDouble(x)).isBetween(0.0, TOLERANCE);
  }

  @Test
  void whereItIsEarlyEnoughAtTheEndThatIsTheLastPlace() {
    assertThat(new LastPlace(PlannerSettings.usual().brake(), 0, 1000, TOLERANCE).of(x -> 1000 - x))
        .isEqualTo(OptionalDouble.of(1000));
  }

  private static double last(DoubleUnaryOperator f, double lastM, double atLastM) {
    return new LastPlace(PlannerSettings.usual().brake(), 0, lastM, TOLERANCE)
        .of(f, atLastM)
        .orElseThrow();
  }
}
