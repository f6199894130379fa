package gradepost.drive.check;

import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.Telling;
import gradepost.plan.Trigger;
import gradepost.route.Path;
import gradepost.task.Target;
import gradepost.told.InstructionSet;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintGrid;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedPlace;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTrigger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What the printed instructions mean, in metres, metres per second, pascals and seconds.
 *
 * @param all in order of travel
 * @param numbers of the sheet of each target; a step up a terminal platform is on that of the stop
 */
record ToldInstructions(List<Instruction> all, Map<Target, Integer> numbers) {
  ToldInstructions {
    all = List.copyOf(all);
  }

  /**
   * @param targets of the run, in order of travel
   * @throws IllegalArgumentException for a sheet whose target is none of them
   */
  static ToldInstructions of(Path path, List<Target> targets, InstructionSet told) {
    PrintGrid grid = new PrintGrid(path);
    Map<Target, Integer> numbers = new LinkedHashMap<>();
    List<Instruction> all = new ArrayList<>();
    int next = 0;
    for (InstructionSheet sheet : told.sheets()) {
      int from = next;
      while (next < targets.size() && !isOf(sheet, targets.get(next), grid)) {
        next++;
      }
      if (next == targets.size()) {
        throw new IllegalArgumentException("no target of this run: " + sheet.target());
      }
      List<Target> own = targets.subList(from, ++next);
      own.stream()
          .filter(t -> t.ofApproach().isEmpty() || t.equals(own.get(own.size() - 1)))
          .forEach(t -> numbers.put(t, sheet.number()));
      all.addAll(new OfSheet(sheet, own, grid).instructions());
    }
    return new ToldInstructions(all, numbers);
  }

  private static boolean isOf(InstructionSheet sheet, Target target, PrintGrid grid) {
    return target
        .ofApproach()
        .filter(t -> Telling.target(grid, t).equals(sheet.target()))
        .isPresent();
  }

  int numberOf(Target target) {
    return Objects.requireNonNull(numbers.get(target));
  }

  /** Those of one sheet. */
  private record OfSheet(InstructionSheet sheet, List<Target> targets, PrintGrid grid) {
    List<Instruction> instructions() {
      List<Instruction> out = new ArrayList<>();
      Target target = own();
      for (int i = 0; i < sheet.steps().size(); i++) {
        PrintedStep step = sheet.steps().get(i);
        int line = i + 1;
        target =
            sheet.applications().stream()
                .filter(a -> a.line() == line)
                .findFirst()
                .map(this::target)
                .orElse(target);
        PrintedOrder order = step.order();
        out.add(new Instruction(target, trigger(order.on(), step.where()), command(order.does())));
        for (PrintedOrder.Notch notch : order.further()) {
          out.add(
              new Instruction(
                  target,
                  new Trigger.After(notch.after().seconds()),
                  new Command.Power(notch.index())));
        }
      }
      return out;
    }

    private Target own() {
      return targets.get(targets.size() - 1);
    }

    /** The step up a terminal platform that an application is for, or the sheet's own target. */
    private Target target(PrintedApplication application) {
      return application
          .forSpeed()
          .flatMap(
              speed ->
                  targets.stream()
                      .filter(t -> t.ofApproach().isEmpty())
                      .filter(t -> grid.speed(t.speedMps()).equals(speed))
                      .findFirst())
          .orElseGet(this::own);
    }

    private Trigger trigger(PrintedTrigger on, PrintedPlace where) {
      return on.match(
          new PrintedTrigger.Cases<Trigger>() {
            @Override
            public Trigger atPlace(PrintedTrigger.AtPlace at) {
              return new Trigger.AtPlace(grid.metres(where, own().atM()));
            }

            @Override
            public Trigger speedUpTo(PrintedTrigger.SpeedUpTo up) {
              return new Trigger.SpeedUpTo(up.speed().mps());
            }

            @Override
            public Trigger speedDownTo(PrintedTrigger.SpeedDownTo down) {
              return new Trigger.SpeedDownTo(down.speed().mps());
            }

            @Override
            public Trigger after(PrintedTrigger.After after) {
              return new Trigger.After(after.time().seconds());
            }

            @Override
            public Trigger start(PrintedTrigger.Start start) {
              return new Trigger.Start();
            }

            @Override
            public Trigger standstill(PrintedTrigger.Standstill stand) {
              return new Trigger.Standstill();
            }
          });
    }

    private static Command command(PrintedCommand does) {
      return does.match(
          new PrintedCommand.Cases<Command>() {
            @Override
            public Command power(PrintedCommand.Power power) {
              return new Command.Power(power.notch());
            }

            @Override
            public Command shutOff(PrintedCommand.ShutOff shutOff) {
              return new Command.ShutOff();
            }

            @Override
            public Command brake(PrintedCommand.Brake brake) {
              return new Command.Brake(brake.pressure().pascals(), stage(brake.stage()));
            }

            @Override
            public Command release(PrintedCommand.Release release) {
              return new Command.Release();
            }

            @Override
            public Command stand(PrintedCommand.Stand stand) {
              return new Command.Stand();
            }
          });
    }

    private static Command.Stage stage(PrintedCommand.Stage stage) {
      return switch (stage) {
        case FIRST -> Command.Stage.FIRST;
        case MAIN -> Command.Stage.MAIN;
        case EASE -> Command.Stage.EASE;
        case CHECK -> Command.Stage.CHECK;
      };
    }
  }
}
