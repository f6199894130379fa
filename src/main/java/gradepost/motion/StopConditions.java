package gradepost.motion;

/**
 * What a leg of a run ends at, whichever comes first. A condition that does not matter is left at
 * its infinite value. A stand always ends a leg.
 */
public final class StopConditions {
  /** How far a search looks; never printed as a distance. */
  private static final double HOPELESS_M = 8000;

  /** Distance run of the front, m. */
  public double placeM = Double.POSITIVE_INFINITY;

  /** The speed has fallen to this, m/s; a train that is slower already does not wait for it. */
  public double speedDownMps = Double.NEGATIVE_INFINITY;

  /** The speed has risen to this, m/s. */
  public double speedUpMps = Double.POSITIVE_INFINITY;

  /** Time of the run, s. */
  public double timeS = Double.POSITIVE_INFINITY;

  /** Puts every condition back to what does not matter. */
  public StopConditions clear() {
    placeM = Double.POSITIVE_INFINITY;
    speedDownMps = Double.NEGATIVE_INFINITY;
    speedUpMps = Double.POSITIVE_INFINITY;
    timeS = Double.POSITIVE_INFINITY;
    return this;
  }

  /** At this distance run, metres. */
  public StopConditions place(double m) {
    placeM = m;
    return this;
  }

  /** Far beyond a place: a braking that has not ended by then is taken never to end. */
  public StopConditions hopeless(double fromM) {
    return place(fromM + HOPELESS_M);
  }

  /** Where the speed drops to this, metres a second. */
  public StopConditions speedDown(double mps) {
    speedDownMps = mps;
    return this;
  }

  /** Where the speed rises to this, metres a second. */
  public StopConditions speedUp(double mps) {
    speedUpMps = mps;
    return this;
  }

  /** At this time since the run began, seconds. */
  public StopConditions time(double s) {
    timeS = s;
    return this;
  }
}
