package gradepost.reissue.register;

import gradepost.pack.PersonName;
import gradepost.reissue.register.Register.By;
import gradepost.units.Nearest;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The accounts of the desk. Each act upon one stands in the log, without its password. A hash is
 * text that this class does not look into.
 */
public final class Accounts {
  /** Subject of the acts upon them. */
  static final String SUBJECT = "accounts";

  /** Subject of what is noted of people who come and go. */
  static final String SIGN_INS = "sign-ins";

  private static final String COLUMNS =
      "SELECT name, role, first, since, shut, sessions, hash FROM account";

  private static final Pattern REFUSED = Pattern.compile("refused (.+) from ");

  private final Ledger ledger;

  /** An account with the hash of its password. */
  public record Hashed(Account account, String hash) {}

  Accounts(Ledger ledger) {
    this.ledger = ledger;
  }

  /** All of them, by name. */
  public List<Account> all() throws RegisterException {
    return ledger.reading(
        db -> db.rows(COLUMNS + " ORDER BY name").stream().map(row -> of(row).account()).toList());
  }

  /** The one that is called so, but for capitals and spaces. */
  public Optional<Hashed> called(String name) throws RegisterException {
    return ledger.reading(db -> called(db, name));
  }

  private static Optional<Hashed> called(Database db, String name) throws SQLException {
    return db.rows(COLUMNS).stream()
        .filter(row -> PersonName.same(row.get(0), name))
        .findFirst()
        .map(Accounts::of);
  }

  private static Hashed of(List<String> row) {
    return new Hashed(
        new Account(
            row.get(0),
            Account.Role.valueOf(row.get(1).toUpperCase(Locale.ROOT)),
            row.get(2).equals("1"),
            LocalDateTime.parse(row.get(3)),
            row.get(4).equals("1"),
            Integer.parseInt(row.get(5))),
        row.get(6));
  }

  /** Enters an account with a first password. */
  public void add(By by, String name, Account.Role role, String hash) throws RegisterException {
    Names.require(Names.Entered.PERSON, name);
    ledger.acting(
        by,
        "added the account of %s, %s".formatted(name, role),
        SUBJECT,
        (db, act) -> {
          if (called(db, name).isPresent()) {
            throw new RegisterException(RegisterText.ACCOUNT_THERE.with(name));
          }
          db.change(
              "INSERT INTO account (added, name, role, hash, first, since) VALUES (?, ?, ?, ?, 1, ?)",
              act,
              name,
              role,
              hash,
              by.when());
        });
  }

  /** Gives a new first password, and opens the account if it was shut. Its sessions end. */
  public void reset(By by, String name, String hash) throws RegisterException {
    change(
        by,
        name,
        "reset the password of %s",
        "hash = ?, first = 1, since = ?, shut = 0",
        hash,
        by.when());
  }

  /** Its bearer sets the password. Its sessions end. */
  public void password(By by, String hash) throws RegisterException {
    change(
        by,
        by.who(),
        "changed the password of %s",
        "hash = ?, first = 0, since = ?",
        hash,
        by.when());
  }

  /** Nobody comes in by it until it is reset. Its sessions end. */
  public void shut(By by, String name) throws RegisterException {
    change(by, name, "shut the account of %s", "shut = 1");
  }

  /** Its sessions end: whoever came in by it comes in again. */
  public void endSessions(By by, String name) throws RegisterException {
    change(by, name, "signed %s out everywhere", "shut = shut");
  }

  /**
   * Notes that the bearer of an account came in.
   *
   * @param from address of the machine
   * @param failed tries since somebody last came in by it that failed
   */
  public void signedIn(By by, String from, int failed) throws RegisterException {
    String before = failed == 0 ? "" : ", failed tries before: %d".formatted(failed);
    note(by, "signed in from " + from + before);
  }

  /** Notes that the bearer of an account went. */
  public void signedOut(By by) throws RegisterException {
    note(by, "signed out");
  }

  /**
   * Notes that somebody was not let in.
   *
   * @param name of the account; empty where there is none that is called as was typed
   * @param why in a few words
   * @param tries that failed so, in a row
   * @param from address of the machine of the last of them
   */
  public void refused(By by, Optional<String> name, String why, int tries, String from)
      throws RegisterException {
    note(
        by,
        "refused %s from %s: %s (%d in a row)"
            .formatted(name.orElse("somebody"), from, why, tries));
  }

  /** Whom such a note says to have been refused. */
  static Optional<String> refused(String what) {
    Matcher refused = REFUSED.matcher(what);
    return refused.lookingAt() ? Optional.of(refused.group(1)) : Optional.empty();
  }

  private void note(By by, String what) throws RegisterException {
    ledger.acting(by, what, SIGN_INS, (db, act) -> {});
  }

  private void change(By by, String name, String what, String set, Object... values)
      throws RegisterException {
    String known = require(name);
    ledger.acting(
        by,
        what.formatted(known),
        SUBJECT,
        (db, act) -> {
          Object[] all = java.util.Arrays.copyOf(values, values.length + 1);
          all[values.length] = known;
          db.change("UPDATE account SET " + set + ", sessions = sessions + 1 WHERE name = ?", all);
        });
  }

  /** The name as it was entered. */
  private String require(String name) throws RegisterException {
    Optional<Hashed> found = called(name);
    if (found.isEmpty()) {
      List<String> names = all().stream().map(Account::name).toList();
      throw new RegisterException(RegisterText.NO_ACCOUNT.with(name, Nearest.to(name, names)));
    }
    return found.get().account().name();
  }
}
