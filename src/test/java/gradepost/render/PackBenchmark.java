package gradepost.render;

import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.drive.Planner;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What laying out costs: a demo pack of some 30 pages, with and without tags, and as HTML. Run with
 * the test class path: {@code org.openjdk.jmh.Main PackBenchmark -prof gc}, with {@code -t 2} on
 * two threads; on a machine with other work, {@link #main} gives medians of processor time,
 * allocation, size and the peak of the heap.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(1)
public class PackBenchmark {
  private static final int LONG_ENOUGH = 60;
  private static final Briefing BRIEFING = briefing();
  private final Renderer tagged = renderer(true);
  private final Renderer untagged = renderer(false);

  private static Briefing briefing() {
    return new Composer(Messages.english())
        .compose(
            "",
            List.of(Planner.plan(DemoPlans.assignments().get(4))),
            SamplePlan.issue(),
            List.of());
  }

  private static Renderer renderer(boolean tagged) {
    try {
      return new Renderer(TemplateSource.bundled(), Messages.english(), tagged);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Nothing to do but to have the pack composed before the clock runs. */
  @Setup
  public void compose() {
    if (BRIEFING.parts().isEmpty()) {
      throw new IllegalStateException("nothing to lay out");
    }
  }

  @Benchmark
  public byte[] tagged() throws IOException {
    return pdf(tagged);
  }

  @Benchmark
  public byte[] untagged() throws IOException {
    return pdf(untagged);
  }

  @Benchmark
  public byte[] html() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    tagged.html(BRIEFING, out);
    return out.toByteArray();
  }

  private static byte[] pdf(Renderer renderer) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    renderer.pdf(BRIEFING, out);
    return out.toByteArray();
  }

  /** Medians of one thread, then of two. */
  public static void main(String[] args) throws Exception {
    PackBenchmark one = new PackBenchmark();
    try (PDDocument document = Loader.loadPDF(one.tagged())) {
      System.out.printf("%d pages%n", document.getNumberOfPages());
    }
    int runs = args.length > 0 ? Integer.parseInt(args[0]) : 41;
    for (int i = 0; i < LONG_ENOUGH; i++) {
      one.tagged();
      one.untagged();
      one.html();
    }
    report("tagged", one::tagged, runs);
    report("untagged", one::untagged, runs);
    report("html", one::html, runs);
    ExecutorService two = Executors.newFixedThreadPool(2);
    long start = System.nanoTime();
    for (Future<?> f :
        List.of(
            two.submit(() -> run(new PackBenchmark()::tagged, runs)),
            two.submit(() -> run(new PackBenchmark()::tagged, runs)))) {
      f.get();
    }
    two.shutdown();
    System.out.printf(
        "two threads, tagged     %8.1f ms of the clock a pack%n",
        (System.nanoTime() - start) / 1e6 / (2 * runs));
  }

  private static long run(Callable<byte[]> work, int runs) throws Exception {
    long bytes = 0;
    for (int i = 0; i < runs; i++) {
      bytes += work.call().length;
    }
    return bytes;
  }

  private static void report(String what, Callable<byte[]> work, int runs) throws Exception {
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    long self = Thread.currentThread().getId();
    double[] ms = new double[runs];
    System.gc();
    ManagementFactory.getMemoryPoolMXBeans().forEach(MemoryPoolMXBean::resetPeakUsage);
    long allocated = threads.getThreadAllocatedBytes(self);
    int size = 0;
    for (int i = 0; i < runs; i++) {
      long before = threads.getCurrentThreadCpuTime();
      size = work.call().length;
      ms[i] = (threads.getCurrentThreadCpuTime() - before) / 1e6;
    }
    allocated = threads.getThreadAllocatedBytes(self) - allocated;
    Arrays.sort(ms);
    long peak =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(p -> p.getType() == java.lang.management.MemoryType.HEAP)
            .mapToLong(p -> p.getPeakUsage().getUsed())
            .sum();
    System.out.printf(
        "%-22s %8.1f ms (least %.1f), %d MB allocated, %d kB, peak of the heap %d MB%n",
        what, ms[runs / 2], ms[0], allocated / runs >> 20, size >> 10, peak >> 20);
  }
}
