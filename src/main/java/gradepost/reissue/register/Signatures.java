package gradepost.reissue.register;

import gradepost.pack.PersonName;
import gradepost.reissue.register.Register.By;
import java.sql.SQLException;
import java.util.List;

/** Sign-offs as they are entered. */
final class Signatures {
  private final Ledger ledger;
  private final IssueRows issues;

  Signatures(Ledger ledger, IssueRows issues) {
    this.ledger = ledger;
    this.issues = issues;
  }

  /** Signs a driver off for one direction with one formation: each is signed separately. */
  void signOff(By by, Entry issue, Signature signature) throws RegisterException {
    Names.require(Names.Entered.PERSON, signature.person());
    Names.require(Names.Entered.ASSESSOR, signature.assessor());
    new Staff(ledger).require(signature.person());
    new Staff(ledger).require(signature.assessor());
    for (String words : List.of(signature.score(), signature.paper(), signature.conditions())) {
      if (!words.isEmpty()) {
        Names.require(Names.Entered.REMARK, words);
      }
    }
    if (PersonName.same(signature.assessor(), signature.person())) {
      throw new RegisterException(
          RegisterText.OWN_ASSESSOR.with(signature.assessor(), signature.person()));
    }
    ledger.acting(
        by,
        signature.person() + " signed off, " + signature.covers(),
        issue.name(),
        (db, act) -> {
          requireNew(db, issue, signature, by);
          db.change(
              "INSERT INTO sign_off_entry (id, issue, person, direction, formation, assessor, signed,"
                  + " lapses, score, paper, conditions, act)"
                  + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
              ledger.nextId(),
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
              act);
        });
  }

  /** The same signature on the same day is a slip of the hand. */
  private void requireNew(Database db, Entry issue, Signature signature, By by)
      throws SQLException, RegisterException {
    if (db
        .rows(
            "SELECT person, assessor FROM sign_off WHERE issue = ? AND direction = ?"
                + " AND formation = ? AND signed = ? AND lapses = ?",
            issues.known(issue),
            signature.direction(),
            signature.formation(),
            by.when().toLocalDate(),
            signature.lapses())
        .stream()
        .anyMatch(
            row ->
                PersonName.same(row.get(0), signature.person())
                    && PersonName.same(row.get(1), signature.assessor()))) {
      throw new RegisterException(
          RegisterText.SIGNED_OFF.with(signature.person(), issue, signature.covers()));
    }
  }
}
