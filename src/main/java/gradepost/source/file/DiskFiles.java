package gradepost.source.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

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
      if (Files.exists(path) && !Files.isRegularFile(path)) {
        return new Unreadable("not a regular file");
      }
      if (Files.isSymbolicLink(path) && leadsOut(path)) {
        return new Unreadable("it is a link that leads out of the folders of the data");
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

  /**
   * Data lie in a folder for each route or kind, side by side: a link may lead to a neighbour, but
   * not out of what holds them all.
   */
  private static boolean leadsOut(Path link) throws IOException {
    Path all = above(above(link.toAbsolutePath().normalize()));
    return !link.toRealPath().startsWith(all.toRealPath());
  }

  /** The folder that holds it; the topmost folder is held by none. */
  private static Path above(Path path) {
    return Optional.ofNullable(path.getParent()).orElse(path);
  }
}
