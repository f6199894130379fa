package gradepost.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * One numbered instruction: an action, or what is one movement of the mind: a power handle taken
 * through its notches, a first application with the main one behind it, a running brake test with
 * its release, a brake that is eased again as the speed drops.
 *
 * @param actions never empty; all but the first follow after a time, or as the speed drops
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
              && (easedAgain(open, action)
                  || (action.trigger().after().isPresent()
                      && ((power(action) && power(open.get(0)))
                          || mainAfterFirst(open, action)
                          || releaseAfterTest(open, action))));
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

  /** How many a driver has to keep in mind: all but to stand. */
  public static long rows(List<Action> actions) {
    return of(actions).stream().filter(s -> !s.first().command().isStand()).count();
  }

  private static boolean mainAfterFirst(List<Action> open, Action action) {
    return open.size() == 1
        && is(Command.Stage.FIRST, open.get(0))
        && is(Command.Stage.MAIN, action);
  }

  private static boolean releaseAfterTest(List<Action> open, Action action) {
    return open.size() == 1 && is(Command.Stage.TEST, open.get(0)) && action.command().isRelease();
  }

  private static boolean easedAgain(List<Action> open, Action action) {
    return is(Command.Stage.EASE, open.get(0))
        && is(Command.Stage.EASE, action)
        && action.trigger().isDropping();
  }

  private static boolean is(Command.Stage stage, Action action) {
    return action.command().brake().filter(b -> b.stage() == stage).isPresent();
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
