package gradepost.briefing.compose;

import gradepost.drive.Action;
import gradepost.drive.Application;
import gradepost.drive.Command;
import gradepost.drive.Step;
import gradepost.drive.Target;
import gradepost.drive.Trigger;
import gradepost.stock.Stock;
import java.util.List;
import java.util.stream.Collectors;

/** What an action tells the driver, in words. */
final class Orders {
  private final Words words;
  private final Stock stock;

  Orders(Words words, Stock stock) {
    this.words = words;
    this.stock = stock;
  }

  String todo(Command command) {
    if (command instanceof Command.Power power) {
      return words.text("do.power", notch(power));
    } else if (command instanceof Command.ShutOff) {
      return words.text("do.shut-off");
    } else if (command instanceof Command.Brake brake) {
      return brake(brake);
    } else if (command instanceof Command.Release) {
      return words.text("do.release");
    }
    return words.text("do.stand");
  }

  private String brake(Command.Brake brake) {
    return switch (brake.stage()) {
      case FIRST -> words.text("do.first");
      case MAIN -> words.text("do.main");
      case EASE -> words.text("do.ease");
      case CHECK -> words.text("do.check");
    };
  }

  String gauge(Command command) {
    if (command instanceof Command.Brake brake) {
      return words.pressure(brake.pressurePa());
    }
    return words.text(command instanceof Command.Release ? "gauge.falling" : "dash");
  }

  /** A step in a few words; where more than one application is made, what this one is for. */
  String todo(Step step, List<Begun> begun) {
    return begun.stream()
        .filter(b -> b.named() && b.action().equals(step.first()))
        .findFirst()
        .map(b -> words.text("do.named", todo(step), purpose(b.application())))
        .orElseGet(() -> todo(step));
  }

  /** What an application is for. */
  String purpose(Application application) {
    double to = application.target().speedMps();
    return to > 0 ? words.text("do.for-speed", words.speed(to)) : words.text("do.for-stand");
  }

  private String todo(Step step) {
    if (step.actions().size() > 1
        && step.first().command() instanceof Command.Power from
        && step.last().command() instanceof Command.Power to) {
      String through = words.text("do.power-through", notch(from), bare(to));
      List<Long> waits =
          step.actions().stream()
              .skip(1)
              .map(a -> Math.round(((Trigger.After) a.trigger()).seconds()))
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
  String whole(Step step, List<Begun> begun) {
    Action action = step.first();
    String todo = todo(step, begun);
    if (action.command() instanceof Command.Brake brake) {
      todo = words.text("do.with-pressure", todo, words.pressure(brake.pressurePa()));
    }
    Trigger trigger = action.trigger();
    if (atPlace(trigger)) {
      return todo;
    }
    return words.text("do.when", todo, when(trigger));
  }

  /** A whole braking in a line: first pressure, and when the brake is worked again. */
  String technique(List<Action> actions) {
    return actions.stream()
        .filter(a -> !(a.command() instanceof Command.Stand))
        .map(this::stage)
        .collect(Collectors.joining(", "));
  }

  private String stage(Action action) {
    String does =
        action.command() instanceof Command.Brake brake
            ? words.pressure(brake.pressurePa())
            : todo(action.command());
    if (action.trigger() instanceof Trigger.After after) {
      return words.text("stage.after", words.seconds(after.seconds()), does);
    }
    return action.trigger() instanceof Trigger.SpeedDownTo down
        ? words.text("stage.at-speed", words.speed(down.speedMps()), does)
        : does;
  }

  /** What was done, and where. */
  String done(Action action) {
    String place = words.place(action.atM());
    return words.text(
        "do.at",
        todo(action.command()),
        atPlace(action.trigger()) ? place : words.text("where.about", place));
  }

  String where(Action action, Target target) {
    boolean stands = action.command() instanceof Command.Stand;
    String place = stands ? words.place(target.atM()) : words.placeTo(action.atM(), target);
    return atPlace(action.trigger()) ? place : words.text("where.about", place);
  }

  /** What the action waits for; empty text where that is its place. */
  String when(Step step) {
    Action action = step.first();
    return atPlace(action.trigger()) ? "" : when(action.trigger());
  }

  private static boolean atPlace(Trigger trigger) {
    return trigger instanceof Trigger.AtPlace
        || trigger instanceof Trigger.Start
        || trigger instanceof Trigger.Standstill;
  }

  private String when(Trigger trigger) {
    if (trigger instanceof Trigger.SpeedUpTo up) {
      return words.text("when.up-to", words.speed(up.speedMps()));
    } else if (trigger instanceof Trigger.SpeedDownTo down) {
      return words.text("when.down-to", words.speed(down.speedMps()));
    } else if (trigger instanceof Trigger.After after) {
      return words.text("when.after", words.seconds(after.seconds()));
    }
    throw new IllegalArgumentException("done at its place: " + trigger);
  }
}
