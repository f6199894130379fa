package gradepost.render;

import gradepost.OneThread;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.drive.FrozenPlans;
import gradepost.drive.Planner;
import gradepost.task.Assignment;
import gradepost.units.UnitStyle;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.filter.Filter;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What laying out costs: a demo pack of some 30 pages, with and without tags, and as HTML. Run with
 * the test class path: {@code org.openjdk.jmh.Main PackBenchmark -prof gc}, with {@code -t 2} on
 * two threads; on a machine with other work, {@link #main} gives medians of processor time,
 * allocation, size and the peak of the heap. {@code -Dpack=invented} takes the small pack of the
 * tests instead, {@code -Dpack=frozen} the frozen one.
 */
@BenchmarkMode(Mode.SampleTime)
@Warmup(iterations = 5, time = 3)
@Measurement(iterations = 5, time = 3)
public class PackBenchmark extends OneThread {
  static {
    // As the command does.
    System.setProperty(Filter.SYSPROP_DEFLATELEVEL, "4");
  }

  private static final int LONG_ENOUGH = 60;
  private static final Briefing BRIEFING = briefing();
  private final Renderer tagged = renderer(true);
  private final Renderer untagged = renderer(false);

  private static Briefing briefing() {
    if ("invented".equals(System.getProperty("pack"))) {
      return Papers.briefing(UnitStyle.MILES);
    }
    boolean frozen = "frozen".equals(System.getProperty("pack"));
    Assignment assignment =
        frozen ? FrozenPlans.assignments().get(0) : DemoPlans.assignments().get(4);
    return new Composer(Messages.english())
        .compose("", List.of(Planner.plan(assignment)), SampleIssue.issue(), List.of());
  }

  private static Renderer renderer(boolean tagged) {
    try {
      return new Renderer(TemplateSource.bundled(), Messages.english(), tagged);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
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
    Cost cost = cost(work, runs);
    System.out.printf(
        "%s, %d MB allocated, %d kB, peak of the heap %d MB%n",
        cost.text(what), cost.allocated() >> 20, work.call().length >> 10, cost.peak() >> 20);
  }
}
