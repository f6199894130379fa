package gradepost.drive.check;

import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.Telling;
import gradepost.plan.Trigger;
import gradepost.stock.BrakeControl;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.told.InstructionSet;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTrigger;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedPlace;
import gradepost.units.Pressure;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What the printed instructions mean, in metres, metres per second, pascals and seconds.
 *
 * @param all in order of travel
 * @param numbers of the sheet of each target; a step up a terminal platform is on that of the stop
 * @param brakings one for each sheet; empty where its target needs none
 */
public record ToldInstructions(
    List<Instruction> all, Map<Target, Integer> numbers, List<Optional<Braking>> brakings) {
  public ToldInstructions {
    all = List.copyOf(all);
    brakings = List.copyOf(brakings);
  }

  /**
   * The braking for the target of a sheet itself.
   *
   * @param index among all instructions, of the one that begins it
   * @param told from that one to the end of the sheet
   */
  public record Braking(Target target, int index, List<Instruction> told) {
    public Braking {
      told = List.copyOf(told);
    }
  }

  /**
   * Those of a run.
   *
   * @param targets of the run, in order of travel
   * @throws IllegalArgumentException for a sheet whose target is none of them
   */
  public static ToldInstructions of(
      Assignment assignment, List<Target> targets, InstructionSet told) {
    PrintGrid grid = new PrintGrid(assignment.path());
    Map<Target, Integer> numbers = new LinkedHashMap<>();
    List<Instruction> all = new ArrayList<>();
    List<Optional<Braking>> brakings = new ArrayList<>();
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
      List<Instruction> instructions = new ArrayList<>();
      brakings.add(
          new OfSheet(sheet, own, grid, assignment.stock().service().control())
              .into(instructions, all.size()));
      all.addAll(instructions);
    }
    return new ToldInstructions(all, numbers, brakings);
  }

  private static boolean isOf(InstructionSheet sheet, Target target, PrintGrid grid) {
    return target
        .ofApproach()
        .filter(t -> Telling.target(grid, t).equals(sheet.target()))
        .isPresent();
  }

  /** The number of the sheet of a target. */
  public int numberOf(Target target) {
    return Objects.requireNonNull(numbers.get(target));
  }

  /** Those of one sheet. */
  private record OfSheet(
      InstructionSheet sheet, List<Target> targets, PrintGrid grid, BrakeControl control) {
    /**
     * Adds them, and gives the braking for the sheet's own target.
     *
     * @param before how many instructions there are before this sheet
     */
    Optional<Braking> into(List<Instruction> out, int before) {
      int begins = -1;
      Target target = own();
      for (int i = 0; i < sheet.steps().size(); i++) {
        PrintedStep step = sheet.steps().get(i);
        int line = i + 1;
        Optional<Target> begun =
            sheet.applications().stream()
                .filter(a -> a.line() == line)
                .findFirst()
                .map(this::target);
        if (begun.filter(own()::equals).isPresent()) {
          begins = out.size();
        }
        target = begun.orElse(target);
        PrintedOrder order = step.order();
        out.add(new Instruction(target, trigger(order.on(), step.where()), command(order.does())));
        for (PrintedOrder.Further further : order.further()) {
          out.add(
              new Instruction(
                  target, trigger(further.on(), step.where()), command(further.does())));
        }
      }
      return begins < 0
          ? Optional.empty()
          : Optional.of(new Braking(own(), before + begins, out.subList(begins, out.size())));
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

    private Command command(PrintedCommand does) {
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
              return new Command.Brake(asked(brake.pressure().pascals()), stage(brake.stage()));
            }

            @Override
            public Command release(PrintedCommand.Release release) {
              return new Command.Release();
            }

            @Override
            public Command stand(PrintedCommand.Stand stand) {
              return new Command.Stand();
            }

            @Override
            public Command hold(PrintedCommand.Hold hold) {
              return new Command.Hold(
                  hold.by()
                      .match(
                          notch -> new Command.InNotch(notch.notch()),
                          brake -> new Command.WithBrake(asked(brake.pressure().pascals()))),
                  hold.lower().mps(),
                  hold.upper().mps(),
                  grid.metres(hold.until(), own().atM()));
            }
          });
    }

    /** A brake with steps is set to the step whose pressure is printed. */
    private double asked(double pascals) {
      return control.match(
          any -> pascals,
          steps ->
              steps.pressures().stream()
                  .map(Pressure::pascals)
                  .min(Comparator.comparingDouble(p -> Math.abs(p - pascals)))
                  .orElse(pascals));
    }

    private static Command.Stage stage(PrintedCommand.Stage stage) {
      return switch (stage) {
        case FIRST -> Command.Stage.FIRST;
        case MAIN -> Command.Stage.MAIN;
        case EASE -> Command.Stage.EASE;
        case CHECK -> Command.Stage.CHECK;
        case TEST -> Command.Stage.TEST;
      };
    }
  }
}
