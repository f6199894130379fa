package gradepost.app.export;

import gradepost.policy.RideFault;
import gradepost.ride.Ride;
import gradepost.ride.RideResult;
import gradepost.ride.RideResult.Mark;
import java.util.List;
import java.util.Map;

/**
 * An assessed ride for whoever keeps rides. Lengths in metres, speeds in m/s, pressures in Pa,
 * places by distance run of the front.
 *
 * @param kind {@code ride}
 * @param version of this form
 * @param driver empty where it was not given
 * @param day likewise
 * @param legs the recorder's scale between stands; none of what was typed
 * @param leftOut by the number of the approach, why it is not judged
 */
public record RideFile(
    String kind,
    int version,
    String fingerprint,
    String direction,
    String formation,
    String driver,
    String assessor,
    String day,
    RideResult.Outcome outcome,
    int points,
    int observed,
    int possible,
    List<RideFault> faults,
    List<OfLeg> legs,
    Map<String, String> leftOut,
    List<OfApproach> approaches) {
  static final String KIND = "ride";
  static final int VERSION = 1;

  /** Copies the lists. */
  public RideFile {
    faults = List.copyOf(faults);
    legs = List.copyOf(legs);
    leftOut = Map.copyOf(leftOut);
    approaches = List.copyOf(approaches);
  }

  /** What the recorder counted between two stands. */
  public record OfLeg(
      String from,
      String to,
      double fromM,
      double toM,
      double countedM,
      double scale,
      boolean scored) {}

  /** One approach. */
  public record OfApproach(int number, String name, List<Mark> marks, Ride.Observed observed) {
    /** Copies the list. */
    public OfApproach {
      marks = List.copyOf(marks);
    }
  }
}
