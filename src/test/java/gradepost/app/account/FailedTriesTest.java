package gradepost.app.account;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.MovedClock;
import gradepost.app.account.FailedTries.Why;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: every row of failed tries is told, and none of them fills the log. */
class FailedTriesTest {
  private static final Optional<String> MOSS = Optional.of("L Moss");

  private final MovedClock clock = new MovedClock(Instant.parse("2026-11-25T12:00:00Z"));
  private final FailedTries tries = new FailedTries(clock);

  private List<Integer> told(Optional<String> account, Why why, int count, Duration between) {
    List<Integer> told = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      tries.failed(account, why).ifPresent(told::add);
      clock.forward(between);
    }
    return told;
  }

  @Test
  void aThousandTriesAreTenLines() {
    assertThat(told(MOSS, Why.WRONG, 1000, Duration.ofMillis(10)))
        .containsExactly(1, 2, 4, 8, 16, 32, 64, 128, 256, 512);
    assertThat(told(MOSS, Why.SLOWED, 3, Duration.ZERO)).containsExactly(1, 2);
    assertThat(told(Optional.empty(), Why.NOBODY, 3, Duration.ZERO)).containsExactly(1, 2);
  }

  /** A try every two minutes for a week. */
  @Test
  void oneThatGoesOnIsToldByTheHour() {
    int count = 7 * 24 * 30;
    List<Integer> told = told(MOSS, Why.WRONG, count, Duration.ofMinutes(2));
    assertThat(told).hasSizeBetween(7 * 20, 7 * 26);
    assertThat(told.get(told.size() - 1)).isGreaterThan(count - 40);
  }

  @Test
  void oneAfterADayOfPeaceIsTheFirstAgain() {
    told(MOSS, Why.WRONG, 3, Duration.ZERO);
    clock.forward(Duration.ofHours(25));
    assertThat(told(MOSS, Why.WRONG, 1, Duration.ZERO)).containsExactly(1);
  }

  @Test
  void whoComesInIsToldHowManyFailedBefore() {
    told(MOSS, Why.WRONG, 5, Duration.ZERO);
    told(MOSS, Why.SLOWED, 2, Duration.ZERO);
    told(Optional.empty(), Why.NOBODY, 9, Duration.ZERO);
    assertThat(tries.cameIn("L Moss")).isEqualTo(7);
    assertThat(tries.cameIn("L Moss")).isZero();
    assertThat(told(MOSS, Why.WRONG, 1, Duration.ZERO)).containsExactly(1);
  }
}
