package gradepost.motion;

/** Is told every accepted step of a run. */
public interface Recorder {
  void point(double timeS, double atM, double speedMps, double pressurePa, int notch);
}
