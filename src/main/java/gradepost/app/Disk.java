package gradepost.app;

import gradepost.source.DiskFiles;
import gradepost.source.Sources;
import java.nio.file.Path;
import java.util.Optional;

/** The disk as {@code source} sees it: names with slashes, as the user typed them. */
final class Disk {

  static Sources sources() {
    return new Sources(new DiskFiles(Path.of("")));
  }

  static String name(Path file) {
    return file.toString().replace('\\', '/');
  }

  /** The same for every way to write it. */
  static Path absolute(Path file) {
    return file.toAbsolutePath().normalize();
  }

  /** The folder in which a file lies, from the root of the disk. */
  static Path folder(Path file) {
    Path whole = file.toAbsolutePath();
    return Optional.ofNullable(whole.getParent()).orElse(whole);
  }

  private Disk() {}
}
