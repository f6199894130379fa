package gradepost.drive;

import java.util.List;

/**
 * The whole run as the driver is told to drive it.
 *
 * @param ceiling without gaps from the start to the end of the path
 * @param actions all of them, in order
 * @param runningTimeS standing time at stations left out
 * @param energyJ at the wheel rim, power only
 * @param handleMovements of the power and brake handles together
 * @param fastestTimeS of the fastest run under the same ceiling
 * @param failures what went wrong when the plan was run again from its printed numbers; a plan with
 *     any is not issued
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
    double fastestTimeS,
    List<Finding> failures,
    List<SignalBraking> signals,
    List<BrakeTest> brakeTests,
    TrainFigures figures) {
  public Plan {
    ceiling = List.copyOf(ceiling);
    approaches = List.copyOf(approaches);
    actions = List.copyOf(actions);
    failures = List.copyOf(failures);
    signals = List.copyOf(signals);
    brakeTests = List.copyOf(brakeTests);
  }
}
