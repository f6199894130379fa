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
        return new Unreadable(FileMistakes.A_FOLDER);
      }
      if (Files.exists(path) && !Files.isRegularFile(path)) {
        return new Unreadable(FileMistakes.NOT_A_REGULAR_FILE);
      }
      if (Files.isSymbolicLink(path) && leadsOut(path)) {
        return new Unreadable(FileMistakes.A_LINK_OUT);
      }
      try (InputStream in = Files.newInputStream(path)) {
        byte[] bytes = in.readNBytes(LARGEST_BYTES + 1);
        return bytes.length > LARGEST_BYTES
            ? new Unreadable(FileMistakes.TOO_LARGE)
            : new Bytes(bytes);
      }
    } catch (NoSuchFileException e) {
      return new Unreadable(FileMistakes.NO_SUCH_FILE);
    } catch (InvalidPathException e) {
      return new Unreadable(FileMistakes.NO_NAME_OF_A_FILE);
    } catch (IOException e) {
      return new Unreadable(FileMistakes.CANNOT_BE_OPENED);
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
