package gradepost.app.store;

import gradepost.source.file.LineEnds;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.util.Optional;

/**
 * A file of the clerk's, written anew in its place. It stays his: who may read and write it, its
 * group, the ends of its lines, and where it is a link, that it is one.
 */
public final class FileInPlace {
  private final Path file;

  /** A file that is there, or that will be. */
  public FileInPlace(Path file) {
    this.file = file;
  }

  /** Puts a text there, whole or not at all. */
  public void put(byte[] text) throws IOException {
    Path target = Files.exists(file) ? file.toRealPath() : Disk.absolute(file);
    boolean there = Files.exists(target);
    byte[] bytes = there ? LineEnds.as(Files.readAllBytes(target), text) : text;
    Part part = Part.beside(target);
    try {
      part.write(bytes);
      if (there) {
        likewise(target, part.file());
      }
      part.become(target);
    } finally {
      part.drop();
    }
  }

  /** What the old file allows, the new one allows. A group that is not ours cannot be given. */
  private static void likewise(Path old, Path fresh) throws IOException {
    Optional<PosixFileAttributeView> to =
        Optional.ofNullable(Files.getFileAttributeView(fresh, PosixFileAttributeView.class));
    if (to.isPresent()) {
      PosixFileAttributes from =
          Files.readAttributes(old, PosixFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      try {
        to.get().setGroup(from.group());
      } catch (IOException e) {
        // The rights count for our own group then.
        to.get().setPermissions(from.permissions());
        return;
      }
      to.get().setPermissions(from.permissions());
    }
  }

  /** Whether it says the same as this, whatever the ends of its lines. */
  public boolean says(byte[] text) throws IOException {
    return Files.isRegularFile(file) && LineEnds.same(Files.readAllBytes(file), text);
  }
}
