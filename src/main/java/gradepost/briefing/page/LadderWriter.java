package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Words;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedFaster;
import gradepost.told.PrintedPoint;
import gradepost.told.PrintedProtection;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** What is left if the service brake fails, every state of the rail beside the others, spelt. */
final class LadderWriter {
  private final Words words;
  private final ActionWords orders;
  private final double noticingS;

  LadderWriter(Words words, ActionWords orders, double noticingS) {
    this.words = words;
    this.orders = orders;
    this.noticingS = noticingS;
  }

  /** One for each application; where the train needs no brake, one for a faster train. */
  List<Table> tables(String id, InstructionSheet sheet) {
    List<Table> out = new ArrayList<>();
    for (PrintedApplication begun : sheet.begun()) {
      String title =
          sheet.named()
              ? words.text("ladder.title-at", begun.line(), orders.purpose(begun))
              : words.text("ladder.title");
      out.add(table(out.isEmpty() ? id : id + "-" + begun.line(), title, sheet, begun));
    }
    if (out.isEmpty()) {
      sheet
          .faster()
          .flatMap(PrintedFaster::application)
          .ifPresent(a -> out.add(table(id, words.text("faster.ladder", speed(a)), sheet, a)));
    }
    return out;
  }

  private static String speed(PrintedApplication faster) {
    return faster.speed().map(PrintedSpeed::text).orElseThrow();
  }

  private Table table(String id, String title, InstructionSheet sheet, PrintedApplication a) {
    LadderCells cells = new LadderCells(words, orders, sheet, a);
    List<Table.Row> rows = rows(sheet.forStep(a), a, cells, b -> false, b -> false);
    return table(id, title, cells, a, rows);
  }

  private Table table(
      String id, String title, LadderCells cells, PrintedApplication a, List<Table.Row> rows) {
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column(words.text("ladder.brake"), "text"));
    cells.cases().forEach(c -> columns.add(new Table.Column(cells.head(c), "place")));
    return merged(new Table(id, "ladder", title, note(a), columns, rows, ""));
  }

  /**
   * What the table in short has not, one for each of several points: at each of them it tells what
   * the brake to use comes to, and at the first the last place for it.
   */
  List<Table> rest(String id, InstructionSheet sheet) {
    List<Table> out = new ArrayList<>();
    for (PrintedApplication begun : sheet.begun()) {
      boolean first = out.isEmpty();
      String title = words.text("ladder.title-at", begun.line(), orders.purpose(begun));
      Predicate<PrintedBrake> used =
          brake -> begun.told().toUse().filter(u -> u.brake().equals(brake)).isPresent();
      Predicate<PrintedBrake> usedFirst = brake -> first && used.test(brake);
      LadderCells cells = new LadderCells(words, orders, sheet, begun);
      List<Table.Row> rows = rows(sheet.forStep(begun), begun, cells, used, usedFirst);
      out.add(table(first ? id : id + "-" + begun.line(), title, cells, begun, rows));
    }
    return out;
  }

  /** What is left at each of several points, in short. Empty where the stock has no other brake. */
  Optional<Table> inShort(String id, InstructionSheet sheet) {
    List<Table.Row> rows = new ArrayList<>();
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column(words.text("ladder.brake"), "text"));
    for (PrintedApplication a : sheet.begun()) {
      LadderCells cells = new LadderCells(words, orders, sheet, a);
      if (columns.size() == 1) {
        a.cases().forEach(c -> columns.add(new Table.Column(c.rail(), "place")));
      }
      boolean first = rows.isEmpty();
      boolean forStep = sheet.forStep(a);
      a.told()
          .toUse()
          .ifPresent(use -> rows.addAll(inShort(use.brake(), first, forStep, a, cells)));
    }
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(
            merged(new Table(id, "ladder", words.text("ladder.title"), "", columns, rows, "")));
  }

  /** What the brake to use comes to, and at the first point the last place for it. */
  private List<Table.Row> inShort(
      PrintedBrake brake, boolean first, boolean forStep, PrintedApplication a, LadderCells cells) {
    String called = words.called(brake);
    Table.Row instead =
        row(
            words.text("ladder.at-instead", a.line(), called, words.seconds(noticingS)),
            a.cases(),
            c -> answer(c, brake).map(cells::outcome).orElse(words.text("dash")),
            c -> answer(c, brake).filter(r -> !r.holds()).isPresent());
    if (!first) {
      return List.of(instead);
    }
    List<Table.Row> out = new ArrayList<>();
    out.add(instead);
    if (a.cases().stream().anyMatch(c -> c.stepLatest().isPresent())) {
      out.add(
          row(
              words.text("ladder.at-latest-step", a.line(), orders.purpose(a), called),
              a.cases(),
              c -> c.stepLatest().map(l -> cells.latest(c, l)).orElse(words.text("dash")),
              c -> false));
    }
    out.add(
        row(
            words.text(forStep ? "ladder.at-latest-stand" : "ladder.at-latest", a.line(), called),
            a.cases(),
            c ->
                c.ladder().stream()
                    .filter(r -> r.brake().equals(brake))
                    .findFirst()
                    .map(r -> cells.latest(c, r.latest()))
                    .orElse(words.text("dash")),
            c -> false));
    return out;
  }

  private static Optional<PrintedAnswer> answer(PrintedCase c, PrintedBrake brake) {
    return c.answers().stream().filter(r -> r.brake().equals(brake)).findFirst();
  }

  /** States of the rail for which every cell is the same are one column. */
  private Table merged(Table table) {
    List<Table.Column> columns = new ArrayList<>(table.columns());
    List<List<String>> rows =
        new ArrayList<>(table.rows().stream().map(r -> new ArrayList<>(r.cells())).toList());
    for (int i = columns.size() - 1; i > 1; i--) {
      int at = i;
      if (rows.stream().allMatch(r -> r.get(at).equals(r.get(at - 1)))) {
        columns.set(
            at - 1,
            new Table.Column(
                words.text("ladder.both", columns.get(at - 1).heading(), columns.get(at).heading()),
                "place"));
        columns.remove(at);
        rows.forEach(r -> r.remove(at));
      }
    }
    List<Table.Row> out = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      out.add(new Table.Row(rows.get(i), false, table.rows().get(i).grave()));
    }
    return new Table(
        table.id(), table.name(), table.title(), table.note(), columns, out, table.whenEmpty());
  }

  /**
   * Names the rails on which the figures use the planned run, not the run after an earlier brake;
   * and how fast the train meets the buffer stops if nothing is done.
   */
  private String note(PrintedApplication a) {
    List<String> out = new ArrayList<>();
    String rails =
        a.cases().stream()
            .filter(c -> !c.ownRun())
            .map(PrintedCase::rail)
            .collect(Collectors.joining(", "));
    if (!rails.isEmpty()) {
      out.add(words.text("ladder.planned-run", rails));
    }
    a.atBuffers().ifPresent(v -> out.add(words.text("answer.at-buffers", v.text())));
    return String.join(" ", out);
  }

  /**
   * @param noAnswer brakes of which the row is left out that says what they come to
   * @param noLatest brakes of which the row with the last place is left out
   */
  private List<Table.Row> rows(
      boolean forStep,
      PrintedApplication application,
      LadderCells cells,
      Predicate<PrintedBrake> noAnswer,
      Predicate<PrintedBrake> noLatest) {
    List<Table.Row> rows = new ArrayList<>();
    List<PrintedCase> cases = cells.cases();
    PrintedCase first = application.told();
    rows.add(
        row(
            words.text("ladder.planned", LadderCells.service(first)),
            cases,
            cells::point,
            c -> c.point().flatMap(PrintedPoint::pastLast).isPresent()));
    for (PrintedAnswer answer : first.answers()) {
      if (noAnswer.test(answer.brake())) {
        continue;
      }
      rows.add(
          row(
              words.text(
                  forStep ? "ladder.instead-stand" : "ladder.instead",
                  words.called(answer.brake()),
                  words.seconds(noticingS)),
              cases,
              c -> answer(c, answer.brake()).map(cells::outcome).orElse(words.text("dash")),
              c -> answer(c, answer.brake()).filter(a -> !a.holds()).isPresent()));
    }
    for (int i = 0; i < first.ladder().size(); i++) {
      int index = i;
      PrintedBrake brake = first.ladder().get(i).brake();
      if (noLatest.test(brake)) {
        continue;
      }
      boolean stands = forStep && brake.kind() != PrintedBrake.Kind.SERVICE;
      rows.add(
          row(
              words.text(stands ? "ladder.latest-stand" : "ladder.latest", words.called(brake)),
              cases,
              c -> cells.latest(c, c.ladder().get(index).latest()),
              c -> false));
    }
    if (!first.answers().isEmpty() && !allAsPlanned(cases)) {
      String speed = application.forSpeed().map(PrintedSpeed::text).orElse("");
      rows.add(
          row(
              words.text(
                  forStep ? "ladder.protected-step" : "ladder.protected",
                  FallbackWords.next(first),
                  speed),
              cases,
              c -> cells.protection(protection(c)),
              c -> protection(c).equals(new PrintedProtection.Nowhere())));
    }
    return rows;
  }

  private static boolean allAsPlanned(List<PrintedCase> cases) {
    return cases.stream().allMatch(c -> protection(c).equals(new PrintedProtection.Same()));
  }

  private static PrintedProtection protection(PrintedCase c) {
    return c.protection().orElse(new PrintedProtection.Nowhere());
  }

  private Table.Row row(
      String head,
      List<PrintedCase> cases,
      Function<PrintedCase, String> cell,
      Predicate<PrintedCase> grave) {
    List<String> cells = new ArrayList<>();
    cells.add(head);
    boolean anyGrave = false;
    for (PrintedCase c : cases) {
      boolean bad = grave.test(c);
      anyGrave |= bad;
      cells.add((bad ? "▲ " : "") + cell.apply(c));
    }
    return new Table.Row(cells, false, anyGrave);
  }
}
