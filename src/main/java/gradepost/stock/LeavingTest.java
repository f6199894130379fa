package gradepost.stock;

import java.util.List;
import java.util.Optional;

/**
 * A test of a brake before the train leaves, as its operator does it.
 *
 * @param name "continuity of the automatic brake"
 * @param brake the short name of the brake that is tested
 * @param steps in order
 */
public record LeavingTest(String name, String brake, List<Step> steps) {
  public LeavingTest {
    steps = List.copyOf(steps);
  }

  /**
   * One thing that is done.
   *
   * @param action as an instruction
   * @param shows what a gauge must then show; empty where no gauge is read
   */
  public record Step(String action, Optional<GaugeReading> shows) {}
}
