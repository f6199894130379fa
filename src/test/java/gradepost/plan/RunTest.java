package gradepost.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Property. A run that gains speed evenly at 0.5 m/s², known at two places only. */
class RunTest {
  private static final Run RUN =
      new Run(
          new Trace(
              List.of(new Trace.Point(100, 1000, 0, 0, 0), new Trace.Point(120, 1100, 10, 0, 0))));

  @Test
  void betweenTwoPointsTheSpeedIsThatOfEvenAcceleration() {
    assertThat(RUN.speedAt(1025)).isCloseTo(5, within(1e-9));
    assertThat(RUN.speedAt(1050)).isCloseTo(Math.sqrt(50), within(1e-9));
    assertThat(RUN.speedAt(1100)).isCloseTo(10, within(1e-9));
  }

  @Test
  void beyondItsEndsARunIsAsThere() {
    assertThat(RUN.speedAt(900)).isZero();
    assertThat(RUN.timeAt(900)).isEqualTo(100);
    assertThat(RUN.speedAt(1200)).isEqualTo(10);
    assertThat(RUN.timeAt(1200)).isEqualTo(120);
  }
}
