package gradepost.motion;

/**
 * Work done on the train since the start of a run, in joules; brake and resistance are negative.
 */
public final class Work {
  double tractionJ;
  double brakeJ;
  double resistanceJ;
  double trackJ;

  public double tractionJ() {
    return tractionJ;
  }

  public double brakeJ() {
    return brakeJ;
  }

  public double resistanceJ() {
    return resistanceJ;
  }

  /** Of gradient and curves together. */
  public double trackJ() {
    return trackJ;
  }
}
