package gradepost.ride;

/**
 * A recorded run from a stand at one stop mark to the stand at the next where it stopped.
 *
 * @param from the station where it begins
 * @param to the station where it ends
 * @param fromM the mark where it begins, distance run
 * @param toM the mark where it ends
 * @param countedM what the recorder counted between the stands
 * @param slipsM of that, where the wheel may have slipped or slid
 * @param trusted whether the scale is one that the operator allows
 */
public record Leg(
    String from,
    String to,
    double fromM,
    double toM,
    double countedM,
    double slipsM,
    boolean trusted) {
  /** Metres of road for each metre counted. */
  public double scale() {
    return (toM - fromM) / countedM;
  }
}
