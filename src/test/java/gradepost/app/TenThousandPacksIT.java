package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Measures a notice that touches ten of many packs, as a process in a heap of 512 MB: the first
 * time, when every pack has to be read, and when the register knows what each rests on.
 */
@Tag("long")
class TenThousandPacksIT {
  private static final int PACKS = Integer.getInteger("gradepost.packs", 10_000);

  @TempDir Path folder;

  @Test
  void aNoticeForTenPacksReadsFewOthers() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 20).packs(PACKS, 1);
    RealRuns runs = new RealRuns(routes, folder);
    double first = seconds(runs, notice("A 1", 0, "first"));
    double second = seconds(runs, notice("A 2", 1, "second"));
    System.out.printf(
        "%d packs, a notice that touches ten: %.1f s when all are read, %.1f s after that%n",
        PACKS, first, second);
  }

  /** For the packs of one direction of one line: ten. */
  private Path notice(String reference, int line, String name) throws IOException {
    return Files.writeString(
        folder.resolve(name + ".yaml"), SyntheticNetwork.notice(reference, line, "Out", 900, 20));
  }

  private double seconds(RealRuns runs, Path notice) throws Exception {
    List<String> command = runs.command(notice);
    command.add(1, "-Xmx512m");
    command.remove("-XX:TieredStopAtLevel=1");
    Path log = folder.resolve("log");
    long start = System.nanoTime();
    int code = runs.start(log, command).waitFor();
    double took = (System.nanoTime() - start) / 1e9;
    String said = Files.readString(log);
    assertThat(code).as(said).isZero();
    assertThat(said)
        .contains(
            PACKS + " packs: " + (PACKS - 20) + " of another route, 10 not touched, 10 issued");
    return took;
  }
}
