package gradepost.told;

import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.Optional;

/**
 * How a lower speed is met for which no brake is applied.
 *
 * @param speed of the planned run there, at the worst
 * @param since where the brake that is on went on; empty where the sheet itself tells it
 * @param sheet number of the one that tells it
 */
public record PrintedPassing(
    PrintedSpeed speed, Brake brake, Optional<PrintedPlace> since, Optional<Integer> sheet) {

  /** What the brake does there. */
  public enum Brake {
    /** It is off. */
    OFF,
    /** It checks the speed, and no more. */
    CHECKS,
    /** It is still on for an earlier target, as this sheet tells. */
    STILL_ON,
    /** It is on since an earlier sheet, which tells it. */
    SINCE_EARLIER
  }
}
