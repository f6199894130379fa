package gradepost.reissue.register;

import gradepost.reissue.register.Register.By;
import java.sql.SQLException;
import java.util.List;

/** Takes an act back by another that says why. Nothing is deleted: both stand in the log. */
public final class Undoing {
  private static final List<String> UNDONE_BY_ACT =
      List.of(
          "SELECT 1 FROM copy_entry WHERE handed_out = ?",
          "SELECT 1 FROM copy_entry WHERE returned = ?",
          "SELECT 1 FROM acknowledgement_entry WHERE act = ?",
          "SELECT 1 FROM sign_off_entry WHERE act = ?",
          "SELECT 1 FROM recall_entry r WHERE r.act = ?"
              + " AND NOT EXISTS (SELECT 1 FROM issue j WHERE j.act = r.act)",
          "SELECT 1 FROM staff_entry WHERE joined = ?",
          "SELECT 1 FROM staff_entry WHERE gone = ?");

  private final Ledger ledger;

  Undoing(Ledger ledger) {
    this.ledger = ledger;
  }

  /**
   * Takes an act back, and says what it was.
   *
   * @param number of the act, as the log has it
   */
  public String undo(By by, long number, String reason) throws RegisterException {
    Names.require(Names.Entered.REASON, reason);
    List<String> act =
        ledger.reading(
            db -> {
              List<List<String>> found =
                  db.rows("SELECT what, subject, undone FROM act WHERE id = ?", number);
              if (found.isEmpty()) {
                throw new RegisterException(RegisterText.NO_ACT.with(String.valueOf(number)));
              }
              return found.get(0);
            });
    ledger.acting(
        by,
        "took back entry %d, %s: %s".formatted(number, act.get(0), reason),
        act.get(1),
        (db, id) -> {
          requireStanding(db, number, act.get(0));
          db.change("UPDATE act SET undone = ? WHERE id = ?", id, number);
        });
    return act.get(1) + ": " + act.get(0);
  }

  private static void requireStanding(Database db, long number, String what)
      throws SQLException, RegisterException {
    String called = String.valueOf(number);
    List<String> act = db.rows("SELECT undone, forgotten FROM act WHERE id = ?", number).get(0);
    if (!act.get(1).isEmpty()) {
      throw new RegisterException(RegisterText.FORGOTTEN.with(called, what, act.get(1)));
    }
    String by = act.get(0);
    if (!by.isEmpty()) {
      throw new RegisterException(RegisterText.UNDONE.with(called, what, by));
    }
    boolean known = false;
    for (String question : UNDONE_BY_ACT) {
      known |= !db.rows(question, number).isEmpty();
    }
    if (!known) {
      throw new RegisterException(RegisterText.STANDS.with(called, what));
    }
    List<List<String>> back =
        db.rows("SELECT returned FROM copy WHERE handed_out = ? AND returned IS NOT NULL", number);
    if (!back.isEmpty()) {
      throw new RegisterException(RegisterText.CAME_BACK.with(called, what, back.get(0).get(0)));
    }
  }
}
