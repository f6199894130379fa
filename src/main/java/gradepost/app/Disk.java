package gradepost.app;

import gradepost.source.DiskFiles;
import gradepost.source.Sources;
import java.nio.file.Path;

/** The disk as {@code source} sees it: names with slashes, as the user typed them. */
final class Disk {

  static Sources sources() {
    return new Sources(new DiskFiles(Path.of("")));
  }

  static String name(Path file) {
    return file.toString().replace('\\', '/');
  }

  private Disk() {}
}
