package gradepost.app.store;

import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import gradepost.source.pack.Shelves;
import gradepost.yaml.YamlText;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** The disk as {@code source} sees it: names with slashes, as the user typed them. */
public final class Disk {
  private static final int MB = 1_000_000;

  /** A reader of files on this disk; names are relative to the working folder. */
  public static Sources sources() {
    return new Sources(new DiskFiles(Path.of("")));
  }

  /** The same; what others with these shelves have read is not read again. */
  public static Sources sources(Shelves shelves) {
    return new Sources(new DiskFiles(Path.of("")), shelves);
  }

  /** The bytes of a table or another text that people type, which is not larger than those are. */
  public static byte[] typed(Path file) throws IOException {
    return bytes(file, YamlText.MOST_MB);
  }

  /**
   * The bytes of a file with an end: no folder, device or pipe, and not larger than so much.
   *
   * @param most in MB
   */
  public static byte[] bytes(Path file, int most) throws IOException {
    require(file);
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(most * MB + 1);
      if (bytes.length > most * MB) {
        throw new FileSystemException(
            file.toString(), null, "it is larger than %d MB".formatted(most));
      }
      return bytes;
    }
  }

  /** Refuses what is there and has no end: a folder, device or pipe. */
  static void require(Path file) throws IOException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      String what = Files.isDirectory(file) ? "it is a folder" : "it is not a regular file";
      throw new FileSystemException(file.toString(), null, what);
    }
  }

  /** Refuses what is there and is no folder: a pipe would be waited for. */
  public static void requireFolder(Path folder) throws IOException {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new FileSystemException(folder.toString(), null, "it is not a folder");
    }
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
