package gradepost.plan;

import java.util.List;

/** From where on a cue is in time for a braking point: a driver counts no longer than so. */
public final class CueWindow {
  private final List<Approach> approaches;
  private final Run run;
  private final double withinS;

  /**
   * @param withinS the longest count, seconds
   */
  public CueWindow(List<Approach> approaches, Run run, double withinS) {
    this.approaches = approaches;
    this.run = run;
    this.withinS = withinS;
  }

  /** Distance run in metres. A count does not begin before the train last stood. */
  public double fromM(double atM) {
    double stoodM =
        approaches.stream()
            .filter(a -> a.target().isStop() && a.endM() < atM)
            .mapToDouble(Approach::endM)
            .max()
            .orElse(0);
    return Math.max(stoodM, run.placeAt(run.timeAt(atM) - withinS));
  }
}
