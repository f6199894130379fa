package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.Signature;
import gradepost.source.table.CsvText;
import gradepost.text.Mistake;
import gradepost.units.Nearest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Enters a table of people and packs, an act a row. Every row is tried before any is entered: all
 * that is wrong is told at once, and then nothing is entered.
 */
public final class Batch {
  private static final List<String> YES = List.of("yes", "no");

  private final Store store;
  private final Clock clock;
  private final String who;

  public Batch(Store store, Clock clock, String who) {
    this.store = store;
    this.clock = clock;
    this.who = who;
  }

  /** What a row does. */
  public enum Act {
    /** A copy for each row; numbered by the register where the table has no number. */
    HAND_OUT("issue person", "copy"),
    /** A copy that came back; where somebody holds only one, its number may be left out. */
    RETURN("issue person", "copy destroyed"),
    /** A slip that came back signed. */
    ACKNOWLEDGE("issue person", ""),
    /** A driver who was signed off. */
    SIGN_OFF("issue person direction assessor lapses", "formation score paper conditions"),
    /** Somebody who joins the list of staff. */
    STAFF("person", "");

    private final String needed;
    private final String more;

    Act(String needed, String more) {
      this.needed = needed;
      this.more = more;
    }

    private List<String> needed() {
      return List.of(needed.split(" "));
    }

    private List<String> columns() {
      return List.of((needed + " " + more).strip().split(" "));
    }

    /** As it is typed. */
    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** Something is wrong in a row. */
  private static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    Refused(Mistake mistake) {
      super(mistake.inWords());
    }
  }

  /** Enters a table. */
  public Answer of(Act act, Path file) {
    if (!store.exists()) {
      return store.missing();
    }
    try (Register register = store.open()) {
      String text = Files.readString(file).replaceFirst("^\uFEFF", "");
      List<List<CsvText.Cell>> rows = CsvText.rows(text);
      List<String> problems = new ArrayList<>();
      if (rows.size() < 2) {
        return Answer.refused(told(file, 1, 1, AppText.EMPTY_TABLE.inWords()));
      }
      List<String> headings = headings(act, file, rows.get(0), problems);
      if (!problems.isEmpty()) {
        return new Answer(List.of(), List.of(), problems, false);
      }
      return entered(act, file, headings, rows.subList(1, rows.size()), register);
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private static String told(Path file, int line, int column, String what) {
    return "%s:%d:%d: error: %s".formatted(file, line, column, what);
  }

  private static List<String> headings(
      Act act, Path file, List<CsvText.Cell> row, List<String> problems) {
    List<String> headings = new ArrayList<>();
    for (CsvText.Cell cell : row) {
      String name = cell.text().strip().toLowerCase(Locale.ROOT);
      if (!act.columns().contains(name)) {
        problems.add(
            told(
                file,
                cell.line(),
                cell.column(),
                AppText.UNKNOWN_COLUMN
                    .with(name, act.columns(), Nearest.to(name, act.columns()))
                    .inWords()));
      }
      headings.add(name);
    }
    for (String needed : act.needed()) {
      if (!headings.contains(needed)) {
        problems.add(
            told(
                file,
                row.get(0).line(),
                row.get(0).column(),
                AppText.NO_COLUMN.with(needed, act.needed()).inWords()));
      }
    }
    return headings;
  }

  private Answer entered(
      Act act, Path file, List<String> headings, List<List<CsvText.Cell>> rows, Register register)
      throws RegisterException {
    By by = store.by(who, clock);
    List<String> said = new ArrayList<>();
    List<String> problems = new ArrayList<>();
    try {
      register.together(
          () -> {
            for (List<CsvText.Cell> row : rows) {
              try {
                Map<String, String> cells = cells(act, headings, row);
                said.add(new Row(register, by, cells).done(act));
              } catch (Refused | RegisterException | IOException e) {
                CsvText.Cell first = row.get(0);
                problems.add(
                    told(file, first.line(), first.column(), String.valueOf(e.getMessage())));
              }
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

  private static Map<String, String> cells(Act act, List<String> headings, List<CsvText.Cell> row)
      throws Refused {
    Map<String, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < headings.size(); i++) {
      cells.put(headings.get(i), i < row.size() ? row.get(i).text().strip() : "");
    }
    for (String needed : act.needed()) {
      if (cells.getOrDefault(needed, "").isEmpty()) {
        throw new Refused(AppText.EMPTY_CELL.with(needed));
      }
    }
    return cells;
  }

  /** A row, as it is entered. */
  private final class Row {
    private final Register register;
    private final By by;
    private final Map<String, String> cells;

    Row(Register register, By by, Map<String, String> cells) {
      this.register = register;
      this.by = by;
      this.cells = cells;
    }

    private String cell(String column) {
      return cells.getOrDefault(column, "");
    }

    String done(Act act) throws Refused, RegisterException, IOException {
      String person = cell("person");
      if (act == Act.STAFF) {
        register.staff().add(by, person);
        return person + " joined the list of staff";
      }
      Entry issue = issue();
      String name = issue.name();
      switch (act) {
        case HAND_OUT -> {
          InUse.require(register, issue, by.when());
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
          SignOffTerms.of(store, issue, by.when().toLocalDate()).require(issue, signature);
          register.signOff(by, issue, signature);
          return "%s: %s signed off, %s, until %s"
              .formatted(name, person, signature.covers(), signature.lapses());
        }
      }
    }

    /** By its name, or the latest of a pack by the name of the pack. */
    private Entry issue() throws Refused, RegisterException {
      String called = cell("issue");
      Optional<Entry> found = register.find(called);
      if (found.isEmpty()) {
        found = register.latest(called);
      }
      return found.orElseThrow(() -> new Refused(AppText.NO_SUCH_ISSUE.with(called)));
    }

    private String held(Entry issue, String person) throws Refused, RegisterException {
      List<String> copies =
          register.list(Question.outOf(issue.pack())).rows().stream()
              .filter(row -> row.get(0).equals(issue.name()) && row.get(2).equals(person))
              .map(row -> row.get(1))
              .toList();
      if (!cell("copy").isEmpty() && copies.contains(cell("copy"))) {
        return cell("copy");
      }
      if (copies.isEmpty() || !cell("copy").isEmpty()) {
        throw new Refused(AppText.NOT_HELD.with(issue.name(), person));
      }
      if (copies.size() > 1) {
        throw new Refused(AppText.SEVERAL_HELD.with(person, copies));
      }
      return copies.get(0);
    }

    private boolean yes(String column) throws Refused {
      String word = cell(column).toLowerCase(Locale.ROOT);
      if (!word.isEmpty() && !YES.contains(word)) {
        throw new Refused(AppText.NO_YES.with(word, YES));
      }
      return word.equals(YES.get(0));
    }

    private Signature signature(String person) throws Refused {
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
        throw new Refused(AppText.NO_DATE.with(cell("lapses")));
      }
    }
  }
}
