package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Measures a notice that touches one pack in a hundred against a reissue of every pack. */
@Tag("long")
class ThousandPacksIT {
  private static final int PACKS = Integer.getInteger("gradepost.packs", 1000);

  @TempDir Path folder;

  @Test
  void oneInAHundredCostsLittle() throws IOException {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 20).packs(PACKS, 1);
    // Ten of the twenty packs of one line in fifty: one in a hundred.
    int lines = PACKS / 20;
    StringBuilder one = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (int line = 0; line < Math.max(1, lines / 50); line++) {
      one.append(entry("A 1", line, "Out"));
    }
    StringBuilder all = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (int line = 0; line < lines; line++) {
      all.append(entry("B 1", line, "both"));
    }
    double few = seconds(routes, one.toString(), "few");
    long memory = peak();
    double every = seconds(routes, all.toString(), "all");
    System.out.printf(
        "%d packs: 1 %% touched %.1f s (peak heap %d MB), every pack %.1f s (%d MB), ratio %.1f %%%n",
        PACKS, few, memory, every, peak(), 100 * few / every);
    assertThat(few / every).isLessThan(0.05);
  }

  private static String entry(String reference, int line, String way) {
    String notice = SyntheticNetwork.notice(reference, line, way, 900, 20);
    return notice.substring(notice.indexOf("  - "));
  }

  private double seconds(Path routes, String notice, String name) throws IOException {
    Path file = Files.writeString(folder.resolve(name + ".yaml"), notice);
    long start = System.nanoTime();
    Answer answer =
        new Depot(folder)
            .reissue(Clock.systemDefaultZone(), List.of(routes), Optional.of(file), false, false);
    assertThat(answer.problems()).isEmpty();
    return (System.nanoTime() - start) / 1e9;
  }

  private static long peak() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(p -> p.getType() == MemoryType.HEAP)
            .mapToLong((MemoryPoolMXBean p) -> p.getPeakUsage().getUsed())
            .sum()
        >> 20;
  }
}
