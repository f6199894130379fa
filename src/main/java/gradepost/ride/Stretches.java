package gradepost.ride;

import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;

/**
 * The road shared out among the approaches: each metre of it belongs to one. A stop's approach ends
 * at its mark. That of a lower speed ends where the speed does, or where the brake is applied for
 * the next target before that: what happens within a restriction is that restriction's.
 */
final class Stretches {
  /**
   * What an approach answers for.
   *
   * @param toM belongs to the next
   */
  record Stretch(double fromM, double toM) {
    /** Along less than this nothing can be done well or badly. */
    private static final double LEAST_M = 1;

    boolean hasLength() {
      return toM - fromM >= LEAST_M;
    }

    boolean holds(double atM) {
      return atM >= fromM && atM < toM;
    }
  }

  /** By the order of the approaches; the last one ends with the path. */
  static List<Stretch> of(Plan plan) {
    List<Approach> all = plan.approaches();
    List<Stretch> out = new ArrayList<>();
    double from = 0;
    for (int i = 0; i < all.size(); i++) {
      boolean last = i + 1 == all.size();
      double to = last ? plan.assignment().path().lengthM() + 1 : end(plan, i);
      to = Math.max(from, to);
      out.add(new Stretch(from, to));
      from = to;
    }
    return out;
  }

  private static double end(Plan plan, int i) {
    Approach here = plan.approaches().get(i);
    Approach next = plan.approaches().get(i + 1);
    double target = here.target().atM();
    if (here.target().isStop()) {
      return target;
    }
    double speedEnds =
        plan.ceiling().stream()
            .filter(s -> s.fromM() <= target + 1 && s.toM() > target + 1)
            .mapToDouble(CeilingStep::toM)
            .findFirst()
            .orElse(target);
    double begins = next.brakingPointM().orElse(next.target().atM());
    return Math.max(target, Math.min(speedEnds, begins));
  }

  private Stretches() {}
}
