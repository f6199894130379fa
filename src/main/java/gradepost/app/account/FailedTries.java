package gradepost.app.account;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which tries that failed are told in the log: the first, and after that one whenever their number
 * has doubled or an hour has passed. Whoever tries without end does not fill it.
 */
final class FailedTries {
  private static final Duration AGAIN = Duration.ofHours(1);

  /** A row ends when nobody has tried for so long. */
  private static final Duration FORGOTTEN = Duration.ofDays(1);

  private final Clock clock;
  private final Map<Optional<String>, Map<Why, Row>> rows = new HashMap<>();

  /** Why a try failed. */
  enum Why {
    WRONG("wrong password"),
    NOBODY("no account of that name"),
    SHUT("the account is shut"),
    LAPSED("the first password was not used in time"),
    SLOWED("not looked at, too soon after others");

    private final String words;

    Why(String words) {
      this.words = words;
    }

    @Override
    public String toString() {
      return words;
    }
  }

  /** Tries in a row; when the last was, and when one was told. */
  private record Row(int tries, Instant last, Instant told) {}

  FailedTries(Clock clock) {
    this.clock = clock;
  }

  /**
   * A try failed.
   *
   * @param account by its name; empty where there is none that is called so: these are one row
   * @return how many these are in a row, if that is to be told
   */
  synchronized OptionalInt failed(Optional<String> account, Why why) {
    Instant now = clock.instant();
    Map<Why, Row> all = rows.computeIfAbsent(account, a -> new EnumMap<>(Why.class));
    Row row = all.get(why);
    boolean first = row == null || row.last().plus(FORGOTTEN).isBefore(now);
    int tries = row == null || first ? 1 : row.tries() + 1;
    Instant told = row == null || first ? Instant.MIN : row.told();
    boolean tell = Integer.bitCount(tries) == 1 || told.plus(AGAIN).isBefore(now);
    all.put(why, new Row(tries, now, tell ? now : told));
    return tell ? OptionalInt.of(tries) : OptionalInt.empty();
  }

  /** Somebody came in by an account; says how many tries in a row failed before. */
  synchronized int cameIn(String account) {
    Map<Why, Row> all = rows.remove(Optional.of(account));
    return all == null ? 0 : all.values().stream().mapToInt(Row::tries).sum();
  }
}
