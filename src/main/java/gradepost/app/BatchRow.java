package gradepost.app;

import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.Signature;
import gradepost.text.Mistake;
import java.io.IOException;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A row of a table, as it is entered in the register. */
final class BatchRow {
  private static final List<String> YES = List.of("yes", "no");

  private final Store store;
  private final Register register;
  private final By by;
  private final InUse use;
  private final Map<String, String> cells;

  BatchRow(Store store, Register register, By by, InUse use, Map<String, String> cells) {
    this.store = store;
    this.register = register;
    this.by = by;
    this.use = use;
    this.cells = cells;
  }

  private String cell(String column) {
    return cells.getOrDefault(column, "");
  }

  /**
   * Enters it, and says what was entered.
   *
   * @param doubts takes what may be a mistake in it
   */
  String done(BatchAct act, List<Mistake> doubts) throws RegisterException, IOException {
    String person = cell("person");
    if (act == BatchAct.STAFF) {
      register.staff().add(by, person);
      return person + " joined the list of staff";
    }
    Entry issue = issue();
    String name = issue.name();
    switch (act) {
      case HAND_OUT -> {
        doubts.addAll(use.toHandOut(issue, person));
        String copy = cell("copy");
        if (copy.isEmpty()) {
          copy = register.handOutNext(by, issue, person);
        } else {
          register.handOut(by, issue, copy, person);
        }
        return "%s: copy %s handed out to %s".formatted(name, copy, person);
      }
      case RETURN -> {
        String copy = held(issue, person);
        if (yes("destroyed")) {
          register.destroyed(by, issue, copy);
          return "%s: copy %s of %s is destroyed".formatted(name, copy, person);
        }
        register.takeBack(by, issue, copy);
        return "%s: copy %s of %s is back".formatted(name, copy, person);
      }
      case ACKNOWLEDGE -> {
        register.acknowledge(by, issue, person);
        return "%s: acknowledged by %s".formatted(name, person);
      }
      default -> {
        Signature signature = signature(person);
        doubts.addAll(use.toSignOff(issue));
        SignOffTerms.of(store, issue, by.when().toLocalDate()).require(issue, signature);
        register.signOff(by, issue, signature);
        return "%s: %s signed off, %s, until %s"
            .formatted(name, person, signature.covers(), signature.lapses());
      }
    }
  }

  /** By its name, or the latest of a pack by the name of the pack. */
  private Entry issue() throws RegisterException {
    Optional<Entry> named = register.find(cell("issue"));
    return (named.isPresent() ? named : register.latest(cell("issue")))
        .orElseThrow(() -> new RegisterException(AppText.NO_SUCH_ISSUE.with(cell("issue"))));
  }

  private String held(Entry issue, String person) throws RegisterException {
    List<String> copies = register.held(issue, person);
    String named = cell("copy");
    if (copies.contains(named)) {
      return named;
    }
    if (copies.isEmpty() || !named.isEmpty()) {
      throw new RegisterException(AppText.NOT_HELD.with(issue.name(), person));
    }
    if (copies.size() > 1) {
      throw new RegisterException(AppText.SEVERAL_HELD.with(person, copies));
    }
    return copies.get(0);
  }

  private boolean yes(String column) throws RegisterException {
    String word = cell(column).toLowerCase(Locale.ROOT);
    if (!word.isEmpty() && !YES.contains(word)) {
      throw new RegisterException(AppText.NO_YES.with(word, YES));
    }
    return word.equals(YES.get(0));
  }

  private Signature signature(String person) throws RegisterException {
    try {
      return new Signature(
          person,
          cell("direction"),
          cell("formation"),
          cell("assessor"),
          LocalDate.parse(cell("lapses")),
          cell("score"),
          cell("paper"),
          cell("conditions"));
    } catch (DateTimeParseException e) {
      throw new RegisterException(AppText.NO_DATE.with(cell("lapses")));
    }
  }
}
