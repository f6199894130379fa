package gradepost.drive;

import java.util.List;

/** Power that is on for less than the policy's least time. */
final class ShortPower {

  /** How often power is taken off again too soon. */
  static long count(List<Action> actions, double leastS) {
    long count = 0;
    double onS = Double.NaN;
    for (Action action : actions) {
      if (action.command() instanceof Command.Power && Double.isNaN(onS)) {
        onS = action.timeS();
      } else if (action.command() instanceof Command.ShutOff) {
        count += action.timeS() < onS + leastS - 1e-6 ? 1 : 0;
        onS = Double.NaN;
      }
    }
    return count;
  }

  private ShortPower() {}
}
