package gradepost.told;

import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.List;
import java.util.Optional;

/**
 * One application of the brake.
 *
 * @param line number of the instruction that begins it; 0 where it is none of the sheet's
 * @param forSpeed what it is for; empty to stand
 * @param setBy what set the point, where the sheet tells the instruction that begins it
 * @param speed there, of a train that is faster than planned; the sheet has that of the planned one
 * @param cases one for each state of the rail, the planned one first, as the driver is told
 * @param poorest index of the state of the rail that is told first
 * @param site the low-adhesion site for which it is; empty where there is none
 * @param stepAnswer on the way to a stand: what the brake to use makes of the step itself
 * @param atBuffers speed at the buffer stops if nothing is done, where the answer tells it
 * @param bySpeed where to brake from other speeds, from the highest down; empty where there is only
 *     one row
 */
public record PrintedApplication(
    int line,
    Optional<PrintedSpeed> forSpeed,
    PrintedPlace point,
    PrintedSetBy setBy,
    Optional<PrintedSpeed> speed,
    PrintedCues cues,
    List<PrintedCase> cases,
    int poorest,
    Optional<String> site,
    Optional<StepAnswer> stepAnswer,
    Optional<PrintedSpeed> atBuffers,
    List<PrintedSpeedRow> bySpeed) {

  /**
   * What becomes of a step of the speed.
   *
   * @param atStep speed there at the worst; empty where it is kept
   */
  public record StepAnswer(PrintedBrake brake, Optional<PrintedSpeed> atStep) {}

  public PrintedApplication {
    cases = List.copyOf(cases);
    bySpeed = List.copyOf(bySpeed);
  }

  /** The state of the rail that is told first. */
  public PrintedCase told() {
    return cases.get(poorest);
  }
}
