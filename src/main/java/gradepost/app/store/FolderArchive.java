package gradepost.app.store;

import java.io.IOException;
import java.io.UncheckedIOException;
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
final class FolderArchive implements Archive {
  private final Path folder;

  FolderArchive(Path folder) {
    this.folder = folder;
  }

  @Override
  public String keep(byte[] bytes) throws IOException {
    String digest = Digest.of(bytes);
    Path place = file(digest);
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

  @Override
  public Optional<byte[]> read(String digest) throws IOException {
    try {
      byte[] bytes = Files.readAllBytes(file(digest));
      return Digest.of(bytes).equals(digest) ? Optional.of(bytes) : Optional.empty();
    } catch (NoSuchFileException e) {
      return Optional.empty();
    }
  }

  @Override
  public void remove(String digest) throws IOException {
    Files.deleteIfExists(file(digest));
  }

  @Override
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

  @Override
  public List<String> digests() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.walk(folder, 2)) {
      return files
          .filter(Files::isRegularFile)
          .map(f -> String.valueOf(f.getFileName()))
          .filter(name -> name.matches("[0-9a-f]{64}"))
          .sorted()
          .toList();
    } catch (UncheckedIOException e) {
      throw Optional.ofNullable(e.getCause()).orElseThrow(() -> e);
    }
  }

  @Override
  public String where() {
    return folder.toString();
  }

  @Override
  public String place(String digest) {
    return file(digest).toString();
  }

  private Path file(String digest) {
    return folder.resolve(digest.substring(0, 2)).resolve(digest);
  }
}
