package gradepost.motion;

/** Is told every accepted step of a run. */
public interface Recorder {
  /** One point of the run; the notch is −1 with power off. */
  void point(double timeS, double atM, double speedMps, double pressurePa, int notch);
}
