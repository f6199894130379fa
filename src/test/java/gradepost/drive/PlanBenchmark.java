package gradepost.drive;

import gradepost.OneThread;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Setup;

/**
 * What a plan costs: the demo valley with all ladders and cases, with and without the spread, and
 * lines of 50, 100 and 200 km with stops, and an open line of 31, 62 and 125 km in one leg. Run
 * with the test class path: {@code org.openjdk.jmh.Main PlanBenchmark}; on a machine with other
 * work, {@link #main} gives medians of processor time.
 */
@BenchmarkMode(Mode.AverageTime)
public class PlanBenchmark extends OneThread {
  static {
    // All of a plan is worked out in the thread whose processor time is taken.
    System.setProperty("java.util.concurrent.ForkJoinPool.common.parallelism", "0");
  }

  private Assignment valley;
  private Assignment valleyWithSpread;
  private Assignment km50;
  private Assignment km100;
  private Assignment km200;
  private Assignment oneLeg31;
  private Assignment oneLeg62;
  private Assignment oneLeg125;

  @Setup
  public void read() {
    valleyWithSpread = DemoPlans.assignments().get(0);
    valley = Scattered.by(Optional.empty(), valleyWithSpread);
    km50 = LongLine.assignment(50);
    km100 = LongLine.assignment(100);
    km200 = LongLine.assignment(200);
    oneLeg31 = OpenLine.repeated(1);
    oneLeg62 = OpenLine.repeated(2);
    oneLeg125 = OpenLine.repeated(4);
  }

  @Benchmark
  public Plan tenMiles() {
    return Planner.plan(valley);
  }

  @Benchmark
  public Plan tenMilesWithSpread() {
    return Planner.plan(valleyWithSpread);
  }

  @Benchmark
  public Plan kilometres050() {
    return Planner.plan(km50);
  }

  @Benchmark
  public Plan kilometres100() {
    return Planner.plan(km100);
  }

  @Benchmark
  public Plan kilometres200() {
    return Planner.plan(km200);
  }

  @Benchmark
  public Plan oneLegOf031() {
    return Planner.plan(oneLeg31);
  }

  @Benchmark
  public Plan oneLegOf062() {
    return Planner.plan(oneLeg62);
  }

  @Benchmark
  public Plan oneLegOf125() {
    return Planner.plan(oneLeg125);
  }

  /** Medians of the processor time of this thread. */
  public static void main(String[] args) throws Exception {
    PlanBenchmark all = new PlanBenchmark();
    all.read();
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 21;
    median("10 miles", all::tenMiles, runs);
    median("10 miles with spread", all::tenMilesWithSpread, Math.max(5, runs / 4));
    median("50 km", all::kilometres050, runs);
    median("100 km", all::kilometres100, runs);
    median("200 km", all::kilometres200, runs);
    median("31 km in one leg", all::oneLegOf031, runs);
    median("62 km in one leg", all::oneLegOf062, runs);
    median("125 km in one leg", all::oneLegOf125, runs);
    median("10 miles", all::tenMiles, runs);
  }

  private static void median(String what, Callable<Plan> work, int runs) throws Exception {
    for (int i = 0; i < runs; i++) {
      work.call();
    }
    System.out.println(cost(work, runs).text(what));
  }
}
