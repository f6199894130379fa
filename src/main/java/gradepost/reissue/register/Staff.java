package gradepost.reissue.register;

import gradepost.pack.PersonName;
import gradepost.reissue.register.Register.By;
import gradepost.units.Nearest;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * The list of the people and places of a depot. Where one is kept, copies go to those on it, and
 * signatures come from them; where none is kept, any name is taken.
 */
public final class Staff {
  /** Subject of the acts upon it. */
  static final String SUBJECT = "staff";

  private final Ledger ledger;

  Staff(Ledger ledger) {
    this.ledger = ledger;
  }

  /** Enters a person or place. */
  public void add(By by, String name) throws RegisterException {
    Names.require(Names.Entered.PERSON, name);
    ledger.acting(
        by,
        name + " joined the list",
        SUBJECT,
        (db, act) -> {
          if (on(db).stream().anyMatch(other -> PersonName.same(other, name))) {
            throw new RegisterException(RegisterText.ON_LIST.with(name));
          }
          db.change(
              "INSERT INTO staff_entry (joined, name, depot) VALUES (?, ?, ?)",
              act,
              name,
              by.depot());
        });
  }

  /** Notes that somebody left: nothing is handed to him, and he is not to be briefed. */
  public void leave(By by, String name) throws RegisterException {
    require(name);
    ledger.acting(
        by,
        name + " left the list",
        SUBJECT,
        (db, act) -> {
          if (db.change(
                  "UPDATE staff_entry SET gone = ? WHERE joined IN"
                      + " (SELECT joined FROM staff WHERE name = ?)",
                  act,
                  name)
              == 0) {
            throw new RegisterException(RegisterText.NO_LIST.with(name));
          }
        });
  }

  /** The names on the list; none where no list is kept. */
  public List<String> names() throws RegisterException {
    return ledger.reading(Staff::on);
  }

  private static List<String> on(Database db) throws SQLException {
    return db.rows("SELECT name FROM staff ORDER BY name").stream().map(r -> r.get(0)).toList();
  }

  /** Every name that stands anywhere in the register. */
  public List<String> known() throws RegisterException {
    return ledger.reading(
        db -> {
          TreeSet<String> all = new TreeSet<>();
          db.rows(
                  "SELECT name FROM staff UNION SELECT holder FROM copy"
                      + " UNION SELECT person FROM acknowledgement UNION SELECT person FROM sign_off"
                      + " UNION SELECT assessor FROM sign_off UNION SELECT who FROM act"
                      + " UNION SELECT checker FROM issue WHERE checker <> ''")
              .forEach(row -> all.add(row.get(0)));
          return List.copyOf(all);
        });
  }

  /** Refuses a name that is not on the list, where one is kept. */
  void require(String name) throws RegisterException {
    List<String> names = names();
    if (!names.isEmpty() && !names.contains(name)) {
      Optional<String> meant = names.stream().filter(n -> PersonName.same(n, name)).findFirst();
      throw new RegisterException(
          RegisterText.NOT_ON_LIST.with(name, meant.or(() -> Nearest.to(name, names))));
    }
  }
}
