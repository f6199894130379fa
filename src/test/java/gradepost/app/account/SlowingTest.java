package gradepost.app.account;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.MovedClock;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Property: failed tries slow down, and nobody is locked out by somebody else's. */
class SlowingTest {
  private final MovedClock clock = new MovedClock(Instant.parse("2026-11-25T12:00:00Z"));
  private final Slowing slowing = new Slowing(clock);

  /** So many tries as are looked at in a time, each made as soon as it may be. */
  private int looked(String name, String address, Duration within) {
    Instant end = clock.instant().plus(within);
    int tries = 0;
    while (clock.instant().isBefore(end)) {
      int waitS = slowing.begins(name, address);
      if (waitS == 0) {
        tries++;
      } else {
        clock.forward(Duration.ofSeconds(waitS));
      }
    }
    return tries;
  }

  @Test
  void whoTriesForADayGetsFewTries() {
    assertThat(looked("R Clerk", "10.0.0.9", Duration.ofDays(1))).isBetween(50, 120);
  }

  @Test
  void capitalsAndSpacesAreNoOtherName() {
    for (int i = 0; i < 5; i++) {
      assertThat(slowing.begins("r  CLERK ", "10.0.0.9")).isZero();
    }
    assertThat(slowing.begins("R Clerk", "10.0.0.9")).isBetween(1, 5);
  }

  @Test
  void manyNamesFromOneAddressWaitToo() {
    for (int i = 0; i < 30; i++) {
      assertThat(slowing.begins("name " + i, "10.0.0.9")).isZero();
    }
    assertThat(slowing.begins("another", "10.0.0.9")).isPositive();
    assertThat(slowing.begins("another", "10.0.0.10")).isZero();
  }

  /** Who is given the first half of an address chooses the other as he likes. */
  @Test
  void anotherAddressOfOneNetworkIsNoOtherMachine() {
    for (int i = 0; i < 5; i++) {
      assertThat(slowing.begins("R Clerk", "2001:db8:7:1::" + i)).isZero();
    }
    assertThat(slowing.begins("R Clerk", "2001:DB8:7:1:ffff::9")).isPositive();
    assertThat(slowing.begins("R Clerk", "2001:db8:7:2::1")).isZero();
  }

  @Test
  void manyAddressesForOneNameWaitTooButNotWhoCameInBefore() {
    assertThat(slowing.begins("R Clerk", "10.0.0.1")).isZero();
    slowing.good("R Clerk", "10.0.0.1");
    for (int i = 0; i < 60; i++) {
      slowing.begins("R Clerk", "10.0.1." + i);
    }
    assertThat(slowing.begins("R Clerk", "10.0.2.1")).isPositive();
    assertThat(slowing.begins("R Clerk", "10.0.0.1")).isZero();
    assertThat(slowing.begins("Q Clerk", "10.0.2.1")).isZero();
  }

  @Test
  void aGoodOneEndsTheWaitAndADayForgetsIt() {
    for (int i = 0; i < 4; i++) {
      slowing.begins("R Clerk", "10.0.0.1");
    }
    slowing.good("R Clerk", "10.0.0.1");
    for (int i = 0; i < 5; i++) {
      assertThat(slowing.begins("R Clerk", "10.0.0.1")).isZero();
    }
    assertThat(slowing.begins("R Clerk", "10.0.0.1")).isPositive();
    clock.forward(Duration.ofHours(25));
    assertThat(slowing.begins("R Clerk", "10.0.0.1")).isZero();
    assertThat(slowing.begins("R Clerk", "10.0.0.1")).isZero();
  }
}
