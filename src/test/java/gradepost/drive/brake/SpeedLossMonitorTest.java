package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Property: over its stretch a train keeps a share of the speed at which it comes to it. */
class SpeedLossMonitorTest {
  private final SpeedLossMonitor monitor = new SpeedLossMonitor(1000, 2000, 0.6);

  private boolean lostAt(double atM, double mps) {
    monitor.point(0, atM, mps, 0, -1);
    return monitor.lost();
  }

  @Test
  void aSpeedBelowTheShareIsLostForGood() {
    assertThat(lostAt(999, 30)).as("before").isFalse();
    assertThat(lostAt(1000, 10)).isFalse();
    assertThat(lostAt(1500, 6)).isFalse();
    assertThat(lostAt(2001, 5)).as("behind").isFalse();
    assertThat(lostAt(2000, 5.99)).isTrue();
    assertThat(lostAt(2100, 20)).as("for good").isTrue();
  }
}
