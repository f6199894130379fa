package gradepost.drive.check;

import gradepost.plan.Action;
import gradepost.plan.Plan;
import java.util.ArrayList;
import java.util.List;

/** Drives plans from their sheets alone, and tells where that is not the run that was planned. */
public final class SheetsDriven {
  /** A place that was planned to the metre from one target may be told from another. */
  private static final double SAME_M = 1;

  private static final double NEVER = Double.POSITIVE_INFINITY;

  /** A speed that is waited for comes off by no more than this many times what the place did. */
  private static final double TIMES = 2;

  private final List<String> wrong = new ArrayList<>();

  /** What was found. */
  public List<String> wrong() {
    return wrong;
  }

  /**
   * Looks at one plan.
   *
   * @param where it is, in words
   */
  public void look(String where, Plan plan) {
    PlanVerifier verifier = new PlanVerifier(plan.assignment());
    verifier.failures(plan.told()).forEach(f -> wrong.add(where + ": " + f));
    List<Action> driven = verifier.run(plan.told()).actions();
    List<Action> planned = plan.actions();
    double toldOffM = 0;
    for (int i = 0; i < planned.size(); i++) {
      boolean placed = planned.get(i).trigger().place().isPresent();
      double off = i < driven.size() ? Math.abs(driven.get(i).atM() - planned.get(i).atM()) : NEVER;
      toldOffM = placed ? off : toldOffM;
      if (off > (placed ? SAME_M : Math.max(SAME_M, TIMES * toldOffM))) {
        wrong.add(
            where
                + ": "
                + planned.get(i)
                + " is driven as "
                + (i < driven.size() ? driven.get(i) : "none"));
        return;
      }
    }
  }
}
