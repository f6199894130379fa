package gradepost.briefing.word;

import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Command;
import gradepost.plan.Step;
import gradepost.plan.Trigger;
import gradepost.stock.Stock;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What an action tells the driver, in words. */
public final class ActionWords {
  private final Words words;
  private final Stock stock;

  public ActionWords(Words words, Stock stock) {
    this.words = words;
    this.stock = stock;
  }

  /** The instruction for a command. */
  public String todo(Command command) {
    return command.match(
        power -> words.text("do.power", notch(power)),
        off -> words.text("do.shut-off"),
        this::brake,
        release -> words.text("do.release"),
        stand -> words.text("do.stand"));
  }

  private String brake(Command.Brake brake) {
    return switch (brake.stage()) {
      case FIRST -> words.text("do.first");
      case MAIN -> words.text("do.main");
      case EASE -> words.text("do.ease");
      case CHECK -> words.text("do.check");
    };
  }

  /** What the gauge shows after it; a dash where that does not matter. */
  public String gauge(Command command) {
    return command.match(
        power -> words.text("dash"),
        off -> words.text("dash"),
        brake -> words.pressure(brake.pressurePa()),
        release -> words.text("gauge.falling"),
        stand -> words.text("dash"));
  }

  /** A step in a few words; where more than one application is made, what this one is for. */
  public String todo(Step step, List<ApplicationLine> begun) {
    return begun.stream()
        .filter(b -> b.named() && b.action().equals(step.first()))
        .findFirst()
        .map(b -> words.text("do.named", todo(step), purpose(b.application())))
        .orElseGet(() -> todo(step));
  }

  /** What an application is for. */
  public String purpose(Application application) {
    Target target = application.target();
    return target.standsThere()
        ? words.text("do.for-stand")
        : words.text("do.for-speed", words.speed(target.speedMps()));
  }

  private String todo(Step step) {
    Optional<Command.Power> from = step.first().command().power();
    Optional<Command.Power> to = step.last().command().power();
    if (step.actions().size() > 1 && from.isPresent() && to.isPresent()) {
      String through = words.text("do.power-through", notch(from.get()), bare(to.get()));
      List<Long> waits =
          step.actions().stream()
              .skip(1)
              .map(a -> Math.round(a.trigger().after().orElseThrow().seconds()))
              .distinct()
              .toList();
      return waits.size() == 1
          ? words.text("do.power-each", through, words.seconds(waits.get(0)))
          : words.text("do.power-by-notch", through);
    }
    return todo(step.first().command());
  }

  private String notch(Command.Power power) {
    return words.notch(bare(power));
  }

  private String bare(Command.Power power) {
    return stock.traction().notches().get(power.notch()).name();
  }

  /** What it is done with, for a line of the route story. */
  public String whole(Step step, List<ApplicationLine> begun) {
    Action action = step.first();
    String plain = todo(step, begun);
    String todo =
        action
            .command()
            .brake()
            .map(b -> words.text("do.with-pressure", plain, words.pressure(b.pressurePa())))
            .orElse(plain);
    String when = when(action.trigger());
    return when.isEmpty() ? todo : words.text("do.when", todo, when);
  }

  /** A whole braking in a line: first pressure, and when the brake is worked again. */
  public String technique(List<Action> actions) {
    return actions.stream()
        .filter(a -> !a.command().isStand())
        .map(this::stage)
        .collect(Collectors.joining(", "));
  }

  private String stage(Action action) {
    String does =
        action
            .command()
            .brake()
            .map(b -> words.pressure(b.pressurePa()))
            .orElseGet(() -> todo(action.command()));
    return action
        .trigger()
        .match(
            place -> does,
            up -> does,
            down -> words.text("stage.at-speed", words.speed(down.speedMps()), does),
            after -> words.text("stage.after", words.seconds(after.seconds()), does),
            start -> does,
            stand -> does);
  }

  /** What was done, and where. */
  public String done(Action action) {
    String place = words.place(action.atM());
    return words.text(
        "do.at",
        todo(action.command()),
        action.trigger().atItsPlace() ? place : words.text("where.about", place));
  }

  /** Where an action is taken, as it is told on the way to this target. */
  public String where(Action action, Target target) {
    boolean stands = action.command().isStand();
    String place = stands ? words.place(target.atM()) : words.placeTo(action.atM(), target);
    return action.trigger().atItsPlace() ? place : words.text("where.about", place);
  }

  /** What the action waits for; empty text where that is its place. */
  public String when(Step step) {
    return when(step.first().trigger());
  }

  private String when(Trigger trigger) {
    return trigger.match(
        place -> "",
        up -> words.text("when.up-to", words.speed(up.speedMps())),
        down -> words.text("when.down-to", words.speed(down.speedMps())),
        after -> words.text("when.after", words.seconds(after.seconds())),
        start -> "",
        stand -> "");
  }
}
