package gradepost.app.store;

import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import java.nio.file.Path;
import java.util.Optional;

/** The disk as {@code source} sees it: names with slashes, as the user typed them. */
public final class Disk {

  /** A reader of files on this disk; names are relative to the working folder. */
  public static Sources sources() {
    return new Sources(new DiskFiles(Path.of("")));
  }

  /** A file by a name with slashes, on every operating system. */
  public static String name(Path file) {
    return file.toString().replace('\\', '/');
  }

  /** The same for every way to write it. */
  public static Path absolute(Path file) {
    return file.toAbsolutePath().normalize();
  }

  /** The folder in which a file lies, from the root of the disk. */
  public static Path folder(Path file) {
    Path whole = file.toAbsolutePath();
    return Optional.ofNullable(whole.getParent()).orElse(whole);
  }

  private Disk() {}
}
