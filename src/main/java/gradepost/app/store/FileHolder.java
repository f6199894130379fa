package gradepost.app.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Which program holds a file locked, where the operating system tells. */
final class FileHolder {
  private static final Path LOCKS = Path.of("/proc/locks");

  /** The program in words; empty where it cannot be known, as on a network drive. */
  static Optional<String> of(Path file) {
    try {
      if (!Files.isReadable(LOCKS) || !Files.exists(file)) {
        return Optional.empty();
      }
      return of(Files.readAllLines(LOCKS), String.valueOf(Files.getAttribute(file, "unix:ino")))
          .map(FileHolder::named);
    } catch (IOException | UnsupportedOperationException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  /**
   * The process that has a lock on a file.
   *
   * @param locks as Linux lists them: number, kind, advisory, read or write, process, device with
   *     inode, extent
   * @param inode of the file
   */
  static Optional<Long> of(List<String> locks, String inode) {
    return locks.stream()
        .map(line -> line.strip().split("\\s+"))
        .filter(words -> words.length >= 6 && !words[1].equals("->"))
        .filter(words -> words[5].endsWith(":" + inode) && words[4].matches("\\d+"))
        .map(words -> Long.valueOf(words[4]))
        .filter(process -> process != ProcessHandle.current().pid())
        .findFirst();
  }

  private static String named(long process) {
    Optional<ProcessHandle> handle = ProcessHandle.of(process);
    String program =
        handle
            .flatMap(p -> p.info().command())
            .map(command -> command.replaceFirst(".*[/\\\\]", ""))
            .orElse("a program");
    String user = handle.flatMap(p -> p.info().user()).map(u -> " of " + u).orElse("");
    return "%s (process %d)%s".formatted(program, process, user);
  }

  private FileHolder() {}
}
