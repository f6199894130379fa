package gradepost;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.Arrays;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What benchmarks have in common: a state for each thread, one fork, milliseconds; and medians of
 * processor time for a machine with other work.
 */
@State(Scope.Thread)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public abstract class OneThread {

  /**
   * What one run of some work took.
   *
   * @param allocated bytes
   * @param peak of the heap, in bytes
   */
  protected record Cost(double medianMs, double leastMs, long allocated, long peak) {
    /** The times as a line begins. */
    public String text(String what) {
      return "%-22s %8.1f ms (least %.1f)".formatted(what, medianMs, leastMs);
    }
  }

  /** Of so many runs in this thread. */
  protected static Cost cost(Callable<?> work, int runs) throws Exception {
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    long self = Thread.currentThread().getId();
    double[] ms = new double[runs];
    System.gc();
    ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
    long allocated = threads.getThreadAllocatedBytes(self);
    for (int i = 0; i < runs; i++) {
      long before = threads.getCurrentThreadCpuTime();
      work.call();
      ms[i] = (threads.getCurrentThreadCpuTime() - before) / 1e6;
    }
    allocated = threads.getThreadAllocatedBytes(self) - allocated;
    Arrays.sort(ms);
    long peak =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(p -> p.getType() == MemoryType.HEAP)
            .mapToLong(p -> p.getPeakUsage().getUsed())
            .sum();
    return new Cost(ms[runs / 2], ms[0], allocated / runs, peak);
  }
}
