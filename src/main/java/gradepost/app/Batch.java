package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.source.table.CsvText;
import gradepost.text.Mistake;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;

/**
 * Enters a table of people and packs, an act a row. Every row is tried before any is entered: all
 * that is wrong is told at once, and then nothing is entered.
 */
public final class Batch {
  private final Store store;
  private final Clock clock;
  private final String who;
  private final boolean confirmed;

  /**
   * @param confirmed whether the clerk knows that issues are not in use, or that people have copies
   *     of them; else such a row is refused
   */
  public Batch(Store store, Clock clock, String who, boolean confirmed) {
    this.store = store;
    this.clock = clock;
    this.who = who;
    this.confirmed = confirmed;
  }

  /** Enters a table. */
  public Answer of(BatchAct act, Path file) {
    return OnRegister.of(
        store,
        register -> {
          BatchTable table = new BatchTable(act, file);
          Answer read = new Answer(List.of(), List.of(), table.notes(), true);
          return read.and(
              table.problems().isEmpty()
                  ? entered(act, table, register)
                  : new Answer(List.of(), List.of(), table.problems(), false));
        });
  }

  private Answer entered(BatchAct act, BatchTable table, Register register)
      throws RegisterException {
    By by = store.by(who, clock);
    InUse use = new InUse(register, by.when());
    List<String> said = new ArrayList<>();
    List<String> problems = new ArrayList<>();
    try {
      register.together(
          () -> {
            for (List<CsvText.Cell> row : table.rows()) {
              List<Mistake> doubts = new ArrayList<>();
              try {
                BatchRow entered = new BatchRow(store, register, by, use, table.cells(row));
                said.add(entered.done(act, doubts));
              } catch (RegisterException | IOException e) {
                problems.add(table.told(row, String.valueOf(e.getMessage())));
              }
              // Entered all the same, for now: rows below may be doubtful because of this one.
              doubts.removeIf(doubt -> confirmed);
              doubts.forEach(doubt -> problems.add(table.told(row, doubt.inWords())));
            }
            if (!problems.isEmpty()) {
              throw new RegisterException(AppText.EMPTY_TABLE);
            }
          });
    } catch (RegisterException e) {
      if (problems.isEmpty()) {
        throw e;
      }
      problems.add("error: nothing was entered");
      return new Answer(List.of(), List.of(), problems, false);
    }
    return new Answer(said, List.of(), List.of(), true);
  }
}
