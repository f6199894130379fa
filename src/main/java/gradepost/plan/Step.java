package gradepost.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * One numbered instruction: an action, or a power handle taken through its notches in one movement
 * of the mind.
 *
 * @param actions never empty; all but the first follow after a time
 */
public record Step(List<Action> actions) {
  public Step {
    actions = List.copyOf(actions);
  }

  /** The actions as the driver counts them. */
  public static List<Step> of(List<Action> actions) {
    List<Step> out = new ArrayList<>();
    List<Action> open = new ArrayList<>();
    for (Action action : actions) {
      boolean follows =
          !open.isEmpty()
              && power(action)
              && power(open.get(0))
              && action.trigger().after().isPresent();
      if (!follows && !open.isEmpty()) {
        out.add(new Step(open));
        open.clear();
      }
      open.add(action);
    }
    if (!open.isEmpty()) {
      out.add(new Step(open));
    }
    return out;
  }

  private static boolean power(Action action) {
    return action.command().isPower();
  }

  /** The action that begins it. */
  public Action first() {
    return actions.get(0);
  }

  /** The one that ends it. */
  public Action last() {
    return actions.get(actions.size() - 1);
  }
}
