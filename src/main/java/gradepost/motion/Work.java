package gradepost.motion;

/**
 * Work done on the train since the start of a run, in joules; brake and resistance are negative.
 */
public final class Work {
  double tractionJ;
  double brakeJ;
  double resistanceJ;
  double trackJ;

  /** Of traction. */
  public double tractionJ() {
    return tractionJ;
  }

  /** Of the brake. */
  public double brakeJ() {
    return brakeJ;
  }

  /** Of running resistance. */
  public double resistanceJ() {
    return resistanceJ;
  }

  /** Of gradient and curves together. */
  public double trackJ() {
    return trackJ;
  }
}
