package gradepost.app.account;

import gradepost.app.account.FailedTries.Why;
import gradepost.app.store.Store;
import gradepost.pack.PersonName;
import gradepost.reissue.register.Account;
import gradepost.reissue.register.Accounts;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Executor;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Who signs in, and who is signed in still. May be asked by many at once.
 *
 * <p>The answer to a wrong password is the same, and takes as long, whether or not there is such an
 * account, and whether or not it is shut.
 */
public final class SignIn {
  /** A first password that nobody used is not taken any more after this. */
  private static final int FIRST_DAYS = 14;

  /** No account has a longer name; a longer one is not looked for. */
  private static final int LONGEST_NAME = 200;

  /** Who is said to have turned somebody away. */
  private static final String DESK = "desk";

  /** A change made elsewhere is seen after this at the latest. */
  private static final Duration SEEN_AFTER = Duration.ofSeconds(2);

  private final Store store;
  private final Clock clock;
  private final Executor later;
  private final Slowing slowing;
  private final FailedTries failed;
  private Map<String, Account> known = Map.of();
  private Instant read = Instant.MIN;
  private volatile boolean seen;

  /**
   * What came of a try.
   *
   * @param account that came in
   * @param waitS seconds before another try is looked at; 0 where there is none to wait
   * @param lapsed whether the password is right, and a first one that was not used in time
   */
  public record Tried(Optional<Account> account, int waitS, boolean lapsed) {}

  /**
   * Over the accounts of this register.
   *
   * @param later enters in the log what nobody must have to wait for: how long a refusal takes says
   *     nothing of what is entered
   */
  public SignIn(Store store, Clock clock, Executor later) {
    this.store = store;
    this.clock = clock;
    this.later = later;
    this.slowing = new Slowing(clock);
    this.failed = new FailedTries(clock);
  }

  /**
   * Tries a password. That it failed is told in the log of the register, without what was typed.
   *
   * @param address of the machine from which it is tried
   */
  public Tried tried(String name, String password, String address) throws RegisterException {
    int waitS = slowing.begins(name, address);
    if (waitS > 0) {
      failed(known(name), Why.SLOWED, address);
      return new Tried(Optional.empty(), waitS, false);
    }
    Optional<Accounts.Hashed> found =
        password.length() > 4 * Passwords.LONGEST || name.length() > LONGEST_NAME
            ? Optional.empty()
            : store.exists() ? hashed(name) : Optional.empty();
    if (found.isEmpty()) {
      Passwords.isNobodys(password.substring(0, Math.min(password.length(), Passwords.LONGEST)));
      Optional<String> account = known(name);
      failed(account, account.isEmpty() ? Why.NOBODY : Why.WRONG, address);
      return new Tried(Optional.empty(), 0, false);
    }
    Account account = found.get().account();
    if (!Passwords.is(password, found.get().hash()) || account.shut()) {
      failed(Optional.of(account.name()), account.shut() ? Why.SHUT : Why.WRONG, address);
      return new Tried(Optional.empty(), 0, false);
    }
    slowing.good(name, address);
    if (account.first()
        && account.since().plusDays(FIRST_DAYS).isBefore(LocalDateTime.now(clock))) {
      failed(Optional.of(account.name()), Why.LAPSED, address);
      return new Tried(Optional.empty(), 0, true);
    }
    return new Tried(Optional.of(account), 0, false);
  }

  private void failed(Optional<String> account, Why why, String address) {
    OptionalInt tries = failed.failed(account, why);
    if (tries.isPresent()) {
      Register.By by = store.by(DESK, clock);
      later.execute(() -> refused(by, account, why, tries.getAsInt(), address));
    }
  }

  private void refused(
      Register.By by, Optional<String> account, Why why, int tries, String address) {
    try (Register register = opened()) {
      register.accounts().refused(by, account, why.toString(), tries, address);
    } catch (RegisterException e) {
      // Nobody is let in by it; the next that is told has the number of all.
    }
  }

  /** Tells in the log that the bearer of an account is let in: who cannot be told of is not. */
  public void comesIn(Account account, String address) throws RegisterException {
    try (Register register = opened()) {
      register
          .accounts()
          .signedIn(store.by(account.name(), clock), address, failed.cameIn(account.name()));
    }
  }

  /** Tells in the log that the bearer of an account goes. */
  public void goes(Account account) throws RegisterException {
    try (Register register = opened()) {
      register.accounts().signedOut(store.by(account.name(), clock));
    }
  }

  /** As it was entered, the account that is called so; as it was a moment ago. */
  private Optional<String> known(String name) throws RegisterException {
    return name.length() > LONGEST_NAME
        ? Optional.empty()
        : known(false).keySet().stream().filter(a -> PersonName.same(a, name)).findFirst();
  }

  private Optional<Accounts.Hashed> hashed(String name) throws RegisterException {
    try (Register register = opened()) {
      return register.accounts().called(name);
    }
  }

  /** The first time its schema is looked at; that costs more than all the rest. */
  private Register opened() throws RegisterException {
    if (seen) {
      return Register.again(store.url());
    }
    Register register = store.open();
    seen = true;
    return register;
  }

  /**
   * The account as it is now, if whoever came in by it is in still: it is not shut, and its
   * sessions have not ended.
   *
   * @param now whether a change that was made elsewhere a moment ago must be seen
   */
  public Optional<Account> still(Account then, boolean now) throws RegisterException {
    Optional<Account> found = now ? Optional.empty() : in(then, false);
    // What was changed here a moment ago is not in what was read before.
    return found.isPresent() ? found : in(then, true);
  }

  private Optional<Account> in(Account then, boolean now) throws RegisterException {
    return Optional.ofNullable(known(now).get(then.name()))
        .filter(a -> !a.shut() && a.sessions() == then.sessions());
  }

  private synchronized Map<String, Account> known(boolean now) throws RegisterException {
    Instant moment = clock.instant();
    if (now || read.plus(SEEN_AFTER).isBefore(moment) || read.isAfter(moment)) {
      known = all();
      read = moment;
    }
    return known;
  }

  private Map<String, Account> all() throws RegisterException {
    if (!store.exists()) {
      return Map.of();
    }
    try (Register register = opened()) {
      return register.accounts().all().stream()
          .collect(Collectors.toMap(Account::name, Function.identity()));
    }
  }
}
