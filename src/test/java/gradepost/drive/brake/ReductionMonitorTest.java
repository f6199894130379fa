package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.task.Target;
import java.util.List;
import org.junit.jupiter.api.Test;

/** By hand: between two points the square of the speed is linear. Twenty metres are 1 m/s. */
class ReductionMonitorTest {
  private static Target board(double atM, double mps) {
    return new Target.TerminalStep("step", atM, mps, 30);
  }

  private static double marginM(List<Target> boards, double[]... points) {
    ReductionMonitor monitor = new ReductionMonitor(boards);
    for (double[] p : points) {
      monitor.point(0, p[0], p[1], 0, -1);
    }
    return monitor.marginM();
  }

  @Test
  void theSpeedAtABoardIsMeasuredBetweenTheTwoPointsAboutIt() {
    double there = Math.sqrt((20 * 20 + 10 * 10) / 2.0);
    double[][] run = {{100, 20}, {200, 10}};
    assertThat(marginM(List.of(board(150, 18)), run)).isCloseTo(20 * (18 - there), within(1e-9));
    assertThat(marginM(List.of(board(150, 10)), run)).isCloseTo(20 * (10 - there), within(1e-9));
    assertThat(marginM(List.of(board(150, 18), board(175, 10)), run))
        .isCloseTo(20 * (10 - Math.sqrt(175)), within(1e-9));
  }

  @Test
  void aBoardIsMetOnceAndNotWhereTheRunBeginsOrBeforeItEnds() {
    double[][] run = {{100, 20}, {200, 10}};
    assertThat(marginM(List.of(board(200, 12)), run)).isCloseTo(40, within(1e-9));
    assertThat(marginM(List.of(board(100, 12)), run)).isInfinite();
    assertThat(marginM(List.of(board(200.1, 12)), run)).isInfinite();
  }

  /** A step to the same place, as where a handle is moved, or back to a new try, meets nothing. */
  @Test
  void onlyATrainThatGoesOnMeetsABoard() {
    double[][] back = {{200, 10}, {100, 20}, {120, 18}};
    assertThat(marginM(List.of(board(150, 5)), back)).isInfinite();
    double[][] same = {{150, 20}, {150, 20}};
    assertThat(marginM(List.of(board(150, 5)), same)).isInfinite();
  }
}
