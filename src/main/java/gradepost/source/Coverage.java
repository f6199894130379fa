package gradepost.source;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Which part of a stretch a set of stretches leaves uncovered; metres throughout. */
final class Coverage {
  private final double slackM;
  private final List<double[]> covered = new ArrayList<>();

  Coverage(double slackM) {
    this.slackM = slackM;
  }

  void add(double[] fromTo) {
    covered.add(fromTo);
  }

  List<double[]> gaps(double fromM, double toM) {
    List<double[]> ordered = new ArrayList<>(covered);
    ordered.sort(Comparator.comparingDouble(c -> c[0]));
    List<double[]> gaps = new ArrayList<>();
    double reached = fromM;
    for (double[] stretch : ordered) {
      if (stretch[0] >= toM) {
        break;
      }
      if (stretch[0] > reached + slackM) {
        gaps.add(new double[] {reached, stretch[0]});
      }
      reached = Math.max(reached, stretch[1]);
      if (reached >= toM) {
        return gaps;
      }
    }
    if (reached < toM - slackM) {
      gaps.add(new double[] {reached, toM});
    }
    return gaps;
  }
}
