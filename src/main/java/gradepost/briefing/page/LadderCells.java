package gradepost.briefing.page;

import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Reasons;
import gradepost.briefing.word.SeenWords;
import gradepost.briefing.word.Words;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedEnd;
import gradepost.told.PrintedLatest;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedPoint;
import gradepost.told.PrintedProtection;
import gradepost.told.PrintedRung;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedLength;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** What one application comes to in each state of the rail, spelt for a cell. */
final class LadderCells {
  private final Words words;
  private final ActionWords orders;
  private final SeenWords seen;
  private final InstructionSheet sheet;
  private final PrintedApplication application;
  private final PrintedTarget target;

  LadderCells(
      Words words, ActionWords orders, InstructionSheet sheet, PrintedApplication application) {
    this.words = words;
    this.orders = orders;
    this.seen = new SeenWords(words);
    this.sheet = sheet;
    this.application = application;
    this.target = sheet.target();
  }

  /**
   * The states of the rail in the order of columns: the one that is told first, then the others.
   */
  List<PrintedCase> cases() {
    List<PrintedCase> out = new ArrayList<>();
    out.add(application.told());
    application.cases().stream().filter(c -> !c.equals(application.told())).forEach(out::add);
    return out;
  }

  /** The name of a state of the rail; where it is a poor site's own, with the site. */
  String head(PrintedCase c) {
    return application
        .site()
        .filter(site -> c.equals(application.told()))
        .map(site -> words.text("ladder.rail-site", c.rail(), site))
        .orElse(c.rail());
  }

  /** Where the brake goes on, and how. */
  String point(PrintedCase c) {
    return c.point().map(p -> point(c, p)).orElse(words.text("ladder.no-point"));
  }

  private String point(PrintedCase c, PrintedPoint point) {
    boolean asPlanned = c.equals(application.cases().get(0)) || taughtAlike(point);
    String technique = orders.technique(main(point, asPlanned));
    String place = words.place(point.place(), target);
    String does = asPlanned ? words.text("ladder.main", technique) : technique;
    return point
        .pastLast()
        .map(past -> words.text("ladder.point-past", place, does, past.text(), service(c)))
        .orElse(words.text("ladder.point", place, does));
  }

  /** Of a technique that the instructions tell, only the main application. */
  private List<PrintedOrder> main(PrintedPoint point, boolean asPlanned) {
    return asPlanned
        ? application.cases().get(0).point().map(PrintedPoint::technique).orElse(List.of())
        : point.technique();
  }

  /** Whether this point is printed with the place of the planned rail. */
  boolean samePlace(PrintedPoint point) {
    return words.place(point.place(), target).equals(words.place(application.point(), target));
  }

  /** Whether the technique of this point is that of the instructions. */
  boolean taughtAlike(PrintedPoint point) {
    if (application.line() == 0) {
      return false;
    }
    List<PrintedOrder> told =
        sheet.steps().stream()
            .skip(application.line() - 1)
            .map(PrintedStep::order)
            .filter(o -> !o.does().equals(new PrintedCommand.Stand()))
            .toList();
    // That the brake comes off behind the board is told of the planned run only.
    boolean releases =
        !target.isStop()
            && !told.isEmpty()
            && told.get(told.size() - 1).does().equals(new PrintedCommand.Release());
    String own = orders.technique(point.technique());
    return orders.technique(told).equals(own)
        || (releases && orders.technique(told.subList(0, told.size() - 1)).equals(own));
  }

  /** What the brake of the plan is called. */
  static String service(PrintedCase c) {
    return c.ladder().stream()
        .map(PrintedRung::brake)
        .filter(b -> b.kind() == PrintedBrake.Kind.SERVICE)
        .map(PrintedBrake::called)
        .findFirst()
        .orElse("");
  }

  /** The last place for a brake; on the rail that is told first with what is seen there. */
  String latest(PrintedCase c, PrintedLatest latest) {
    return latest.match(
        at -> last(c, at),
        nowhere -> "▲ " + words.text("ladder.nowhere", words.text(Reasons.key(nowhere.why()))));
  }

  private String last(PrintedCase c, PrintedLatest.At at) {
    long seconds = at.secondsAfter();
    boolean there = c.point().filter(p -> p.place().equals(at.place())).isPresent();
    String now = there ? "ladder.latest-at-once" : "ladder.latest-near";
    String then = seconds > 0 ? "ladder.latest-later" : "ladder.latest-earlier";
    String when =
        words.text(
            seconds == 0 ? now : then,
            words.place(at.place(), target),
            words.seconds((double) Math.abs(seconds)));
    return Stream.of(c)
        .filter(application.told()::equals)
        .flatMap(same -> seen.both(at.seen()).stream())
        .map(cue -> words.text("answer.place-see", when, cue))
        .findFirst()
        .orElse(when);
  }

  /** What a brake that is put on late comes to. */
  String outcome(PrintedAnswer answer) {
    if (answer.atTarget().isEmpty()) {
      PrintedLength spare = FallbackWords.by(answer.end());
      String key = spare.number() == 0 ? "ladder.just" : "ladder.short";
      return words.text(target.isStop() ? key : key + "-board", spare.text());
    }
    String speed = answer.atTarget().get().text();
    return answer
        .end()
        .match(
            before -> past(before, speed),
            past -> past(past, speed),
            nowhere ->
                words.text(
                    target.isStop() ? "ladder.not-held" : "ladder.not-held-board",
                    words.text(Reasons.key(nowhere.why())),
                    speed));
  }

  private String past(PrintedEnd end, String speed) {
    return words.text(
        target.isStop() ? "ladder.past" : "ladder.past-board", FallbackWords.by(end).text(), speed);
  }

  /** The point that still leaves the next brake. */
  String protection(PrintedProtection protection) {
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
