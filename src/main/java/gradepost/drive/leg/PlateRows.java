package gradepost.drive.leg;

import gradepost.plan.Action;
import gradepost.plan.Instruction;
import gradepost.plan.Step;
import gradepost.policy.TaughtRules;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;

/** How many instructions a plate has; the stand itself is none. */
final class PlateRows {
  /**
   * Those over what the policy allows, of all plates of a leg together.
   *
   * @param pieces in order of travel; a step up a terminal platform is on the plate of the stop
   */
  static long over(List<ApproachSolution> pieces, TaughtRules taught) {
    long over = 0;
    List<Action> actions = new ArrayList<>();
    for (ApproachSolution piece : pieces) {
      piece.instructions().stream().map(PlateRows::action).forEach(actions::add);
      if (piece.target().ofApproach().isPresent()) {
        over += Math.max(0, Step.rows(actions) - taught.rows(terminal(piece.target())));
        actions.clear();
      }
    }
    return over;
  }

  private static boolean terminal(Target target) {
    return target.stop().filter(Target.Stop::terminal).isPresent();
  }

  private static Action action(Instruction told) {
    return new Action(0, told.trigger(), told.command(), 0, 0, 0);
  }

  private PlateRows() {}
}
