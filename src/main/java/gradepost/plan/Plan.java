package gradepost.plan;

import gradepost.task.Assignment;
import gradepost.task.CeilingStep;
import gradepost.told.InstructionSet;
import java.util.List;
import java.util.stream.Stream;

/**
 * The whole run as the driver is told to drive it.
 *
 * @param ceiling without gaps from the start to the end of the path
 * @param actions all of them, in order
 * @param runningTimeS standing time at stations left out
 * @param energyJ at the wheel rim, power only
 * @param handleMovements of the power and brake handles together
 * @param fastest what the fastest run under the same ceiling costs
 * @param failures what went wrong when the plan was run again from its printed numbers; a plan with
 *     any is not issued
 * @param told the run as the driver is told it, as it is printed
 */
public record Plan(
    Assignment assignment,
    List<CeilingStep> ceiling,
    List<Approach> approaches,
    List<Action> actions,
    Trace trace,
    double runningTimeS,
    double energyJ,
    int handleMovements,
    Cost fastest,
    List<PlanFailure> failures,
    List<SignalBraking> signals,
    List<BrakeTest> brakeTests,
    TrainFigures figures,
    InstructionSet told) {

  /**
   * What a run costs; energy at the wheel rim, movements of the power and brake handles.
   *
   * @param actions of the run; their time begins anew with each leg
   */
  public record Cost(double timeS, double energyJ, int handleMovements, List<Action> actions) {
    public Cost {
      actions = List.copyOf(actions);
    }

    /** Both together, one after the other. */
    public Cost and(Cost other) {
      return new Cost(
          timeS + other.timeS,
          energyJ + other.energyJ,
          handleMovements + other.handleMovements,
          Stream.concat(actions.stream(), other.actions.stream()).toList());
    }
  }

  /**
   * When the train comes to stand at a booked stop, in seconds of the run.
   *
   * @param run that of the trace
   * @param approach the one to that stop
   */
  public double standS(Run run, Approach approach) {
    return actions.stream()
        .filter(a -> a.approach() == approach.number() && a.command().isStand())
        .mapToDouble(Action::timeS)
        .findFirst()
        .orElseGet(() -> run.timeAt(approach.endM()));
  }

  /** The same, told as {@link Telling} tells it. */
  public Plan(
      Assignment assignment,
      List<CeilingStep> ceiling,
      List<Approach> approaches,
      List<Action> actions,
      Trace trace,
      double runningTimeS,
      double energyJ,
      int handleMovements,
      Cost fastest,
      List<PlanFailure> failures,
      List<SignalBraking> signals,
      List<BrakeTest> brakeTests,
      TrainFigures figures) {
    this(
        assignment,
        ceiling,
        approaches,
        actions,
        trace,
        runningTimeS,
        energyJ,
        handleMovements,
        fastest,
        failures,
        signals,
        brakeTests,
        figures,
        new Telling(assignment, approaches, actions, trace).all());
  }

  public Plan {
    ceiling = List.copyOf(ceiling);
    approaches = List.copyOf(approaches);
    actions = List.copyOf(actions);
    failures = List.copyOf(failures);
    signals = List.copyOf(signals);
    brakeTests = List.copyOf(brakeTests);
  }
}
