package gradepost.reissue.register;

import gradepost.pack.PersonName;
import gradepost.reissue.register.Register.By;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

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
    Names.requireScore(signature.score());
    if (PersonName.same(signature.assessor(), signature.person())) {
      throw new RegisterException(
          RegisterText.OWN_ASSESSOR.with(signature.assessor(), signature.person()));
    }
    ledger.acting(
        by,
        signature.person() + " signed off, " + signature.covers(),
        issue.name(),
        (db, act) -> {
          if (issues.draft(issue)) {
            throw new RegisterException(RegisterText.DRAFT.with(issue));
          }
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

  /**
   * A sign-off as it was entered.
   *
   * @param entry in which order
   * @param signed on which day
   */
  record Row(long entry, String pack, String issue, String signed, Signature what) {
    private static Row of(List<String> row) {
      return new Row(
          Long.parseLong(row.get(0)),
          row.get(1),
          row.get(2),
          row.get(3),
          new Signature(
              row.get(4),
              row.get(5),
              row.get(6),
              row.get(7),
              LocalDate.parse(row.get(8)),
              row.get(9),
              row.get(10),
              row.get(11)));
    }

    private List<String> key() {
      return List.of(pack, PersonName.folded(what.person()), what.direction(), what.formation());
    }

    /** As the cells of the class list. */
    List<String> cells() {
      return List.of(
          issue,
          what.person(),
          what.direction(),
          what.formation(),
          signed,
          what.lapses().toString(),
          what.assessor(),
          what.score(),
          what.paper(),
          what.conditions());
    }
  }

  /**
   * Of each person, pack, direction and formation the last one by this order, by pack and person.
   */
  static List<Row> last(Database db, Comparator<Row> order) throws SQLException {
    Map<List<String>, Row> last = new HashMap<>();
    db
        .rows(
            "SELECT s.id, i.pack, i.pack || '/' || i.number, s.signed, s.person, s.direction,"
                + " s.formation, s.assessor, s.lapses, s.score, s.paper, s.conditions"
                + " FROM sign_off s JOIN issue i ON i.id = s.issue ORDER BY s.id")
        .stream()
        .map(Row::of)
        .forEach(row -> last.merge(row.key(), row, (a, b) -> order.compare(b, a) >= 0 ? b : a));
    return last.values().stream()
        .sorted(
            Comparator.comparing(Row::pack)
                .thenComparing(row -> row.what().person())
                .thenComparing(row -> row.what().direction())
                .thenComparing(row -> row.what().formation()))
        .toList();
  }
}
