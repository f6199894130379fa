package gradepost.source.route;

import gradepost.route.Stretch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Which part of a stretch a set of stretches leaves uncovered; metres throughout. */
public final class Coverage {
  private final double slackM;
  private final List<Stretch> covered = new ArrayList<>();

  public Coverage(double slackM) {
    this.slackM = slackM;
  }

  /** Adds a stretch that is covered. */
  public void add(Stretch stretch) {
    covered.add(stretch);
  }

  /** What is covered by none between two places, in order. */
  public List<Stretch> gaps(double fromM, double toM) {
    List<Stretch> ordered = new ArrayList<>(covered);
    ordered.sort(Comparator.comparingDouble(Stretch::fromM));
    List<Stretch> gaps = new ArrayList<>();
    double reached = fromM;
    for (Stretch stretch : ordered) {
      if (stretch.fromM() >= toM) {
        break;
      }
      if (stretch.fromM() > reached + slackM) {
        gaps.add(new Stretch(reached, stretch.fromM()));
      }
      reached = Math.max(reached, stretch.toM());
      if (reached >= toM) {
        return gaps;
      }
    }
    if (reached < toM - slackM) {
      gaps.add(new Stretch(reached, toM));
    }
    return gaps;
  }
}
