package gradepost.app.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Where the driver of SQLite unpacks its native part: in a folder of this process. A killed process
 * cannot take it away; the next one does.
 */
final class DriverFolder {
  private static final String PROPERTY = "org.sqlite.tmpdir";
  private static final Pattern NAME = Pattern.compile("gradepost-driver-(\\d+)");

  /** Has to be called before the first register is opened. */
  static void ready() {
    if (System.getProperty(PROPERTY) == null) {
      try {
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        Path own = in(temporary, ProcessHandle.current().pid());
        own.toFile().deleteOnExit();
        System.setProperty(PROPERTY, own.toString());
      } catch (IOException e) {
        // Without a folder of its own the driver takes the temporary one.
        return;
      }
    }
  }

  /** The folder of a process, after those of processes that have ended are taken away. */
  static Path in(Path temporary, long process) throws IOException {
    for (Path left : left(temporary)) {
      drop(left);
    }
    return Files.createDirectories(temporary.resolve("gradepost-driver-" + process));
  }

  private static List<Path> left(Path temporary) throws IOException {
    try (Stream<Path> all = Files.list(temporary)) {
      return all.filter(DriverFolder::ended).toList();
    }
  }

  private static boolean ended(Path folder) {
    Matcher matcher = NAME.matcher(String.valueOf(folder.getFileName()));
    return matcher.matches()
        && Files.isDirectory(folder)
        && ProcessHandle.of(Long.parseLong(matcher.group(1))).isEmpty();
  }

  /** Another user's folder stays: it is his next run that takes it away. */
  private static void drop(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.deleteIfExists(file);
      }
      Files.deleteIfExists(folder);
    } catch (IOException e) {
      return;
    }
  }

  private DriverFolder() {}
}
