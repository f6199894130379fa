package gradepost.ride;

import gradepost.plan.Approach;
import gradepost.policy.RideFault;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Briefed against driven.
 *
 * @param points for what was good
 * @param observed points that could be given for what was observed
 * @param possible points for everything that could have been observed
 * @param faults what was found of that for which a ride can fail
 * @param run a recorder's export laid on the road; empty for what was typed, and where nothing ties
 *     it
 * @param leftOut the approaches that are not judged, each with the reason
 * @param overForS how long an excess lasts that counts, seconds
 */
public record RideResult(
    List<OfApproach> approaches,
    int points,
    int observed,
    int possible,
    List<RideFault> faults,
    Outcome outcome,
    Optional<TiedRun> run,
    SortedMap<Integer, String> leftOut,
    double overForS) {

  /** What came of it. */
  public enum Outcome {
    PASSED,
    /** Too few of the points. */
    BELOW_THE_SCORE,
    /** A fault that fails whatever the score. */
    FAILED_BY_FAULT,
    /** Too little was observed. */
    NO_RESULT
  }

  /** What is scored, a point each. */
  public enum Aspect {
    POINT,
    SPEED,
    PRESSURE,
    STOP,
    PERMISSIBLE,
    HANDLES
  }

  /** How one aspect came out; empty where it was not observed. */
  public record Mark(Aspect aspect, Optional<Boolean> good) {}

  /**
   * One approach.
   *
   * @param briefedPressurePa of the first application; empty where no brake is needed
   */
  public record OfApproach(
      Approach approach,
      Optional<Double> briefedPressurePa,
      Ride.Observed observed,
      List<Mark> marks) {
    public OfApproach {
      marks = List.copyOf(marks);
    }

    /** Whether this aspect was observed and found outside the bounds. */
    public boolean outside(Aspect aspect) {
      return marks.stream()
          .anyMatch(m -> m.aspect() == aspect && m.good().filter(g -> !g).isPresent());
    }
  }

  /** Whether an excess is one for which a point is lost. */
  public boolean counts(Excess excess) {
    return excess.countsS() >= overForS;
  }

  public RideResult {
    approaches = List.copyOf(approaches);
    faults = List.copyOf(faults);
    leftOut = Collections.unmodifiableSortedMap(new TreeMap<>(leftOut));
  }
}
