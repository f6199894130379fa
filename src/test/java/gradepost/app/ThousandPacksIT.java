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
 * Measures a notice that touches one pack in a hundred against a reissue of every pack, each as the
 * clerk runs it: with the start script, from nothing to the prompt, in a heap of 512 MB.
 */
@Tag("long")
class ThousandPacksIT {
  private static final int PACKS = Integer.getInteger("gradepost.packs", 1000);

  @TempDir Path folder;

  @Test
  void oneInAHundredCostsLittle() throws Exception {
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
    double every = seconds(routes, all.toString(), "all");
    System.out.printf(
        "%d packs: 1 %% touched %.1f s, every pack %.1f s, ratio %.1f %%%n",
        PACKS, few, every, 100 * few / every);
    assertThat(few / every).isLessThan(0.05);
  }

  private static String entry(String reference, int line, String way) {
    String notice = SyntheticNetwork.notice(reference, line, way, 900, 20);
    return notice.substring(notice.indexOf("  - "));
  }

  private double seconds(Path routes, String notice, String name)
      throws IOException, InterruptedException {
    Path file = Files.writeString(folder.resolve(name + ".yaml"), notice);
    Path log = folder.resolve(name + ".log");
    ProcessBuilder run =
        new ProcessBuilder(
                List.of(
                    "target/bin/gradepost",
                    "reissue",
                    routes.toString(),
                    "--notice",
                    file.toString(),
                    "--out",
                    folder.resolve("out").toString(),
                    "--register",
                    folder.resolve("register.db").toString()))
            .redirectErrorStream(true)
            .redirectOutput(log.toFile());
    run.environment().put("JAVA_TOOL_OPTIONS", "-Xmx512m");
    long start = System.nanoTime();
    int code = run.start().waitFor();
    double took = (System.nanoTime() - start) / 1e9;
    String said = Files.readString(log);
    assertThat(code).as(said).isZero();
    assertThat(said).contains(PACKS + " packs: ");
    return took;
  }
}
