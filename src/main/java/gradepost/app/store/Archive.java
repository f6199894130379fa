package gradepost.app.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Files by the digest of their content. A file is written beside its place, forced to the disk, and
 * then moved there: under its name it is whole or absent. Nothing is ever changed or taken away.
 */
public final class Archive {
  private final Path folder;

  public Archive(Path folder) {
    this.folder = folder;
  }

  /** Keeps a content and says under which digest. */
  public String keep(byte[] bytes) throws IOException {
    String digest = Digest.of(bytes);
    Path place = place(digest);
    if (!Files.exists(place) || !Digest.of(Files.readAllBytes(place)).equals(digest)) {
      Path shelf = Files.createDirectories(folder.resolve(digest.substring(0, 2)));
      Part part = Part.beside(place);
      try {
        part.write(bytes);
        part.become(place);
        force(shelf);
      } finally {
        part.drop();
      }
    }
    return digest;
  }

  /** The entry of a moved file is in its folder, which has to reach the disk as well. */
  static void force(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Not every file system lets a folder be forced; the move itself has been made.
      return;
    }
  }

  /** The content; empty where it is not there or is not what its digest says. */
  public Optional<byte[]> read(String digest) throws IOException {
    try {
      byte[] bytes = Files.readAllBytes(place(digest));
      return Digest.of(bytes).equals(digest) ? Optional.of(bytes) : Optional.empty();
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }

  /**
   * Takes away what a killed run left unfinished.
   *
   * @param lock held, so that no other run is at work
   */
  public void tidy(Lock lock) throws IOException {
    lock.require();
    Files.createDirectories(folder);
    try (Stream<Path> shelves = Files.list(folder)) {
      for (Path shelf : shelves.filter(Files::isDirectory).toList()) {
        for (Path part : parts(shelf)) {
          Files.deleteIfExists(part);
        }
      }
    }
  }

  private static List<Path> parts(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(Part::is).toList();
    }
  }

  /** The folder that it lies in. */
  public Path folder() {
    return folder;
  }

  /** Where a content lies, if it is there. */
  public Path place(String digest) {
    return folder.resolve(digest.substring(0, 2)).resolve(digest);
  }
}
