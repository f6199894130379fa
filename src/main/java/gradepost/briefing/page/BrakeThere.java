package gradepost.briefing.page;

import gradepost.plan.Action;
import gradepost.plan.Approach;
import java.util.List;
import java.util.Optional;

/** What the brake does where a lower speed begins for which no application is made. */
enum BrakeThere {
  /** It is off. */
  OFF,
  /** It checks the speed, and no more. */
  CHECKS,
  /** It is still on for an earlier target, as this approach tells. */
  STILL_ON,
  /** It is on since an earlier approach, whose page tells it. */
  SINCE_EARLIER;

  static BrakeThere of(Approach approach, List<Action> actions) {
    return last(approach, actions)
        .map(
            a ->
                a.approach() != approach.number()
                    ? SINCE_EARLIER
                    : a.command().checksSpeed() ? CHECKS : STILL_ON)
        .orElse(OFF);
  }

  /** The last action before it, where that leaves the brake on. */
  static Optional<Action> last(Approach approach, List<Action> actions) {
    return actions.stream()
        .filter(a -> a.atM() <= approach.target().atM())
        .reduce((a, next) -> next)
        .filter(a -> a.command().isBrake());
  }

  /** The action by which that brake went on. */
  static Optional<Action> since(Approach approach, List<Action> actions) {
    return last(approach, actions)
        .map(
            last -> {
              int i = actions.indexOf(last);
              while (i > 0 && actions.get(i - 1).command().isBrake()) {
                i--;
              }
              return actions.get(i);
            });
  }

  /** The key of the text for it. */
  String key(String key) {
    return switch (this) {
      case OFF -> key;
      case CHECKS -> key + "-checked";
      case STILL_ON -> key + "-still-on";
      case SINCE_EARLIER -> key + "-earlier";
    };
  }
}
