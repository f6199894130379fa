package gradepost.reissue.register;

import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What was issued, and what became of it. */
public final class Register implements AutoCloseable {
  private final Database data;
  private final IssueRows issues;

  private Register(Database data) {
    this.data = data;
    this.issues = new IssueRows(data);
  }

  /** Opens a register, makes it where there is none, and brings it to the present schema. */
  public static Register open(String url) throws RegisterException {
    return new Register(Database.open(url));
  }

  /** Who does something, and when. */
  public record By(String who, LocalDateTime when) {}

  private interface Work<T> {
    T on(Database data) throws SQLException, RegisterException;
  }

  private <T> T reading(Work<T> work) throws RegisterException {
    try {
      try {
        return work.on(data);
      } finally {
        data.rollback();
      }
    } catch (SQLException e) {
      throw new RegisterException(RegisterText.NOT_READ.with(Database.oneLine(e)), e);
    }
  }

  private interface Acting {
    void on(Database data, long act) throws SQLException, RegisterException;
  }

  /** One act is one transaction: the counter, taken first, keeps any other waiting. */
  private void acting(By by, String what, String subject, Acting work) throws RegisterException {
    Names.require(Names.Entered.BY, by.who());
    try {
      boolean done = false;
      try {
        long act = nextId();
        data.change(
            "INSERT INTO act (id, moment, who, what, subject) VALUES (?, ?, ?, ?, ?)",
            act,
            by.when(),
            by.who(),
            what,
            subject);
        work.on(data, act);
        data.commit();
        done = true;
      } finally {
        if (!done) {
          data.rollback();
        }
      }
    } catch (SQLException e) {
      throw new RegisterException(RegisterText.NOT_WRITTEN.with(Database.oneLine(e)), e);
    }
  }

  private long nextId() throws SQLException {
    data.change("UPDATE counter SET taken = taken + 1 WHERE name = 'id'");
    return Long.parseLong(data.rows("SELECT taken FROM counter WHERE name = 'id'").get(0).get(0));
  }

  /**
   * Registers an issue. Those that it supersedes are recalled by the same act, from the hour at
   * which it is valid.
   */
  public void issue(By by, Entry entry) throws RegisterException {
    acting(
        by,
        "issued",
        entry.name(),
        (db, act) -> {
          overtaken(db, entry);
          issues.insert(nextId(), entry, act, false);
          if (entry.base().isPresent()) {
            db.change(
                "INSERT INTO recall (issue, reason, act, effective) SELECT id, ?, ?, ? FROM issue"
                    + " WHERE pack = ? AND number < ? AND id NOT IN (SELECT issue FROM recall)",
                Recalls.superseded(entry, by.when()),
                act,
                Recalls.effective(entry, by.when()),
                entry.pack(),
                entry.number());
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
    acting(
        by,
        "taken in",
        entry.name(),
        (db, act) -> {
          overtaken(db, entry);
          issues.insert(nextId(), entry, act, true);
        });
  }

  /** Notes that the papers of an issue lie where they belong. */
  public void delivered(By by, Entry entry) throws RegisterException {
    acting(
        by,
        "put in place",
        entry.name(),
        (db, act) ->
            db.change(
                "UPDATE issue SET delivered = 1 WHERE pack = ? AND number = ?",
                entry.pack(),
                entry.number()));
  }

  /** Whether the files of an issue lie in their place. */
  public boolean isDelivered(Entry entry) throws RegisterException {
    return reading(
        db ->
            !db.rows(
                    "SELECT 1 FROM issue WHERE pack = ? AND number = ? AND delivered = 1",
                    entry.pack(),
                    entry.number())
                .isEmpty());
  }

  /** The packs whose latest issue does not lie where it belongs yet. */
  public Set<String> undelivered() throws RegisterException {
    return reading(
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
    return reading(
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
    return reading(db -> issues.first("pack = ? ORDER BY issue.number DESC LIMIT 1", pack));
  }

  /** Whether any issue of a pack is registered; none is loaded. */
  public boolean knows(String pack) throws RegisterException {
    return reading(db -> !db.rows("SELECT 1 FROM issue WHERE pack = ? LIMIT 1", pack).isEmpty());
  }

  /** An issue of a pack by its number, if there is one. */
  public Optional<Entry> issue(String pack, int number) throws RegisterException {
    return reading(db -> issues.first("pack = ? AND number = ?", pack, number));
  }

  /** By its name, "valley/4", or by the beginning of its fingerprint, eight digits at least. */
  public Optional<Entry> find(String called) throws RegisterException {
    int cut = called.lastIndexOf('/');
    if (cut > 0 && called.substring(cut + 1).matches("\\d{1,9}")) {
      return issue(called.substring(0, cut), Integer.parseInt(called.substring(cut + 1)));
    }
    return called.matches("[0-9a-f]{8,64}")
        ? reading(db -> issues.first("fingerprint LIKE ? ORDER BY issue.id LIMIT 1", called + "%"))
        : Optional.empty();
  }

  /** Hands out a copy; a number is given once. */
  public void handOut(By by, Entry issue, String copy, String holder) throws RegisterException {
    Names.require(Names.Entered.COPY, copy);
    Names.require(Names.Entered.HOLDER, holder);
    acting(
        by,
        "handed out copy " + copy + " to " + holder,
        issue.name(),
        (db, act) -> {
          long id = issues.known(issue);
          List<List<String>> out =
              db.rows("SELECT holder FROM copy WHERE issue = ? AND number = ?", id, copy);
          if (!out.isEmpty()) {
            throw new RegisterException(
                RegisterText.HANDED_OUT.with(copy, issue, out.get(0).get(0)));
          }
          db.change(
              "INSERT INTO copy (issue, number, holder, handed_out) VALUES (?, ?, ?, ?)",
              id,
              copy,
              holder,
              act);
        });
  }

  /** Notes that a copy came back. */
  public void takeBack(By by, Entry issue, String copy) throws RegisterException {
    noLongerOut(by, issue, copy, "took back copy " + copy);
  }

  /** Notes that a copy was destroyed where it was. */
  public void destroyed(By by, Entry issue, String copy) throws RegisterException {
    noLongerOut(by, issue, copy, "noted as destroyed copy " + copy);
  }

  private void noLongerOut(By by, Entry issue, String copy, String what) throws RegisterException {
    acting(
        by,
        what,
        issue.name(),
        (db, act) -> {
          int changed =
              db.change(
                  "UPDATE copy SET returned = ? WHERE issue = ? AND number = ? AND returned IS NULL",
                  act,
                  issues.known(issue),
                  copy);
          if (changed == 0) {
            throw new RegisterException(
                RegisterText.NOT_OUT.with(copy, issue, copiesOut(db, issue)));
          }
        });
  }

  private String copiesOut(Database db, Entry issue) throws SQLException, RegisterException {
    List<String> out =
        db
            .rows(
                "SELECT number, holder FROM copy WHERE issue = ? AND returned IS NULL"
                    + " ORDER BY handed_out",
                issues.known(issue))
            .stream()
            .map(RegisterText.COPY_OUT::of)
            .toList();
    return out.isEmpty() ? RegisterText.NONE_OUT : String.join("; ", out);
  }

  /** Notes that a person signed the slip of an issue. */
  public void acknowledge(By by, Entry issue, String person) throws RegisterException {
    Names.require(Names.Entered.PERSON, person);
    acting(
        by,
        person + " acknowledged",
        issue.name(),
        (db, act) -> {
          long id = issues.known(issue);
          if (!db.rows("SELECT 1 FROM acknowledgement WHERE issue = ? AND person = ?", id, person)
              .isEmpty()) {
            throw new RegisterException(RegisterText.ACKNOWLEDGED.with(person, issue));
          }
          db.change(
              "INSERT INTO acknowledgement (issue, person, act) VALUES (?, ?, ?)", id, person, act);
        });
  }

  /** Notes how a person or place writes the name that is entered in Latin letters. */
  public void written(By by, Entry issue, String latin, String written) throws RegisterException {
    Names.require(Names.Entered.LATIN, latin);
    Names.requireWritten(written);
    acting(by, "noted that %s is written %s".formatted(latin, written), issue.name(), (d, a) -> {});
  }

  /** Signs a driver off for one direction with one formation: each is signed separately. */
  public void signOff(By by, Entry issue, Signature signature) throws RegisterException {
    Names.require(Names.Entered.PERSON, signature.person());
    Names.require(Names.Entered.ASSESSOR, signature.assessor());
    for (String words : List.of(signature.score(), signature.paper(), signature.conditions())) {
      if (!words.isEmpty()) {
        Names.require(Names.Entered.REMARK, words);
      }
    }
    if (signature.assessor().equals(signature.person())) {
      throw new RegisterException(RegisterText.OWN_ASSESSOR.with(signature.person()));
    }
    acting(
        by,
        signature.person() + " signed off, " + signature.covers(),
        issue.name(),
        (db, act) ->
            db.change(
                "INSERT INTO sign_off (id, issue, person, direction, formation, assessor, signed,"
                    + " lapses, score, paper, conditions, act)"
                    + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                nextId(),
                issues.known(issue),
                signature.person(),
                signature.direction(),
                signature.formation(),
                signature.assessor(),
                by.when().toLocalDate(),
                signature.lapses(),
                signature.score(),
                signature.paper(),
                signature.conditions(),
                act));
  }

  /** Calls an issue back though nothing supersedes it. */
  public void recall(By by, Entry issue, String reason) throws RegisterException {
    Names.require(Names.Entered.REASON, reason);
    acting(
        by,
        "recalled: " + reason,
        issue.name(),
        (db, act) -> {
          long id = issues.known(issue);
          Optional<String> before = Recalls.of(db, id, by.when());
          if (before.isPresent()) {
            throw new RegisterException(RegisterText.RECALLED.with(issue, before.get()));
          }
          db.change("DELETE FROM recall WHERE issue = ?", id);
          db.change("INSERT INTO recall (issue, reason, act) VALUES (?, ?, ?)", id, reason, act);
        });
  }

  /** Why an issue may not be used any more at a moment, if it was recalled or superseded. */
  public Optional<String> recalled(Entry issue, LocalDateTime when) throws RegisterException {
    return reading(db -> Recalls.of(db, issues.known(issue), when));
  }

  /** The lists that are asked of it. */
  public Listing list(Question question) throws RegisterException {
    return reading(
        db -> new Listing(question.columns(), db.rows(question.sql(), question.values())));
  }

  @Override
  public void close() throws RegisterException {
    data.close();
  }
}
