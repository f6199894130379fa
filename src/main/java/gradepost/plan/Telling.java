package gradepost.plan;

import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.told.InstructionSet;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedEnd;
import gradepost.told.PrintedFaster;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedPassing;
import gradepost.told.PrintedSpread;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTarget;
import gradepost.told.PrintedTrigger;
import gradepost.told.Seen;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Puts a run, its approaches and their fallbacks as a driver is told them. */
public final class Telling {
  /** A train that takes power below this stands: it needs no cue for the place. */
  private static final double STANDING_MPS = 0.5;

  private final PrintGrid grid;
  private final Sightings sightings;
  private final List<Approach> approaches;
  private final List<Action> actions;
  private final Run run;
  private final TellingBrake brakes;
  private final TellingFindings findings;

  public Telling(
      Assignment assignment, List<Approach> approaches, List<Action> actions, Trace trace) {
    this.grid = new PrintGrid(assignment.path());
    this.sightings = new Sightings(assignment, grid);
    this.approaches = approaches;
    this.actions = actions;
    this.run = new Run(trace);
    double withinS = assignment.policy().practice().line().cueWithin().seconds();
    CueWindow window = new CueWindow(approaches, run, withinS);
    this.brakes =
        new TellingBrake(
            assignment, grid, sightings, new TellingCues(grid, sightings, run, window));
    this.findings = new TellingFindings(grid);
  }

  /** The whole run, sheet by sheet. */
  public InstructionSet all() {
    return new InstructionSet(approaches.stream().map(this::sheet).toList());
  }

  private InstructionSheet sheet(Approach a) {
    double from = a.brakingPointM().or(a::shutOffM).orElse(a.fromM());
    boolean braked = a.brakingPointM().isPresent();
    List<PrintedApplication> applications = applications(a);
    return new InstructionSheet(
        a.number(),
        target(grid, a.target()),
        grid.place(from),
        braked ? Optional.of(grid.speed(a.brakingSpeedMps())) : Optional.empty(),
        steps(a, applications),
        applications,
        a.target().isLowerSpeed() && !braked ? Optional.of(passing(a)) : Optional.empty(),
        a.ifFaster().map(f -> faster(a, f)),
        a.spread().flatMap(this::spread),
        a.findings().stream().map(f -> findings.of(f)).toList());
  }

  /** A target as its sheet prints it. */
  public static PrintedTarget target(PrintGrid grid, Target.OfApproach target) {
    return target.match(stop -> stop(grid, stop), lower -> lower(grid, lower));
  }

  private static PrintedTarget stop(PrintGrid grid, Target.Stop stop) {
    return new PrintedTarget(
        "stop " + stop.name() + " " + stop.call().platform().number(),
        stop.name(),
        stop.markText(),
        grid.place(stop.atM()),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        stop.buffersM().map(b -> grid.room(b - stop.atM())));
  }

  private static PrintedTarget lower(PrintGrid grid, Target.Reduction r) {
    return new PrintedTarget(
        r.kind() + " " + r.reference(),
        r.name(),
        "",
        grid.place(r.atM()),
        Optional.of(grid.speed(r.speedMps())),
        Optional.of(grid.speed(r.fromMps())),
        r.warningM().map(grid::place),
        Optional.empty());
  }

  // Instructions

  private List<PrintedStep> steps(Approach a, List<PrintedApplication> applications) {
    List<PrintedStep> out = new ArrayList<>();
    double last = Double.NaN;
    for (Step step : Step.of(a.actions())) {
      Action first = step.first();
      int line = out.size() + 1;
      Optional<PrintedTime> since =
          Double.isNaN(last) ? Optional.empty() : Optional.of(grid.time(first.timeS() - last));
      Optional<PrintedApplication> begun =
          applications.stream().filter(x -> x.line() == line).findFirst();
      Seen seen = begun.map(x -> x.cues().seen()).orElseGet(() -> seen(first, a.target()));
      PrintedPlace where =
          begun
              .filter(x -> first.trigger().place().isPresent())
              .map(PrintedApplication::point)
              .orElseGet(() -> where(first, a.target()));
      out.add(new PrintedStep(order(step), where, grid.speed(first.speedMps()), since, seen));
      last = first.timeS();
    }
    return out;
  }

  private Seen seen(Action action, Target target) {
    boolean atStop = action.command().isStand() && target.isStop();
    boolean starts = action.command().isPower() && action.speedMps() < STANDING_MPS;
    return atStop ? Seen.NOTHING : starts ? Seen.STANDING : sightings.at(action.atM());
  }

  private PrintedPlace where(Action action, Target target) {
    if (action.trigger().isStart()) {
      return grid.place(Approach.standM(approaches, action.atM()));
    }
    return action.command().isStand()
        ? grid.place(target.atM())
        : grid.placeTo(action.atM(), target.atM());
  }

  private PrintedOrder order(Step step) {
    return order(grid, step);
  }

  /** A step as it is printed. */
  public static PrintedOrder order(PrintGrid grid, Step step) {
    List<PrintedOrder.Further> further =
        step.actions().stream()
            .skip(1)
            .map(
                x ->
                    new PrintedOrder.Further(
                        command(grid, x.command()), trigger(grid, x.trigger())))
            .toList();
    Action first = step.first();
    return new PrintedOrder(
        trigger(grid, first.trigger()), command(grid, first.command()), further);
  }

  static PrintedTrigger trigger(PrintGrid grid, Trigger trigger) {
    return trigger.match(
        place -> new PrintedTrigger.AtPlace(),
        up -> new PrintedTrigger.SpeedUpTo(grid.speed(up.speedMps())),
        down -> new PrintedTrigger.SpeedDownTo(grid.speed(down.speedMps())),
        after -> new PrintedTrigger.After(grid.time(after.seconds())),
        start -> new PrintedTrigger.Start(),
        stand -> new PrintedTrigger.Standstill());
  }

  /** A command as it is printed. */
  public static PrintedCommand command(PrintGrid grid, Command command) {
    return command.match(
        power -> new PrintedCommand.Power(power.notch()),
        off -> new PrintedCommand.ShutOff(),
        brake -> new PrintedCommand.Brake(grid.pressure(brake.pressurePa()), stage(brake.stage())),
        release -> new PrintedCommand.Release(),
        stand -> new PrintedCommand.Stand(),
        hold -> held(grid, hold));
  }

  private static PrintedCommand.Hold held(PrintGrid grid, Command.Hold hold) {
    return new PrintedCommand.Hold(
        hold.by()
            .match(
                notch -> new PrintedCommand.InNotch(notch.notch()),
                brake -> new PrintedCommand.WithBrake(grid.pressure(brake.pressurePa()))),
        grid.speed(hold.lowerMps()),
        grid.speed(hold.upperMps()),
        grid.place(hold.untilM()));
  }

  private static PrintedCommand.Stage stage(Command.Stage stage) {
    return switch (stage) {
      case FIRST -> PrintedCommand.Stage.FIRST;
      case MAIN -> PrintedCommand.Stage.MAIN;
      case EASE -> PrintedCommand.Stage.EASE;
      case CHECK -> PrintedCommand.Stage.CHECK;
      case TEST -> PrintedCommand.Stage.TEST;
    };
  }

  // Brake

  /** A brake as it is named. */
  public static PrintedBrake brake(BrakeSystem brake) {
    return new PrintedBrake(
        brake.role() == BrakeSystem.Role.EMERGENCY ? brake.name() : brake.shortName(),
        PrintedBrake.Kind.valueOf(brake.role().name()));
  }

  private List<PrintedApplication> applications(Approach a) {
    List<PrintedApplication> out = new ArrayList<>();
    List<Step> steps = Step.of(a.actions());
    int next = 0;
    for (Application application : a.applications()) {
      int line = next;
      while (line < steps.size() && !begins(steps.get(line).first(), application)) {
        line++;
      }
      boolean found = line < steps.size();
      next = found ? line + 1 : next;
      out.add(brakes.told(application, a.target(), found ? line + 1 : 0, out.isEmpty()));
    }
    return out;
  }

  private static boolean begins(Action action, Application application) {
    return action.command().brakesForTarget() && action.atM() >= application.brakingPointM() - 1;
  }

  private PrintedFaster faster(Approach a, IfFaster faster) {
    Optional<PrintedApplication> application =
        faster.application().map(x -> brakes.faster(x, a.target()));
    PrintedFaster.Verdict verdict =
        application.isPresent()
            ? PrintedFaster.Verdict.BRAKES
            : faster.nowhere()
                ? PrintedFaster.Verdict.NOWHERE
                : faster.mostMps() > a.target().speedMps()
                    ? PrintedFaster.Verdict.OVER
                    : PrintedFaster.Verdict.NEVER;
    return new PrintedFaster(
        verdict,
        application.isPresent()
            ? Optional.empty()
            : Optional.of(grid.speedAtMost(faster.mostMps())),
        application,
        application.isPresent()
            ? Step.of(faster.actions()).stream().map(this::order).toList()
            : List.of());
  }

  private PrintedPassing passing(Approach a) {
    Optional<Action> last = brakeOn(a, actions);
    PrintedPassing.Brake brake = brakeThere(a, actions);
    Optional<Action> since =
        brake == PrintedPassing.Brake.SINCE_EARLIER ? last.map(this::since) : Optional.empty();
    return new PrintedPassing(
        grid.speedAtMost(run.speedAt(a.target().atM())),
        brake,
        since.map(x -> grid.place(x.atM())),
        since.map(Action::approach));
  }

  /** The last action before a target, where that leaves the brake on. */
  private static Optional<Action> brakeOn(Approach a, List<Action> actions) {
    return actions.stream()
        .filter(x -> x.atM() <= a.target().atM())
        .reduce((x, later) -> later)
        .filter(x -> x.command().isBrake());
  }

  /** What the brake does at a target for which none is applied. */
  public static PrintedPassing.Brake brakeThere(Approach a, List<Action> actions) {
    return brakeOn(a, actions).map(x -> brakeThere(a, x)).orElse(PrintedPassing.Brake.OFF);
  }

  private static PrintedPassing.Brake brakeThere(Approach a, Action on) {
    if (on.approach() != a.number()) {
      return PrintedPassing.Brake.SINCE_EARLIER;
    }
    return on.command().checksSpeed() ? PrintedPassing.Brake.CHECKS : PrintedPassing.Brake.STILL_ON;
  }

  /** The action by which the brake went on that is on after another. */
  private Action since(Action last) {
    int i = actions.indexOf(last);
    while (i > 0 && actions.get(i - 1).command().isBrake()) {
      i--;
    }
    return actions.get(i);
  }

  private Optional<PrintedSpread> spread(Spread spread) {
    Spread.Corrected corrected = spread.corrected();
    return corrected
        .shortM05()
        .map(
            late ->
                new PrintedSpread(
                    outwards(corrected.shortM95().orElseThrow()),
                    outwards(late),
                    grid.shareAtMost(corrected.fullShare())));
  }

  /** Neither end is made to look nearer than it is. */
  private PrintedEnd outwards(double shortM) {
    return shortM >= 0
        ? new PrintedEnd.ShortBy(grid.lengthUp(shortM))
        : new PrintedEnd.PastBy(grid.lengthUp(-shortM));
  }
}
