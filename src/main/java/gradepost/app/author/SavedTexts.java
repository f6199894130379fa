package gradepost.app.author;

import gradepost.app.author.SavedText.How;
import gradepost.app.store.Digest;
import gradepost.app.store.FileInPlace;
import gradepost.source.file.FileNames;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Every text that was saved, in a hidden folder beside the data: each once, under its digest, and
 * for each file a list that only grows. A line that a killed process left unfinished counts for
 * nothing.
 */
final class SavedTexts {
  private static final String HIDDEN = ".gradepost";
  private static final int DIGITS = 12;
  private static final int PARTS = 4;
  private final Path folder;

  /**
   * @param data the folder of the data
   */
  SavedTexts(Path data) {
    this.folder = data.resolve(HIDDEN);
  }

  /** Keeps a text; gives its digest. */
  String keep(String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    String digest = Digest.of(bytes);
    Path file = place(digest);
    if (!Files.exists(file)) {
      folder("texts");
      new FileInPlace(file).put(bytes);
    }
    return digest;
  }

  /** A text that was kept; empty where no such text is. */
  Optional<String> text(String digest) throws IOException {
    if (!digest.matches("[0-9a-f]{64}") || !Files.isRegularFile(place(digest))) {
      return Optional.empty();
    }
    return Optional.of(Files.readString(place(digest)));
  }

  /** What lay in a file, the first first. */
  List<SavedText> of(String name) throws IOException {
    Path list = list(name);
    if (!Files.isRegularFile(list)) {
      return List.of();
    }
    List<SavedText> out = new ArrayList<>();
    for (String line : Files.readString(list).split("\n", -1)) {
      read(line).ifPresent(out::add);
    }
    return out;
  }

  private static Optional<SavedText> read(String line) {
    String[] parts = line.split("\t", -1);
    Optional<How> how =
        Arrays.stream(How.values())
            .filter(h -> parts.length == PARTS && h.name().equals(parts[2]))
            .findFirst();
    if (how.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new SavedText(LocalDateTime.parse(parts[0]), parts[1], how.get(), parts[3]));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /** Adds to the list of a file, and forces it to the disk. */
  void add(String name, SavedText saved) throws IOException {
    folder("saves");
    String by = saved.by().replaceAll("\\p{Cntrl}", " ");
    // Begins a line of its own, whatever a killed process left.
    String line =
        "\n%s\t%s\t%s\t%s\n".formatted(saved.when(), saved.digest(), saved.how().name(), by);
    try (FileChannel list =
        FileChannel.open(list(name), StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      ByteBuffer bytes = ByteBuffer.wrap(line.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        list.write(bytes);
      }
      list.force(true);
    }
  }

  private Path place(String digest) {
    return folder.resolve("texts").resolve(digest);
  }

  private Path list(String name) {
    String digest = Digest.of(name.getBytes(StandardCharsets.UTF_8)).substring(0, DIGITS);
    String called = FileNames.asName(FileNames.last(name));
    return folder.resolve("saves").resolve(called + "-" + digest);
  }

  /** What only its owner may read may lie here too: nobody else may look into it. */
  private void folder(String name) throws IOException {
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
        throw new FileSystemException(folder.toString(), null, "it is not a folder");
      }
      if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
        Files.createDirectory(
            folder,
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
      } else {
        Files.createDirectory(folder);
      }
    }
    Files.createDirectories(folder.resolve(name));
  }
}
