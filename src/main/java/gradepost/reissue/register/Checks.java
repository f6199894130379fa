package gradepost.reissue.register;

import gradepost.pack.PersonName;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Register.By;
import java.util.List;
import java.util.Optional;

/**
 * Who checked an issue. A draft has papers that say so on every sheet; when somebody has checked
 * it, papers without that word take their place, and the draft's stay known as the draft's.
 */
public final class Checks {
  private final Ledger ledger;
  private final IssueRows issues;

  Checks(Ledger ledger, IssueRows issues) {
    this.ledger = ledger;
    this.issues = issues;
  }

  /** Whether an issue is a draft. */
  public boolean draft(Entry entry) throws RegisterException {
    return ledger.reading(db -> issues.draft(entry));
  }

  /** Who checked an issue; empty text for a draft, and where an old register does not say. */
  public String checker(Entry entry) throws RegisterException {
    return ledger.reading(db -> issues.checker(entry));
  }

  /**
   * Refuses whoever cannot be the checker of an issue.
   *
   * @param preparer who prepared its data
   */
  public void require(Entry entry, String preparer, String checker) throws RegisterException {
    Names.require(Names.Entered.CHECKER, checker);
    new Staff(ledger).require(checker);
    String entered = ledger.reading(db -> issues.enteredBy(entry));
    if (PersonName.same(preparer, checker) || PersonName.same(entered, checker)) {
      throw new RegisterException(RegisterText.OWN_CHECKER.with(checker, entry));
    }
    if (!draft(entry)) {
      throw new RegisterException(RegisterText.NO_DRAFT.with(entry, checker(entry)));
    }
  }

  /**
   * Notes that somebody checked an issue.
   *
   * @param papers without the mark of a draft, all of them
   */
  public void checked(By by, Entry entry, List<Kept> papers) throws RegisterException {
    ledger.acting(
        by,
        "checked",
        entry.name(),
        (db, act) -> {
          if (!issues.draft(entry)) {
            throw new RegisterException(RegisterText.NO_DRAFT.with(entry, issues.checker(entry)));
          }
          issues.checked(entry, Optional.of(by.who()));
          issues.papers(entry, papers);
        });
  }
}
