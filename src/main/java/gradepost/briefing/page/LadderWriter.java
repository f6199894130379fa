package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Reasons;
import gradepost.briefing.word.Words;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedEnd;
import gradepost.told.PrintedFaster;
import gradepost.told.PrintedLatest;
import gradepost.told.PrintedPoint;
import gradepost.told.PrintedProtection;
import gradepost.told.PrintedRung;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedSpeed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The fallback ladder, every state of the rail beside the others, spelt. */
final class LadderWriter {
  private final Words words;
  private final ActionWords orders;
  private final FallbackWords fallbacks;
  private final double noticingS;

  LadderWriter(Words words, ActionWords orders, double noticingS) {
    this.words = words;
    this.orders = orders;
    this.fallbacks = new FallbackWords(words);
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
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column(words.text("ladder.brake"), "text"));
    a.cases().forEach(c -> columns.add(new Table.Column(c.rail(), "place")));
    return new Table(id, "ladder", title, note(a.cases()), columns, rows(sheet, a), "");
  }

  /**
   * Names the rails on which the figures use the planned run, not the run after an earlier brake.
   */
  private String note(List<PrintedCase> cases) {
    String rails =
        cases.stream()
            .filter(c -> !c.ownRun())
            .map(PrintedCase::rail)
            .collect(Collectors.joining(", "));
    return rails.isEmpty() ? "" : words.text("ladder.planned-run", rails);
  }

  private List<Table.Row> rows(InstructionSheet sheet, PrintedApplication application) {
    List<Table.Row> rows = new ArrayList<>();
    PrintedTarget target = sheet.target();
    boolean forStep = sheet.forStep(application);
    List<PrintedCase> cases = application.cases();
    PrintedCase first = cases.get(0);
    rows.add(
        row(
            words.text("ladder.planned"),
            cases,
            c -> planned(target, c, c.equals(first)),
            c -> c.point().flatMap(PrintedPoint::pastLast).isPresent()));
    for (int i = 0; i < first.ladder().size(); i++) {
      int index = i;
      PrintedBrake brake = first.ladder().get(i).brake();
      boolean stands = forStep && brake.kind() != PrintedBrake.Kind.SERVICE;
      rows.add(
          row(
              words.text(stands ? "ladder.latest-stand" : "ladder.latest", words.called(brake)),
              cases,
              c -> latest(target, c.ladder().get(index).latest()),
              c -> false));
    }
    for (int i = 0; i < first.answers().size(); i++) {
      int index = i;
      rows.add(
          row(
              words.text(
                  forStep ? "ladder.instead-stand" : "ladder.instead",
                  words.called(first.answers().get(i).brake()),
                  words.seconds(noticingS)),
              cases,
              c -> answer(c, index).map(a -> outcome(target, a)).orElse(words.text("dash")),
              c -> answer(c, index).filter(a -> !a.holds()).isPresent()));
    }
    if (!first.answers().isEmpty()) {
      String speed = application.forSpeed().map(PrintedSpeed::text).orElse("");
      rows.add(
          row(
              words.text(forStep ? "ladder.protected-step" : "ladder.protected", speed),
              cases,
              c -> protection(target, protection(c)),
              c -> protection(c).equals(new PrintedProtection.Nowhere())));
    }
    return rows;
  }

  private static Optional<PrintedAnswer> answer(PrintedCase c, int index) {
    return c.answers().stream().skip(index).findFirst();
  }

  private static PrintedProtection protection(PrintedCase c) {
    return c.protection().orElse(new PrintedProtection.Nowhere());
  }

  /**
   * @param planned whether it is the plan's own, which stands on the page; else the whole technique
   *     is told
   */
  private String planned(PrintedTarget target, PrintedCase c, boolean planned) {
    return c.point().map(p -> point(target, c, p, planned)).orElse(words.text("ladder.no-point"));
  }

  private String point(PrintedTarget target, PrintedCase c, PrintedPoint point, boolean planned) {
    String technique = orders.technique(point.technique());
    String place = words.place(point.place(), target);
    String does = planned ? words.text("ladder.main", technique) : technique;
    return point
        .pastLast()
        .map(past -> words.text("ladder.point-past", place, does, past.text(), service(c)))
        .orElse(words.text("ladder.point", place, does));
  }

  private static String service(PrintedCase c) {
    return c.ladder().stream()
        .map(PrintedRung::brake)
        .filter(b -> b.kind() == PrintedBrake.Kind.SERVICE)
        .map(PrintedBrake::called)
        .findFirst()
        .orElse("");
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

  private String latest(PrintedTarget target, PrintedLatest latest) {
    return latest.match(
        at -> last(target, at),
        nowhere -> "▲ " + words.text("ladder.nowhere", words.text(Reasons.key(nowhere.why()))));
  }

  private String last(PrintedTarget target, PrintedLatest.At at) {
    long seconds = at.secondsAfter();
    return words.text(
        seconds == 0
            ? "ladder.latest-at-once"
            : seconds > 0 ? "ladder.latest-later" : "ladder.latest-earlier",
        words.place(at.place(), target),
        words.seconds((double) Math.abs(seconds)));
  }

  private String outcome(PrintedTarget target, PrintedAnswer answer) {
    if (answer.atTarget().isEmpty()) {
      return words.text("ladder.short", fallbacks.spare(FallbackWords.by(answer.end())));
    }
    String speed = answer.atTarget().get().text();
    return answer
        .end()
        .match(
            before -> past(target, before, speed),
            past -> past(target, past, speed),
            nowhere ->
                words.text(
                    target.isStop() ? "ladder.not-held" : "ladder.not-held-board",
                    words.text(Reasons.key(nowhere.why())),
                    speed));
  }

  private String past(PrintedTarget target, PrintedEnd end, String speed) {
    return words.text(
        target.isStop() ? "ladder.past" : "ladder.past-board", FallbackWords.by(end).text(), speed);
  }

  private String protection(PrintedTarget target, PrintedProtection protection) {
    return protection.match(
        nowhere -> words.text("ladder.no-protected"),
        same -> words.text("ladder.same"),
        at -> protectedAt(words.place(at.place(), target), at));
  }

  private String protectedAt(String place, PrintedProtection.At at) {
    return at.costs()
        .map(
            longer ->
                words.text(
                    longer.seconds() > 0 ? "ladder.protected-point" : "ladder.protected-free",
                    place,
                    longer.seconds()))
        .orElse(words.text("ladder.protected-untimed", place));
  }
}
