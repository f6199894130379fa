package gradepost.reissue.register;

import gradepost.pack.PersonName;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** What was issued, and what became of it. */
public final class Register implements AutoCloseable {
  /** How the spelling of a name in any script is noted. */
  static final String WRITTEN = "noted that %s is written %s";

  private final Ledger ledger;
  private final IssueRows issues;

  private Register(Database data) {
    this.ledger = new Ledger(data);
    this.issues = new IssueRows(data);
  }

  /** Opens a register, makes it where there is none, and brings it to the present schema. */
  public static Register open(String url) throws RegisterException {
    return open(url, Optional::empty, words -> {});
  }

  /**
   * The same with somebody who knows who holds its file.
   *
   * @param holder the program that holds it, in words; asked only where it is held
   * @param told is told at once, where it is held, by whom, and how long it is waited for
   */
  public static Register open(String url, Supplier<Optional<String>> holder, Consumer<String> told)
      throws RegisterException {
    return new Register(Database.open(url, holder, told));
  }

  /** Opens a register that this process has opened before: its schema is not looked at again. */
  public static Register again(String url) throws RegisterException {
    return new Register(Database.again(url));
  }

  /** Whether a register was ever begun there; nothing is made or changed. */
  public static boolean begun(String url) throws RegisterException {
    return Database.begun(url, Optional::empty);
  }

  /**
   * Who does something, and when.
   *
   * @param depot at which; empty text where the register is one depot's
   */
  public record By(String who, LocalDateTime when, String depot) {
    /** At the only depot. */
    public By(String who, LocalDateTime when) {
      this(who, when, "");
    }
  }

  /** Several acts, which are entered all or none. */
  public interface Several {
    /** Enters them, each by a method of the register. */
    void enter() throws RegisterException;
  }

  /** All these acts are one: if it throws, none is entered. */
  public void together(Several acts) throws RegisterException {
    ledger.together(acts::enter);
  }

  /** The people whom the register knows. */
  public Staff staff() {
    return new Staff(ledger);
  }

  /** Who may use the desk. */
  public Accounts accounts() {
    return new Accounts(ledger);
  }

  /** What is kept of people who left. */
  public Leavers leavers() {
    return new Leavers(ledger);
  }

  /** The acts, to be taken back. */
  public Undoing undoing() {
    return new Undoing(ledger);
  }

  /** All its rows, to be kept elsewhere. */
  public Dump dump() {
    return new Dump(ledger);
  }

  /** What is known of packs without reading them. */
  public PackFacts packFacts() {
    return new PackFacts(ledger);
  }

  /** What workers are asked for. */
  public Jobs jobs() {
    return new Jobs(ledger);
  }

  /** Checks of issues. */
  public Checks checks() {
    return new Checks(ledger, issues);
  }

  /** Registers an issue whose data were checked before. */
  public void issue(By by, Entry entry) throws RegisterException {
    issue(by, entry, Optional.of(""));
  }

  /**
   * Registers an issue. Those that it supersedes are recalled by the same act, from the hour at
   * which it is valid; also those that another was to supersede only later.
   *
   * @param checker who checked it; empty for a draft, which is not handed out
   */
  public void issue(By by, Entry entry, Optional<String> checker) throws RegisterException {
    issue(by, entry, checker, Optional.empty());
  }

  /**
   * The same.
   *
   * @param reason why there is this issue, in the words of whoever asked for it
   */
  public void issue(By by, Entry entry, Optional<String> checker, Optional<String> reason)
      throws RegisterException {
    if (checker.isPresent() && PersonName.same(checker.get(), by.who())) {
      throw new RegisterException(RegisterText.OWN_CHECKER.with(by.who(), entry));
    }
    if (reason.isPresent()) {
      Names.require(Names.Entered.REASON, reason.get());
    }
    ledger.acting(
        by,
        reason.map("issued: "::concat).orElse("issued"),
        entry.name(),
        (db, act) -> {
          overtaken(db, entry);
          issues.insert(ledger.nextId(), entry, act, false);
          issues.checked(entry, checker);
          if (entry.base().isPresent()) {
            db.change(
                "INSERT INTO recall_entry (issue, reason, act, effective) SELECT id, ?, ?, ? FROM issue"
                    + " WHERE pack = ? AND number < ? AND NOT EXISTS (SELECT 1 FROM recall_entry r"
                    + " JOIN issue later ON later.act = r.act"
                    + " WHERE r.issue = issue.id AND r.effective <= ?)",
                Recalls.superseded(entry, by.when()),
                act,
                Recalls.effective(entry, by.when()),
                entry.pack(),
                entry.number(),
                Recalls.from(entry, by.when()));
          }
        });
  }

  /** Two runs with separate archives can collide only here. */
  private static void overtaken(Database db, Entry entry) throws SQLException, RegisterException {
    List<List<String>> later =
        db.rows(
            "SELECT i.number, a.who FROM issue i JOIN act a ON a.id = i.act"
                + " WHERE i.pack = ? AND i.number >= ? ORDER BY i.number DESC",
            entry.pack(),
            entry.number());
    if (!later.isEmpty()) {
      throw new RegisterException(
          RegisterText.OVERTAKEN.with(
              entry.pack() + "/" + later.get(0).get(0), later.get(0).get(1)));
    }
  }

  /** Takes in an issue that was made elsewhere: its inputs are known, its papers are not. */
  public void takeIn(By by, Entry entry) throws RegisterException {
    ledger.acting(
        by,
        "taken in",
        entry.name(),
        (db, act) -> {
          overtaken(db, entry);
          issues.insert(ledger.nextId(), entry, act, true);
        });
  }

  /** Notes that the papers of an issue lie where they belong. */
  public void delivered(By by, Entry entry) throws RegisterException {
    ledger.acting(
        by,
        "papers and files written",
        entry.name(),
        (db, act) ->
            db.change(
                "UPDATE issue SET delivered = 1 WHERE pack = ? AND number = ?",
                entry.pack(),
                entry.number()));
  }

  /** Whether the files of an issue lie in their place. */
  public boolean isDelivered(Entry entry) throws RegisterException {
    return ledger.reading(
        db ->
            !db.rows(
                    "SELECT 1 FROM issue WHERE pack = ? AND number = ? AND delivered = 1",
                    entry.pack(),
                    entry.number())
                .isEmpty());
  }

  /** The packs whose latest issue does not lie where it belongs yet. */
  public Set<String> undelivered() throws RegisterException {
    return ledger.reading(
        db -> {
          Set<String> packs = new TreeSet<>();
          db.rows(
                  "SELECT pack FROM issue WHERE delivered = 0 AND number ="
                      + " (SELECT MAX(later.number) FROM issue later"
                      + " WHERE later.pack = issue.pack)")
              .forEach(row -> packs.add(row.get(0)));
          return packs;
        });
  }

  /** The last issue of a pack that took a notice in, by the digest of the notice. */
  public Optional<Integer> withNotice(String pack, String digest) throws RegisterException {
    return ledger.reading(
        db ->
            digest.isEmpty()
                ? Optional.empty()
                : db
                    .rows(
                        "SELECT number FROM issue WHERE pack = ? AND notice = ?"
                            + " ORDER BY number DESC LIMIT 1",
                        pack,
                        digest)
                    .stream()
                    .findFirst()
                    .map(row -> Integer.parseInt(row.get(0))));
  }

  /** The last issue of a pack, if there is one. */
  public Optional<Entry> latest(String pack) throws RegisterException {
    return ledger.reading(db -> issues.first("pack = ? ORDER BY issue.number DESC LIMIT 1", pack));
  }

  /** Whether any issue of a pack is registered; none is loaded. */
  public boolean knows(String pack) throws RegisterException {
    return ledger.reading(
        db -> !db.rows("SELECT 1 FROM issue WHERE pack = ? LIMIT 1", pack).isEmpty());
  }

  /** An issue of a pack by its number, if there is one. */
  public Optional<Entry> issue(String pack, int number) throws RegisterException {
    return ledger.reading(db -> issues.first("pack = ? AND number = ?", pack, number));
  }

  /** By its name, "valley/4", or by the beginning of its fingerprint, eight digits at least. */
  public Optional<Entry> find(String called) throws RegisterException {
    int cut = called.lastIndexOf('/');
    if (cut > 0 && called.substring(cut + 1).matches("\\d{1,9}")) {
      return issue(called.substring(0, cut), Integer.parseInt(called.substring(cut + 1)));
    }
    return called.matches("[0-9a-f]{8,64}")
        ? ledger.reading(
            db -> issues.first("fingerprint LIKE ? ORDER BY issue.id LIMIT 1", called + "%"))
        : Optional.empty();
  }

  /** Hands out a copy; a number is given once. */
  public void handOut(By by, Entry issue, String copy, String holder) throws RegisterException {
    new Copies(ledger, issues).handOut(by, issue, copy, holder);
  }

  /** Hands out a copy under the next number of this issue, and says which that is. */
  public String handOutNext(By by, Entry issue, String holder) throws RegisterException {
    return new Copies(ledger, issues).handOutNext(by, issue, holder);
  }

  /** Notes that a copy came back. */
  public void takeBack(By by, Entry issue, String copy) throws RegisterException {
    new Copies(ledger, issues).noLongerOut(by, issue, copy, "took back copy " + copy);
  }

  /** Notes that a copy was destroyed where it was. */
  public void destroyed(By by, Entry issue, String copy) throws RegisterException {
    new Copies(ledger, issues).noLongerOut(by, issue, copy, "noted as destroyed copy " + copy);
  }

  /** Notes that a person signed the slip of an issue. */
  public void acknowledge(By by, Entry issue, String person) throws RegisterException {
    Names.require(Names.Entered.PERSON, person);
    staff().require(person);
    ledger.acting(
        by,
        person + " acknowledged",
        issue.name(),
        (db, act) -> {
          long id = issues.known(issue);
          if (db.rows("SELECT person FROM acknowledgement WHERE issue = ?", id).stream()
              .anyMatch(row -> PersonName.same(row.get(0), person))) {
            throw new RegisterException(RegisterText.ACKNOWLEDGED.with(person, issue));
          }
          db.change(
              "INSERT INTO acknowledgement_entry (issue, person, act) VALUES (?, ?, ?)",
              id,
              person,
              act);
        });
  }

  /** Notes how a person or place writes the name that is entered in Latin letters. */
  public void written(By by, Entry issue, String latin, String written) throws RegisterException {
    Names.require(Names.Entered.LATIN, latin);
    Names.requireWritten(written);
    ledger.acting(by, WRITTEN.formatted(latin, written), issue.name(), (d, a) -> {});
  }

  /** Signs a driver off for one direction with one formation: each is signed separately. */
  public void signOff(By by, Entry issue, Signature signature) throws RegisterException {
    new Signatures(ledger, issues).signOff(by, issue, signature);
  }

  /** Calls an issue back though nothing supersedes it. */
  public void recall(By by, Entry issue, String reason) throws RegisterException {
    Names.require(Names.Entered.REASON, reason);
    ledger.acting(
        by,
        "recalled: " + reason,
        issue.name(),
        (db, act) -> {
          long id = issues.known(issue);
          Optional<String> before = Recalls.of(db, id, by.when());
          if (before.isPresent()) {
            throw new RegisterException(
                isSuperseded(before.get())
                    ? RegisterText.SUPERSEDED.with(issue, before.get())
                    : RegisterText.RECALLED.with(issue, before.get()));
          }
          db.change(
              "INSERT INTO recall_entry (issue, reason, act) VALUES (?, ?, ?)", id, reason, act);
        });
  }

  /** The first time, from a moment on, in which nothing of a pack is in force. */
  public Gap gap(String pack, LocalDateTime at) throws RegisterException {
    return ledger.reading(db -> Gap.next(db, pack, at));
  }

  /** Why an issue may not be used any more at a moment, if it was recalled or superseded. */
  public Optional<String> recalled(Entry issue, LocalDateTime when) throws RegisterException {
    return ledger.reading(db -> Recalls.of(db, issues.known(issue), when));
  }

  /** Whether this is why an issue is recalled: a later one has taken its place. */
  public static boolean isSuperseded(String reason) {
    return reason.startsWith(Recalls.SUPERSEDED);
  }

  /** The numbers of the copies of an issue that somebody holds, however the name is spelt. */
  public List<String> held(Entry issue, String person) throws RegisterException {
    return list(Question.outOf(issue.pack())).rows().stream()
        .filter(row -> row.get(0).equals(issue.name()) && PersonName.same(row.get(2), person))
        .map(row -> row.get(1))
        .toList();
  }

  /**
   * Who has to be briefed: one answer for lists and papers.
   *
   * @param now when an issue is to be in force, or to come
   */
  public List<ToBrief> toBrief(LocalDateTime now) throws RegisterException {
    return ledger.reading(db -> ToBrief.due(db, now));
  }

  /** Whom the next issue of a pack will concern, by the same rule. */
  public List<ToBrief> concerned(String pack) throws RegisterException {
    return ledger.reading(db -> ToBrief.concerned(db, pack));
  }

  /** The lists that are asked of it. */
  public Listing list(Question question) throws RegisterException {
    return ledger.reading(question::asked);
  }

  @Override
  public void close() throws RegisterException {
    ledger.close();
  }
}
