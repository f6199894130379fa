package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.ApplicationLine;
import gradepost.briefing.word.Reasons;
import gradepost.briefing.word.Words;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.FailureAnswer;
import gradepost.plan.Latest;
import gradepost.plan.Rung;
import gradepost.stock.BrakeSystem;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The fallback ladder, every state of the rail beside the others. */
final class LadderWriter {
  /** Nearer than this to the planned point, a protected one is the same. */
  static final double SAME_M = 0.5;

  private final Words words;
  private final ActionWords orders;
  private final double noticingS;

  LadderWriter(Words words, ActionWords orders, double noticingS) {
    this.words = words;
    this.orders = orders;
    this.noticingS = noticingS;
  }

  /** One for each application; where the train needs no brake, one for a faster train. */
  List<Table> tables(String id, Approach approach) {
    List<Table> out = new ArrayList<>();
    for (ApplicationLine begun : ApplicationLine.of(approach)) {
      String title =
          begun.named()
              ? words.text("ladder.title-at", begun.number(), orders.purpose(begun.application()))
              : words.text("ladder.title");
      String own = out.isEmpty() ? id : id + "-" + begun.number();
      out.add(table(own, title, begun.application().cases(), rows(approach, begun.application())));
    }
    if (out.isEmpty()) {
      approach
          .faster()
          .ifPresent(
              a ->
                  out.add(
                      table(
                          id,
                          words.text("faster.ladder", words.speed(a.brakingSpeedMps())),
                          a.cases(),
                          rows(approach, a))));
    }
    return out;
  }

  private Table table(String id, String title, List<CaseResult> cases, List<Table.Row> rows) {
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column(words.text("ladder.brake"), "text"));
    cases.forEach(c -> columns.add(new Table.Column(c.adhesion().name(), "place")));
    return new Table(id, "ladder", title, note(cases), columns, rows, "");
  }

  /**
   * Names the rails on which the figures use the planned run, not the run after an earlier brake.
   */
  private String note(List<CaseResult> cases) {
    String rails =
        cases.stream()
            .filter(c -> !c.ownRun())
            .map(c -> c.adhesion().name())
            .collect(Collectors.joining(", "));
    return rails.isEmpty() ? "" : words.text("ladder.planned-run", rails);
  }

  private List<Table.Row> rows(Approach approach, Application application) {
    List<Table.Row> rows = new ArrayList<>();
    List<CaseResult> cases = application.told();
    rows.add(
        row(
            words.text("ladder.planned"),
            cases,
            c -> planned(approach, c, c.equals(cases.get(0))),
            c -> c.pastLastM().isPresent()));
    List<Rung> rungs = cases.get(0).ladder();
    for (int i = 0; i < rungs.size(); i++) {
      int index = i;
      BrakeSystem brake = rungs.get(i).brake();
      boolean stands = application.forStep() && brake.role() != BrakeSystem.Role.SERVICE;
      rows.add(
          row(
              words.text(stands ? "ladder.latest-stand" : "ladder.latest", words.called(brake)),
              cases,
              c -> latest(approach, c.ladder().get(index).latest()),
              c -> false));
    }
    List<FailureAnswer> answers = cases.get(0).answers();
    Target target = application.forStep() ? approach.target() : application.target();
    for (int i = 0; i < answers.size(); i++) {
      int index = i;
      rows.add(
          row(
              words.text(
                  application.forStep() ? "ladder.instead-stand" : "ladder.instead",
                  words.called(answers.get(i).brake()),
                  words.seconds(noticingS)),
              cases,
              c -> outcome(target, c, index),
              c -> c.answers().size() > index && !c.answers().get(index).holds()));
    }
    if (!answers.isEmpty()) {
      rows.add(
          row(
              words.text(
                  application.forStep() ? "ladder.protected-step" : "ladder.protected",
                  words.speed(application.target().speedMps())),
              cases,
              c -> protectedPoint(approach, c),
              c -> c.protectedM().isEmpty()));
    }
    return rows;
  }

  /**
   * @param planned whether it is the plan's own, which stands on the page; else the whole technique
   *     is told
   */
  private String planned(Approach approach, CaseResult c, boolean planned) {
    return c.plannedM()
        .map(
            at ->
                words.text(
                    c.pastLastM().isPresent() ? "ladder.point-past" : "ladder.point",
                    place(approach, at),
                    planned
                        ? words.text("ladder.main", words.pressure(c.mainPressurePa()))
                        : orders.technique(c.actions()),
                    words.overrun(c.pastLastM().orElse(0.0)),
                    service(c)))
        .orElse(words.text("ladder.no-point"));
  }

  private static String service(CaseResult c) {
    return c.ladder().stream()
        .map(Rung::brake)
        .filter(b -> b.role() == BrakeSystem.Role.SERVICE)
        .map(BrakeSystem::shortName)
        .findFirst()
        .orElse("");
  }

  private Table.Row row(
      String head,
      List<CaseResult> cases,
      Function<CaseResult, String> cell,
      Predicate<CaseResult> grave) {
    List<String> cells = new ArrayList<>();
    cells.add(head);
    boolean anyGrave = false;
    for (CaseResult c : cases) {
      boolean bad = grave.test(c);
      anyGrave |= bad;
      cells.add((bad ? "▲ " : "") + cell.apply(c));
    }
    return new Table.Row(cells, false, anyGrave);
  }

  private String latest(Approach approach, Latest latest) {
    return latest.match(
        point -> last(approach, point),
        nowhere -> "▲ " + words.text("ladder.nowhere", words.text(Reasons.key(nowhere.reason()))));
  }

  private String last(Approach approach, Latest.Point point) {
    long seconds = (long) Math.floor(point.afterPlannedS());
    return words.text(
        seconds == 0
            ? "ladder.latest-at-once"
            : seconds > 0 ? "ladder.latest-later" : "ladder.latest-earlier",
        place(approach, point.printedM()),
        words.seconds((double) Math.abs(seconds)));
  }

  private String place(Approach approach, double atM) {
    return words.placeTo(atM, approach.target());
  }

  private String outcome(Target target, CaseResult c, int index) {
    Optional<FailureAnswer> found = c.answers().stream().skip(index).findFirst();
    if (found.isEmpty()) {
      return words.text("dash");
    }
    FailureAnswer answer = found.get();
    return answer
        .met()
        .match(
            at -> ends(target, answer, at.shortM()),
            nowhere ->
                words.text(
                    target.isStop() ? "ladder.not-held" : "ladder.not-held-board",
                    words.text(Reasons.key(nowhere.reason())),
                    words.speedAtMost(answer.speedAtTargetMps())));
  }

  private String ends(Target target, FailureAnswer answer, double shortM) {
    if (answer.holds()) {
      return words.text("ladder.short", spare(words, shortM));
    }
    return words.text(
        target.isStop() ? "ladder.past" : "ladder.past-board",
        words.overrun(-shortM),
        words.speedAtMost(answer.speedAtTargetMps()));
  }

  static String spare(Words words, double shortM) {
    String room = words.room(shortM);
    return room.startsWith("0 ") ? words.text("ladder.nothing") : room;
  }

  private String protectedPoint(Approach approach, CaseResult c) {
    if (c.protectedM().isEmpty()) {
      return words.text("ladder.no-protected");
    }
    if (c.plannedM().isPresent() && Math.abs(c.protectedM().get() - c.plannedM().get()) < SAME_M) {
      return words.text("ladder.same");
    }
    String place = place(approach, c.protectedM().get());
    if (c.protectedCostS().isEmpty()) {
      return words.text("ladder.protected-untimed", place);
    }
    long longer = Math.round(Math.ceil(c.protectedCostS().get()));
    return words.text(
        longer > 0 ? "ladder.protected-point" : "ladder.protected-free", place, longer);
  }
}
