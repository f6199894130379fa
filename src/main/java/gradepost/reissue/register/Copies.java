package gradepost.reissue.register;

import gradepost.reissue.register.Register.By;
import java.sql.SQLException;
import java.util.List;

/** Copies of an issue: numbered here, handed out, and back again. */
final class Copies {
  private final Ledger ledger;
  private final IssueRows issues;

  Copies(Ledger ledger, IssueRows issues) {
    this.ledger = ledger;
    this.issues = issues;
  }

  /** Hands out a copy; a number is given once. */
  void handOut(By by, Entry issue, String copy, String holder) throws RegisterException {
    Names.requireCopy(copy);
    handOut(by, issue, db -> copy, holder);
  }

  /** Hands out a copy under the next number of this issue, and says which that is. */
  String handOutNext(By by, Entry issue, String holder) throws RegisterException {
    handOut(by, issue, db -> issues.nextCopy(issue), holder);
    return ledger.reading(db -> issues.lastCopy(issue));
  }

  private void handOut(By by, Entry issue, Ledger.Work<String> number, String holder)
      throws RegisterException {
    Names.require(Names.Entered.HOLDER, holder);
    new Staff(ledger).require(holder);
    ledger.acting(
        by,
        db -> "handed out copy " + number.on(db) + " to " + holder,
        issue.name(),
        (db, act) -> {
          long id = issues.known(issue);
          String copy = number.on(db);
          if (issues.draft(issue)) {
            throw new RegisterException(RegisterText.DRAFT.with(issue));
          }
          List<List<String>> out =
              db.rows("SELECT holder FROM copy WHERE issue = ? AND number = ?", id, copy);
          if (!out.isEmpty()) {
            throw new RegisterException(
                RegisterText.HANDED_OUT.with(copy, issue, out.get(0).get(0)));
          }
          db.change(
              "INSERT INTO copy_entry (issue, number, holder, handed_out) VALUES (?, ?, ?, ?)",
              id,
              copy,
              holder,
              act);
        });
  }

  /** Notes that a copy is in nobody's hands any more. */
  void noLongerOut(By by, Entry issue, String copy, String what) throws RegisterException {
    ledger.acting(
        by,
        what,
        issue.name(),
        (db, act) -> {
          int changed =
              db.change(
                  "UPDATE copy_entry SET returned = ? WHERE handed_out IN"
                      + " (SELECT handed_out FROM copy WHERE issue = ? AND number = ?"
                      + " AND returned IS NULL)",
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
}
