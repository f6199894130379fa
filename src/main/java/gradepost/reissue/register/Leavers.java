package gradepost.reissue.register;

import gradepost.pack.PersonName;
import gradepost.reissue.register.Register.By;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What is kept of people who left the list of staff. When its time is over it is removed: the
 * records are deleted, and the name is taken out of the acts that entered them. The acts stay, and
 * cannot be taken back any more. A name stays where its bearer acted for the depot: as a clerk,
 * checker or assessor.
 */
public final class Leavers {
  /** The last act by which each left; who is on the list again has not left. */
  private static final String LEFT =
      "SELECT s.name, MAX(a.moment) FROM staff_entry s JOIN act a ON a.id = s.gone"
          + " WHERE a.undone IS NULL AND a.forgotten IS NULL GROUP BY s.name ORDER BY s.name";

  /** What was taken back is kept too, and goes with the rest. */
  private static final String RECORDS =
      "SELECT 'acknowledgement_entry', e.act, e.person, i.pack, i.number, '', '' AS out"
          + " FROM acknowledgement_entry e JOIN issue i ON i.id = e.issue"
          + " UNION ALL SELECT 'sign_off_entry', e.act, e.person, i.pack, i.number,"
          + " CASE WHEN e.formation = '' THEN e.direction"
          + " ELSE e.direction || ', ' || e.formation END, ''"
          + " FROM sign_off_entry e JOIN issue i ON i.id = e.issue"
          + " UNION ALL SELECT 'copy_entry', e.handed_out, e.holder, i.pack, i.number, e.number,"
          + " CASE WHEN EXISTS (SELECT 1 FROM copy c WHERE c.handed_out = e.handed_out"
          + " AND c.returned IS NULL) THEN 'out' ELSE '' END"
          + " FROM copy_entry e JOIN issue i ON i.id = e.issue ORDER BY 3, 2";

  /**
   * Something that is kept of somebody who left.
   *
   * @param person by name
   * @param left the day
   * @param pack that it is of
   * @param out whether it is a copy that has not come back
   * @param words what it is
   * @param table that holds it
   * @param act that entered it
   */
  public record Held(
      String person,
      LocalDate left,
      String pack,
      boolean out,
      String words,
      String table,
      long act) {}

  private final Ledger ledger;

  Leavers(Ledger ledger) {
    this.ledger = ledger;
  }

  /** All that is kept of people who left, by person. */
  public List<Held> held() throws RegisterException {
    return ledger.reading(Leavers::held);
  }

  private static List<Held> held(Database db) throws SQLException {
    List<String> staff = db.rows("SELECT name FROM staff").stream().map(row -> row.get(0)).toList();
    Map<String, LocalDate> left = new LinkedHashMap<>();
    for (List<String> row : db.rows(LEFT)) {
      if (staff.stream().noneMatch(name -> PersonName.same(name, row.get(0)))) {
        left.merge(
            PersonName.folded(row.get(0)),
            LocalDate.parse(row.get(1).substring(0, 10)),
            (one, other) -> one.isAfter(other) ? one : other);
      }
    }
    List<Held> held = new ArrayList<>();
    for (List<String> row : db.rows(RECORDS)) {
      LocalDate day = left.get(PersonName.folded(row.get(2)));
      if (day != null) {
        held.add(
            new Held(
                row.get(2),
                day,
                row.get(3),
                row.get(6).equals("out"),
                Objects.requireNonNull(RegisterText.KEPT_RECORD.get(row.get(0))).of(row),
                row.get(0),
                Long.parseLong(row.get(1))));
      }
    }
    return held;
  }

  /** Removes these records, and the names from the acts that entered them. */
  public void forget(By by, List<Held> due) throws RegisterException {
    ledger.erasing();
    ledger.acting(
        by,
        RegisterText.FORGOT.of(due.size()),
        Staff.SUBJECT,
        (db, act) -> {
          if (!held(db).containsAll(due)) {
            throw new RegisterException(RegisterText.NOT_WRITTEN.with(RegisterText.MEANWHILE));
          }
          Set<String> people = new LinkedHashSet<>();
          for (Held each : due) {
            forget(db, act, each);
            people.add(each.person());
          }
          Set<String> kept = new LinkedHashSet<>();
          held(db).forEach(each -> kept.add(PersonName.folded(each.person())));
          for (String person : people) {
            if (!kept.contains(PersonName.folded(person))) {
              leaveList(db, act, person);
            }
          }
        });
  }

  private static void forget(Database db, long act, Held each) throws SQLException {
    if (each.table().equals("copy_entry")) {
      db.change(
          "UPDATE copy_entry SET holder = ? WHERE handed_out = ?",
          RegisterText.NAME_REMOVED,
          each.act());
      for (List<String> row :
          db.rows("SELECT returned FROM copy_entry WHERE handed_out = ?", each.act())) {
        if (!row.get(0).isEmpty()) {
          close(db, act, Long.parseLong(row.get(0)), each.person());
        }
      }
    } else {
      db.change("DELETE FROM " + each.table() + " WHERE act = ?", each.act());
    }
    close(db, act, each.act(), each.person());
    String written = Register.WRITTEN.formatted(each.person(), "");
    for (List<String> row :
        db.rows(
            "SELECT id, what FROM act WHERE subject = (SELECT subject FROM act WHERE id = ?)",
            each.act())) {
      if (row.get(1).startsWith(written)) {
        what(db, Long.parseLong(row.get(0)), RegisterText.WRITTEN_REMOVED);
      }
    }
  }

  /** Nothing is kept of this person any more: the list of staff does not name him either. */
  private static void leaveList(Database db, long act, String person) throws SQLException {
    for (List<String> row : db.rows("SELECT joined, gone, name FROM staff_entry")) {
      if (PersonName.same(row.get(2), person)) {
        close(db, act, Long.parseLong(row.get(0)), row.get(2));
        if (!row.get(1).isEmpty()) {
          close(db, act, Long.parseLong(row.get(1)), row.get(2));
        }
        db.change(
            "UPDATE staff_entry SET name = ? WHERE joined = ?",
            RegisterText.NAME_REMOVED,
            Long.parseLong(row.get(0)));
      }
    }
    for (List<String> row :
        db.rows("SELECT id, what, who FROM act WHERE subject = ?", Accounts.SIGN_INS)) {
      String name = Accounts.refused(row.get(1)).orElse(row.get(2));
      if (PersonName.same(name, person)) {
        close(db, act, Long.parseLong(row.get(0)), name);
      }
    }
  }

  /** Takes a name out of an act, and out of the one that took it back; it stays as it is. */
  private static void close(Database db, long by, long act, String person) throws SQLException {
    List<String> row = db.rows("SELECT what, who, undone FROM act WHERE id = ?", act).get(0);
    what(db, act, without(row.get(0), person));
    db.change(
        "UPDATE act SET who = ?, forgotten = ? WHERE id = ?",
        PersonName.same(row.get(1), person) ? RegisterText.NAME_REMOVED : row.get(1),
        by,
        act);
    if (!row.get(2).isEmpty()) {
      long back = Long.parseLong(row.get(2));
      List<String> undo = db.rows("SELECT what, who FROM act WHERE id = ?", back).get(0);
      what(db, back, without(undo.get(0), person));
    }
  }

  private static void what(Database db, long act, String words) throws SQLException {
    db.change("UPDATE act SET what = ? WHERE id = ?", words, act);
  }

  private static String without(String words, String person) {
    return words.replaceAll(
        "(?<![\\p{L}\\p{N}])%s(?![\\p{L}\\p{N}])".formatted(Pattern.quote(person)),
        Matcher.quoteReplacement(RegisterText.NAME_REMOVED));
  }
}
