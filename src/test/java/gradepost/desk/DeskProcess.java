package gradepost.desk;

import gradepost.app.RealRuns;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;

/** A desk as a process of its own, which can be killed. */
final class DeskProcess {
  /**
   * Begins it; the first line that it prints has its address, with the key.
   *
   * @param folder with the lines, and the register
   * @param listen address and port, 0 for any that is free
   * @param err where it complains
   */
  static Process begun(RealRuns runs, Path folder, String listen, File err) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-cp",
            System.getProperty(
                "surefire.test.class.path", System.getProperty("java.class.path", "")),
            "gradepost.cli.Main",
            "desk",
            folder.resolve("routes").toString(),
            "--listen",
            listen,
            "--out",
            runs.out().toString(),
            "--register",
            folder.resolve("reg/register.db").toString())
        .redirectError(err)
        .start();
  }

  private DeskProcess() {}
}
