package gradepost.briefing.compose;

import gradepost.briefing.Table;
import gradepost.drive.Approach;
import gradepost.drive.CaseResult;
import gradepost.drive.FailureAnswer;
import gradepost.drive.Latest;
import gradepost.drive.Rung;
import gradepost.drive.Target;
import gradepost.stock.BrakeSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The fallback ladder, every state of the rail beside the others, and the answer to "nothing". */
final class LadderWriter {
  private final Words words;
  private final Sight sight;
  private final double noticingS;

  LadderWriter(Words words, Sight sight, double noticingS) {
    this.words = words;
    this.sight = sight;
    this.noticingS = noticingS;
  }

  Table table(String id, Approach approach) {
    List<CaseResult> cases = approach.cases();
    List<Table.Column> columns = new ArrayList<>();
    columns.add(new Table.Column(words.text("ladder.brake"), "text"));
    cases.forEach(c -> columns.add(new Table.Column(c.adhesion().name(), "place")));
    List<Table.Row> rows = new ArrayList<>();
    if (!cases.isEmpty()) {
      rows.add(row(words.text("ladder.planned"), cases, c -> planned(approach, c), c -> false));
      List<Rung> rungs = cases.get(0).ladder();
      for (int i = 0; i < rungs.size(); i++) {
        int index = i;
        rows.add(
            row(
                words.text("ladder.latest", called(rungs.get(i).brake())),
                cases,
                c -> latest(approach, c.ladder().get(index).latest()),
                c -> false));
      }
      List<FailureAnswer> answers = cases.get(0).answers();
      for (int i = 0; i < answers.size(); i++) {
        int index = i;
        rows.add(
            row(
                words.text(
                    "ladder.instead", called(answers.get(i).brake()), words.seconds(noticingS)),
                cases,
                c -> outcome(approach.target(), c.answers().get(index)),
                c -> !c.answers().get(index).holds()));
      }
      if (!answers.isEmpty()) {
        rows.add(
            row(
                words.text("ladder.protected"),
                cases,
                c -> protectedPoint(approach, c),
                c -> c.protectedM().isEmpty()));
      }
    }
    return new Table(
        id, "ladder", words.text("ladder.title"), "", columns, rows, words.text("ladder.none"));
  }

  private Table.Row row(
      String head,
      List<CaseResult> cases,
      Function<CaseResult, String> cell,
      Function<CaseResult, Boolean> grave) {
    List<String> cells = new ArrayList<>();
    cells.add(head);
    boolean anyGrave = false;
    for (CaseResult c : cases) {
      boolean bad = grave.apply(c);
      anyGrave |= bad;
      cells.add((bad ? "▲ " : "") + cell.apply(c));
    }
    return new Table.Row(cells, false, anyGrave);
  }

  String called(BrakeSystem brake) {
    return brake.role() == BrakeSystem.Role.EMERGENCY
        ? brake.name()
        : words.text("brake.full-service", brake.shortName());
  }

  private String planned(Approach approach, CaseResult c) {
    if (c.plannedM().isEmpty()) {
      return words.text(
          approach.brakingPointM().isEmpty() && c == approach.cases().get(0)
              ? "ladder.no-brake-needed"
              : "ladder.no-point");
    }
    return words.text(
        "ladder.point", place(approach, c.plannedM().get()), words.pressure(c.mainPressurePa()));
  }

  private String latest(Approach approach, Latest latest) {
    if (latest instanceof Latest.Nowhere nowhere) {
      return "▲ "
          + switch (nowhere.reason()) {
            case GRADIENT_DEFEATS_BRAKE -> words.text("ladder.gradient-defeats");
            case APPROACH_TOO_SHORT -> words.text("ladder.too-short");
          };
    }
    Latest.Point point = (Latest.Point) latest;
    long seconds = (long) Math.floor(point.afterPlannedS());
    return words.text(
        seconds == 0
            ? "ladder.latest-at-once"
            : seconds > 0 ? "ladder.latest-later" : "ladder.latest-earlier",
        place(approach, point.printedM()),
        words.seconds(Math.abs(seconds)));
  }

  private String place(Approach approach, double atM) {
    return words.placeTo(atM, approach.target().atM(), "where.before-short");
  }

  private String outcome(Target target, FailureAnswer answer) {
    if (answer.holds()) {
      return words.text("ladder.short", spare(answer));
    }
    return words.text(
        target instanceof Target.Stop ? "ladder.past" : "ladder.past-board",
        words.overrun(-answer.shortM()),
        atTarget(answer));
  }

  private String spare(FailureAnswer answer) {
    String room = words.room(answer.shortM());
    return room.startsWith("0 ") ? words.text("ladder.nothing") : room;
  }

  private String protectedPoint(Approach approach, CaseResult c) {
    if (c.protectedM().isEmpty()) {
      return words.text("ladder.no-protected");
    }
    if (c.plannedM().isPresent() && Math.abs(c.protectedM().get() - c.plannedM().get()) < 0.5) {
      return words.text("ladder.same");
    }
    long longer = Math.round(Math.ceil(c.protectedCostS()));
    return words.text(
        longer > 0 ? "ladder.protected-point" : "ladder.protected-free",
        place(approach, c.protectedM().get()),
        longer);
  }

  private String atTarget(FailureAnswer answer) {
    return words.units().speed(answer.speedAtTargetMps(), gradepost.units.Rounding.UP);
  }

  /** The state of the rail that the answer is for. */
  String rail(Approach approach) {
    return words.text("answer.rail", approach.cases().get(0).adhesion().name());
  }

  /** The sentence that counts. */
  String first(Approach approach) {
    CaseResult c = approach.cases().get(0);
    Optional<FailureAnswer> holding = c.answers().stream().filter(FailureAnswer::holds).findFirst();
    FailureAnswer use = holding.orElse(c.answers().get(c.answers().size() - 1));
    return sentence(words.text("answer.at-once", called(use.brake())));
  }

  /** What comes of it, and until where; said to be of the first state of the rail only. */
  List<String> rest(Approach approach) {
    CaseResult c = approach.cases().get(0);
    Target target = approach.target();
    List<String> out = new ArrayList<>();
    String kind = target instanceof Target.Stop ? "stop" : "board";
    for (FailureAnswer answer : c.answers()) {
      String next = out.isEmpty() ? "answer." : "answer.next-";
      out.add(
          answer.holds()
              ? words.text(
                  out.isEmpty() ? "answer.holds-" + kind : "answer.next-holds",
                  called(answer.brake()),
                  words.seconds(noticingS),
                  spare(answer),
                  words.speed(target.speedMps()))
              : words.text(
                  next + "fails-" + kind,
                  called(answer.brake()),
                  words.seconds(noticingS),
                  words.overrun(-answer.shortM()),
                  atTarget(answer)));
    }
    c.ladder().stream()
        .filter(r -> r.brake().role() != BrakeSystem.Role.SERVICE)
        .forEach(r -> out.add(until(approach, r)));
    if (c.protectedM().isEmpty()) {
      out.add(words.text("answer.no-protected"));
    } else if (c.plannedM().isPresent() && c.plannedM().get() - c.protectedM().get() >= 0.5) {
      out.add(
          words.text(
              Math.ceil(c.protectedCostS()) > 0 ? "answer.protected" : "answer.protected-free",
              placeBefore(approach, c.protectedM().get()),
              words.seconds(Math.ceil(c.protectedCostS()))));
    }
    if (c.answers().stream().anyMatch(a -> a.brake().role() == BrakeSystem.Role.EMERGENCY)) {
      out.add(words.text("answer.last-recourse"));
    }
    if (!out.isEmpty()) {
      out.set(0, rail(approach) + " " + out.get(0));
    }
    return out.stream().map(LadderWriter::sentence).toList();
  }

  private String placeBefore(Approach approach, double atM) {
    Target target = approach.target();
    return words.placeTo(
        atM,
        target.atM(),
        target instanceof Target.Stop ? "where.before-mark" : "where.before-reduction");
  }

  private static String sentence(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1);
  }

  private String until(Approach approach, Rung rung) {
    if (rung.latest() instanceof Latest.Point point) {
      String see = sight.near(point.printedM());
      String place = placeBefore(approach, point.printedM());
      String where =
          see.equals(words.text("dash")) ? place : words.text("answer.place-see", place, see);
      return words.text("answer.until", called(rung.brake()), where);
    }
    return words.text("answer.nowhere", called(rung.brake()));
  }
}
