package gradepost.source.file;

import gradepost.yaml.YamlText;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/** Files of a disk, by names relative to a folder. */
public final class DiskFiles implements SourceFiles {
  /** A recorder writes some hundred lines for each second: this is a day of driving. */
  private static final int MOST_MB_RECORDED = 16;

  private final Path folder;

  public DiskFiles(Path folder) {
    this.folder = folder;
  }

  @Override
  public Content read(String name) {
    return read(name, YamlText.MOST_MB, DiskFiles::leadsOut);
  }

  @Override
  public Content recorded(String name) {
    return read(name, MOST_MB_RECORDED, DiskFiles::leadsOut);
  }

  /**
   * Links anywhere on the way must not lead out of the folder that holds the data. It is the one
   * above that of {@code by}, or a higher one if the name itself goes up so far.
   */
  @Override
  public Content namedBy(String by, String name) {
    return read(
        name,
        YamlText.MOST_MB,
        path -> {
          Path tree = held(folder.resolve(by));
          Path named = path.toAbsolutePath().normalize();
          while (!named.startsWith(tree)) {
            tree = above(tree);
          }
          // Who names a pack by a link to its folder means what lies in that folder.
          Path own = above(folder.resolve(by).toAbsolutePath());
          return !within(tree, path) && !within(own, path);
        });
  }

  /** Whether a link takes a path out of the data. */
  private interface Astray {
    boolean test(Path path) throws IOException;
  }

  private Content read(String name, int mostMb, Astray astray) {
    try {
      Path path = folder.resolve(name);
      if (Files.exists(path) && astray.test(path)) {
        return new Unreadable(FileMistakes.A_LINK_OUT);
      }
      return read(path, mostMb);
    } catch (InvalidPathException e) {
      return new Unreadable(FileMistakes.NO_NAME_OF_A_FILE);
    } catch (IOException e) {
      return new Unreadable(FileMistakes.CANNOT_BE_OPENED);
    }
  }

  private static Content read(Path path, int mostMb) throws IOException {
    if (Files.isDirectory(path)) {
      return new Unreadable(FileMistakes.A_FOLDER);
    }
    // A device has no end, and a pipe waits for somebody who writes.
    if (Files.exists(path) && !Files.isRegularFile(path)) {
      return new Unreadable(FileMistakes.NOT_A_REGULAR_FILE);
    }
    try (InputStream in = Files.newInputStream(path)) {
      int most = mostMb * 1_000_000;
      byte[] bytes = in.readNBytes(most + 1);
      return bytes.length > most
          ? new Unreadable(FileMistakes.TOO_LARGE.with(mostMb))
          : new Bytes(bytes);
    } catch (NoSuchFileException e) {
      return new Unreadable(FileMistakes.NO_SUCH_FILE);
    }
  }

  /**
   * Data lie in a folder for each route or kind, side by side: a link may lead to a neighbour, but
   * not out of what holds them all.
   */
  private static Path held(Path file) {
    return above(above(file.toAbsolutePath().normalize()));
  }

  private static boolean leadsOut(Path path) throws IOException {
    return Files.isSymbolicLink(path) && !within(held(path), path);
  }

  private static boolean within(Path tree, Path path) throws IOException {
    return path.toRealPath().startsWith(tree.toRealPath());
  }

  /** The folder that holds it; the topmost folder is held by none. */
  private static Path above(Path path) {
    return Optional.ofNullable(path.getParent()).orElse(path);
  }
}
