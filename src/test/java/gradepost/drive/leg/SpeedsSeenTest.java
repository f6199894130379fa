package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * Property: a driver is told to act at a speed only where the train meets it for the first time
 * since the last movement.
 */
class SpeedsSeenTest {
  private final SpeedsSeen seen = new SpeedsSeen();

  @Test
  void aSpeedIsFallenToOnce() {
    seen.from(12);
    assertThat(seen.fallsTo(10, 10)).isTrue();
    assertThat(seen.fallsTo(10, 9.99)).as("already slower").isFalse();
    assertThat(seen.fallsTo(12, 12)).as("moved at this speed").isFalse();
    seen.see(10.002);
    assertThat(seen.fallsTo(10, 10)).isTrue();
    seen.see(10.001);
    assertThat(seen.fallsTo(10, 10)).as("met before").isFalse();
    seen.see(11);
    assertThat(seen.fallsTo(10, 10)).as("met before").isFalse();
  }

  @Test
  void aSpeedIsRisenToOnce() {
    seen.from(8);
    assertThat(seen.risesTo(10, 10)).isTrue();
    assertThat(seen.risesTo(10, 10.01)).as("already faster").isFalse();
    assertThat(seen.risesTo(8, 8)).as("moved at this speed").isFalse();
    seen.see(9.998);
    assertThat(seen.risesTo(10, 10)).isTrue();
    seen.see(9.999);
    assertThat(seen.risesTo(10, 10)).as("met before").isFalse();
    seen.see(9);
    assertThat(seen.risesTo(10, 10)).as("met before").isFalse();
  }

  @Test
  void aMovementBeginsAnew() {
    seen.from(12);
    seen.see(9);
    seen.see(13);
    SpeedsSeen kept = new SpeedsSeen(seen);
    assertThat(kept.fallsTo(10, 10)).isFalse();
    assertThat(kept.risesTo(12.5, 12.5)).isFalse();
    seen.from(12);
    assertThat(seen.fallsTo(10, 10)).isTrue();
    assertThat(seen.risesTo(12.5, 12.5)).isTrue();
    assertThat(kept.fallsTo(10, 10)).as("a copy stays").isFalse();
  }
}
