package gradepost.drive;

import gradepost.drive.brake.Recall;
import gradepost.drive.fallback.SpreadQuestion;
import gradepost.drive.leg.LegAnswer;
import gradepost.drive.leg.LegQuestion;
import gradepost.plan.Spread;

/**
 * What a planner remembers of the runs that it planned. A leg on which nothing is new is driven as
 * it was without a search, and a braking that is as it was is not drawn again; so that a plan after
 * a change costs what the change touches. The plan is the same with it and without. For many
 * threads at once.
 *
 * @param legs in what manner legs are driven
 * @param spreads how brakings end that were drawn
 */
public record PlannedBefore(
    Recall<LegQuestion, LegAnswer> legs, Recall<SpreadQuestion, Spread> spreads) {
  /** So many legs; of a line with many stops some twenty papers. */
  private static final int LEGS = 200;

  /** So many brakings. */
  private static final int SPREADS = 400;

  private static final PlannedBefore IN_THIS_PROCESS = new PlannedBefore();

  /** What all of this process remember together: a paper is looked at, then issued. */
  public static PlannedBefore inThisProcess() {
    return IN_THIS_PROCESS;
  }

  /** Nothing yet. */
  public PlannedBefore() {
    this(LEGS, SPREADS);
  }

  /**
   * Nothing yet.
   *
   * @param legs so many are remembered
   * @param spreads so many of these
   */
  PlannedBefore(int legs, int spreads) {
    this(new Recall<>(legs), new Recall<>(spreads));
  }
}
