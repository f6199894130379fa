package gradepost.motion;

import java.util.Arrays;

/**
 * The steps of a run from one state, as long as its speed falls: the same run to another end begins
 * with them, and takes them over. For a stepper that nothing watches.
 */
public final class Trail {
  /** Of the state behind a step: time, place, speed, the next step tried. */
  private static final int ROW = 5;

  private double[] rows = new double[8 * ROW];
  private int steps;

  /** How many steps are known. */
  int steps() {
    return steps;
  }

  /**
   * @param reachS until when the step was tried first
   */
  void add(double timeS, double atM, double speedMps, double nextS, double reachS) {
    int row = steps * ROW;
    if (row == rows.length) {
      rows = Arrays.copyOf(rows, 2 * rows.length);
    }
    rows[row] = timeS;
    rows[row + 1] = atM;
    rows[row + 2] = speedMps;
    rows[row + 3] = nextS;
    rows[row + 4] = reachS;
    steps++;
  }

  double timeS(int step) {
    return rows[step * ROW];
  }

  double atM(int step) {
    return rows[step * ROW + 1];
  }

  double speedMps(int step) {
    return rows[step * ROW + 2];
  }

  double nextS(int step) {
    return rows[step * ROW + 3];
  }

  /** How many of the steps a run to this end takes too. */
  int stepsWithin(StopConditions until, double endS) {
    int i = 0;
    while (i < steps
        && speedMps(i) > until.speedDownMps
        && atM(i) < until.placeM
        && rows[i * ROW + 4] <= endS) {
      i++;
    }
    return i;
  }
}
