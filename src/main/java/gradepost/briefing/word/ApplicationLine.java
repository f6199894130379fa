package gradepost.briefing.word;

import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.Step;
import java.util.ArrayList;
import java.util.List;

/**
 * An application of the brake and the numbered line of its page that begins it.
 *
 * @param number of the line
 * @param named whether the page has more than one, so that each is called by what it is for
 */
public record ApplicationLine(
    String number, Action action, Application application, boolean named) {

  /** Those of one approach, in order; a check of the speed begins none. */
  public static List<ApplicationLine> of(Approach approach) {
    List<Step> steps = Step.of(approach.actions());
    List<ApplicationLine> out = new ArrayList<>();
    int next = 0;
    for (Application application : approach.applications()) {
      while (next < steps.size() && !begins(steps.get(next).first(), application)) {
        next++;
      }
      if (next < steps.size()) {
        out.add(
            new ApplicationLine(
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
