package gradepost.motion;

import java.util.concurrent.atomic.DoubleAdder;

/**
 * How far trains were moved in all the runs of one job: what the job cost, without a clock. For
 * many threads at once.
 */
public final class Odometer {
  private final DoubleAdder sum = new DoubleAdder();

  void add(double metres) {
    sum.add(metres);
  }

  /** So far, metres. */
  public double metres() {
    return sum.sum();
  }
}
