package gradepost.app.queue;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Processor time, of this process and of a server of PostgreSQL. */
final class Cost {
  private static final String WORDS = "processor time ms ";

  /** A line from which {@link #told} reads it again, by what the process is called. */
  static String ofThisProcess(String process) {
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    return WORDS + process + ' ' + system.getProcessCpuTime() / 1_000_000;
  }

  /** Of the processes of this name that told theirs into a file, in seconds. */
  static double told(Path log, String process) throws IOException {
    String words = WORDS + process + ' ';
    try (Stream<String> lines = Files.lines(log)) {
      return lines
              .filter(line -> line.startsWith(words))
              .mapToLong(line -> Long.parseLong(line.substring(words.length())))
              .sum()
          / 1000.0;
    }
  }

  /** Of a server, its ended connections included, in seconds. Linux counts in hundredths. */
  static double ofServer(Path data) throws IOException {
    long first = Long.parseLong(Files.readAllLines(data.resolve("postmaster.pid")).get(0).strip());
    long ticks = 0;
    List<ProcessHandle> children =
        ProcessHandle.of(first).map(p -> p.children().toList()).orElse(List.of());
    for (ProcessHandle child : children) {
      try {
        ticks += ticks(child.pid(), false);
      } catch (NoSuchFileException e) {
        // It has ended since: the server counts it.
      }
    }
    return (ticks + ticks(first, true)) / 100.0;
  }

  private static long ticks(long pid, boolean ended) throws IOException {
    String stat = Files.readString(Path.of("/proc", String.valueOf(pid), "stat"));
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ", -1);
    long own = Long.parseLong(fields[11]) + Long.parseLong(fields[12]);
    return ended ? own + Long.parseLong(fields[13]) + Long.parseLong(fields[14]) : own;
  }

  private Cost() {}
}
