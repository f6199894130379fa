package gradepost.drive.check;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.BrakingRun;
import gradepost.drive.brake.LastPlace;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrainBrake;
import gradepost.plan.Action;
import gradepost.plan.Run;
import gradepost.plan.SignalBraking;
import gradepost.plan.Trace;
import gradepost.plan.Trigger;
import gradepost.route.Path;
import gradepost.route.Signal;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Braking from each caution to its signal at danger. */
public final class Signals {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final Path path;
  private final Trace trace;

  public Signals(Assignment assignment, TrainModels bench, Ceiling ceiling, Trace trace) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.path = assignment.path();
    this.trace = trace;
  }

  /** One for each signal on the run that can show danger to this train, in the order of travel. */
  public List<SignalBraking> all() {
    List<Signal> own =
        assignment.route().signals().stream()
            .filter(s -> s.direction() == assignment.direction())
            .filter(s -> assignment.lines().contains(s.line()))
            .sorted(Comparator.comparingDouble(s -> path.metresAt(s.location())))
            .toList();
    List<SignalBraking> all = new ArrayList<>();
    double start = trace.points().isEmpty() ? 0 : trace.points().get(0).atM();
    double end = trace.points().isEmpty() ? 0 : trace.points().get(trace.points().size() - 1).atM();
    for (int i = 0; i < own.size(); i++) {
      Signal signal = own.get(i);
      double at = path.metresAt(signal.location());
      boolean stops = signal.kind().stops();
      if (stops && at > start && at < end) {
        all.add(braking(signal, at, cautionFor(own, i)));
      }
    }
    return all;
  }

  private static Optional<Signal> cautionFor(List<Signal> own, int index) {
    for (int i = index - 1; i >= 0; i--) {
      Signal.Kind kind = own.get(i).kind();
      if (kind == Signal.Kind.DISTANT || kind == Signal.Kind.STOP_AND_CAUTION) {
        return Optional.of(own.get(i));
      }
      if (kind == Signal.Kind.STOP) {
        // A stop signal on the way: what warns of it does not warn of the one behind it.
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  private SignalBraking braking(Signal signal, double at, Optional<Signal> caution) {
    double stand = at - assignment.policy().margins().beforeSignal().metres();
    double warned = caution.map(c -> path.metresAt(c.aws().orElse(c.location()))).orElse(at);
    double planned = new Run(trace).speedAt(warned);
    double permitted = ceiling.speedAt(warned);
    List<SignalBraking.Need> needs = new ArrayList<>();
    if (caution.isPresent()) {
      for (BrakeSystem system : assignment.stock().brakes()) {
        if (system.role() != BrakeSystem.Role.EMERGENCY) {
          needs.add(new SignalBraking.Need(system, fullM(system, warned, permitted)));
        }
      }
    }
    OptionalDouble last =
        caution.isPresent() ? technique(signal, warned, stand, planned) : OptionalDouble.empty();
    Optional<Double> begins =
        last.isPresent()
            ? Optional.of(path.printedAtOrBefore(last.getAsDouble()))
            : Optional.empty();
    List<Action> technique =
        begins.isPresent()
            ? actions(new Target.Signal(signal.id(), stand), warned, planned, begins.get())
            : List.of();
    return new SignalBraking(
        signal, at, stand, caution, warned, planned, permitted, begins, technique, needs);
  }

  private double fullM(BrakeSystem system, double fromM, double speedMps) {
    Stepper worst = bench.worstStepper(assignment.policy().plannedAdhesion());
    TrainBrake rig = bench.worstRig(system);
    double over = assignment.policy().safeSide().overspeed().metresPerSecond();
    worst.place(0, fromM, speedMps + over);
    worst.brake(rig, rig.fullPa());
    StopReason ended = worst.advance(new StopConditions().hopeless(fromM));
    return ended == StopReason.STANDSTILL ? worst.atM() - fromM : Double.POSITIVE_INFINITY;
  }

  /** Where the technique begins when the train coasts on at its planned speed after the warning. */
  private OptionalDouble technique(Signal signal, double warnedM, double standM, double mps) {
    if (mps < 0.5 || standM <= warnedM) {
      return OptionalDouble.empty();
    }
    PlannerSettings settings = bench.settings();
    Stepper stepper = bench.plannedStepper();
    Target target = new Target.Signal(signal.id(), standM);
    Braking braking = Braking.of(assignment, bench, target);
    return new LastPlace(settings.brake(), warnedM, standM, settings.fallback().signalToleranceM())
        .of(x -> shortM(stepper, braking, warnedM, mps, x, standM));
  }

  /** What the driver does from a place on, if the train still rolls there. */
  private List<Action> actions(Target target, double warnedM, double mps, double fromM) {
    List<Action> actions = new ArrayList<>();
    Stepper stepper = bench.plannedStepper();
    stepper.place(0, warnedM, mps);
    Trigger there = new Trigger.AtPlace(fromM);
    if (fromM > warnedM && stepper.advance(new StopConditions().place(fromM)) != StopReason.PLACE) {
      return actions;
    }
    new BrakingRun(
            Braking.of(assignment, bench, target),
            stepper,
            there,
            (by, command) ->
                actions.add(
                    new Action(0, by, command, stepper.atM(), stepper.speedMps(), stepper.timeS())))
        .run();
    return actions;
  }

  private static double shortM(
      Stepper stepper, Braking braking, double warnedM, double mps, double fromM, double standM) {
    stepper.place(0, warnedM, mps);
    if (stepper.advance(new StopConditions().place(fromM)) == StopReason.STANDSTILL) {
      return standM - stepper.atM();
    }
    Braking.Outcome outcome = braking.run(stepper);
    return outcome.shortOf(standM);
  }
}
