package gradepost.source;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Files of a disk, by names relative to a folder. */
public final class DiskFiles implements SourceFiles {
  /** A route of a thousand miles stays far below it. */
  static final int LARGEST_BYTES = 16 * 1024 * 1024;

  private final Path folder;

  public DiskFiles(Path folder) {
    this.folder = folder;
  }

  @Override
  public Content read(String name) {
    try {
      Path path = folder.resolve(name);
      if (Files.isDirectory(path)) {
        return new Unreadable("it is a folder");
      }
      try (InputStream in = Files.newInputStream(path)) {
        byte[] bytes = in.readNBytes(LARGEST_BYTES + 1);
        return bytes.length > LARGEST_BYTES
            ? new Unreadable("it is larger than 16 MB")
            : new Bytes(bytes);
      }
    } catch (NoSuchFileException e) {
      return new Unreadable("there is no such file");
    } catch (InvalidPathException e) {
      return new Unreadable("it is no name of a file");
    } catch (IOException e) {
      return new Unreadable("it cannot be opened");
    }
  }
}
