package gradepost.briefing.compose;

import gradepost.drive.Action;
import gradepost.drive.Application;
import gradepost.drive.Approach;
import gradepost.drive.Step;
import java.util.ArrayList;
import java.util.List;

/**
 * An application of the brake and the numbered line of its page that begins it.
 *
 * @param number of the line
 * @param named whether the page has more than one, so that each is called by what it is for
 */
record Begun(String number, Action action, Application application, boolean named) {

  /** Those of one approach, in order; a check of the speed begins none. */
  static List<Begun> of(Approach approach) {
    List<Step> steps = Step.of(approach.actions());
    List<Begun> out = new ArrayList<>();
    int next = 0;
    for (Application application : approach.applications()) {
      while (next < steps.size() && !begins(steps.get(next).first(), application)) {
        next++;
      }
      if (next < steps.size()) {
        out.add(
            new Begun(
                Integer.toString(next + 1),
                steps.get(next).first(),
                application,
                approach.applications().size() > 1));
        next++;
      }
    }
    return out;
  }

  private static boolean begins(Action action, Application application) {
    return action.command().brakesForTarget() && action.atM() >= application.brakingPointM() - 1;
  }
}
