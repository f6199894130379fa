package gradepost.app.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * A file that is written beside its place and moved there when it is whole. Who may read it is what
 * the user's files usually allow. Its name tells it from every file of the user's own, so that what
 * a killed run left can be taken away.
 */
final class Part {
  private static final String END = ".gradepost-part";
  private static final Pattern NAME = Pattern.compile("\\.(.+)-[0-9a-f]{12}" + Pattern.quote(END));
  private final Path file;

  private Part(Path file) {
    this.file = file;
  }

  /** A new one for a place, not yet written. */
  static Part beside(Path place) {
    return new Part(place.resolveSibling(name(String.valueOf(place.getFileName()))));
  }

  /** A name for what will be called {@code name}. */
  static String name(String name) {
    String once = UUID.randomUUID().toString();
    return "." + name + "-" + once.substring(once.length() - 12) + END;
  }

  /** Whether a file or folder is an unfinished one of that name. */
  static boolean of(String name, Path file) {
    var matcher = NAME.matcher(String.valueOf(file.getFileName()));
    return matcher.matches() && matcher.group(1).equals(name);
  }

  /** Whether a file or folder is an unfinished one of any name. */
  static boolean is(Path file) {
    return NAME.matcher(String.valueOf(file.getFileName())).matches();
  }

  Path file() {
    return file;
  }

  /** Writes and forces to the disk: what is moved into place afterwards is whole. */
  void write(byte[] bytes) throws IOException {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW)) {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      while (buffer.hasRemaining()) {
        channel.write(buffer);
      }
      channel.force(true);
    } catch (FileSystemException e) {
      throw e;
    } catch (IOException e) {
      // What comes from writing does not say of which file.
      throw new FileSystemException(file.toString(), null, e.getMessage());
    }
  }

  /** Moves it into place, over what is there. */
  void become(Path place) throws IOException {
    try {
      Files.move(file, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(file, place, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Takes it away where it is still there. */
  void drop() throws IOException {
    Files.deleteIfExists(file);
  }
}
