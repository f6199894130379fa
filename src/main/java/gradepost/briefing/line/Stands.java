package gradepost.briefing.line;

import gradepost.plan.Plan;
import gradepost.plan.Run;
import java.util.List;
import java.util.Optional;

/** Where a train stands on its way, and when. */
public record Stands(List<Stand> all) {
  /**
   * A stand at a booked stop.
   *
   * @param endM where the front comes to
   * @param timeS when
   */
  record Stand(double endM, double markM, double timeS) {
    /** Whether the place lies between the front of the train and its mark. */
    boolean holds(double atM) {
      return atM > endM && atM <= markM;
    }
  }

  public Stands {
    all = List.copyOf(all);
  }

  /** The stops of a plan and when they are reached. */
  public static Stands of(Plan plan, Run run) {
    return new Stands(
        plan.approaches().stream()
            .filter(a -> a.target().isStop())
            .map(a -> new Stand(a.endM(), a.target().atM(), plan.standS(run, a)))
            .toList());
  }

  /** Whether a train stands there, or would at the mark. */
  boolean hold(double atM) {
    return all.stream().anyMatch(s -> s.holds(atM));
  }

  /** The last one. */
  Optional<Stand> last() {
    return all.stream().reduce((a, next) -> next);
  }
}
