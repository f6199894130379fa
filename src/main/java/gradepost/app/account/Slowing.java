package gradepost.app.account;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Failed tries make the next one wait: for an account from one address, for an address, and for an
 * account from addresses by which nobody ever came in. Whoever came in once from an address does
 * not wait for what others do elsewhere, so that nobody is locked out by somebody else's tries.
 */
final class Slowing {
  /** Tries of one account from one address before the first wait. */
  private static final int PAIR = 5;

  /** Tries of any accounts from one address before the first wait. */
  private static final int ADDRESS = 30;

  /** Tries of one account from unknown addresses before the first wait. */
  private static final int ACCOUNT = 50;

  /** The longest wait. */
  private static final Duration LONGEST = Duration.ofMinutes(15);

  /** Failures are forgotten when nobody has tried for so long. */
  private static final Duration FORGOTTEN = Duration.ofDays(1);

  /** So many counts are kept; the one that was used longest ago goes first. */
  private static final int KEPT = 20_000;

  private final Clock clock;
  private final Map<String, Count> counts = lately();
  private final Map<String, Boolean> homes = lately();

  /** Tries since one was good. */
  private record Count(int tries, Instant last) {}

  Slowing(Clock clock) {
    this.clock = clock;
  }

  /**
   * A try begins. It counts as failed until it is good: many at once are counted before any of them
   * is looked at.
   *
   * @return seconds to wait before it is looked at; 0 where it may be
   */
  synchronized int begins(String name, String from) {
    String address = network(from);
    String account = account(name);
    String pair = account + "\n" + address;
    int waitS = Math.max(wait("pair\n" + pair, PAIR), wait("address\n" + address, ADDRESS));
    boolean home = homes.containsKey(pair);
    if (!home) {
      waitS = Math.max(waitS, wait("account\n" + account, ACCOUNT));
    }
    if (waitS > 0) {
      return waitS;
    }
    count("pair\n" + pair);
    count("address\n" + address);
    if (!home) {
      count("account\n" + account);
    }
    return 0;
  }

  /** The try was good. */
  synchronized void good(String name, String from) {
    String address = network(from);
    String account = account(name);
    String pair = account + "\n" + address;
    counts.remove("pair\n" + pair);
    Count tried = counts.get("address\n" + address);
    if (tried != null) {
      counts.put("address\n" + address, new Count(Math.max(0, tried.tries() - 1), tried.last()));
    }
    homes.put(pair, true);
  }

  private int wait(String key, int free) {
    Count count = counts.get(key);
    Instant now = clock.instant();
    if (count == null || count.tries() < free || count.last().plus(FORGOTTEN).isBefore(now)) {
      return 0;
    }
    long seconds = Math.min(LONGEST.toSeconds(), 1L << Math.min(20, count.tries() - free + 1));
    Duration left = Duration.between(now, count.last().plusSeconds(seconds));
    return left.isNegative() || left.isZero() ? 0 : (int) left.toSeconds() + 1;
  }

  private void count(String key) {
    Instant now = clock.instant();
    Count before = counts.get(key);
    int tries = before == null || before.last().plus(FORGOTTEN).isBefore(now) ? 0 : before.tries();
    counts.put(key, new Count(tries + 1, now));
  }

  private static String account(String name) {
    String folded = name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    return folded.substring(0, Math.min(folded.length(), 200));
  }

  /** Of an IPv6 address the half that is given to its bearer, who chooses the rest as he likes. */
  private static String network(String from) {
    try {
      byte[] all =
          from.matches("[0-9a-fA-F]*:[0-9a-fA-F:.]*")
              ? InetAddress.getByName(from).getAddress()
              : new byte[0];
      return all.length == 16 ? HexFormat.ofDelimiter(":").formatHex(all, 0, 8) : from;
    } catch (UnknownHostException e) {
      return from;
    }
  }

  private static <T> Map<String, T> lately() {
    return new LinkedHashMap<>(16, 0.75f, true) {
      private static final long serialVersionUID = 1;

      @Override
      protected boolean removeEldestEntry(Map.Entry<String, T> eldest) {
        return size() > KEPT;
      }
    };
  }
}
