package gradepost.app.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;

/** A lock by a file: the operating system frees it; who has it stands in the file. */
final class FolderLock implements Lock {
  private final FileChannel channel;
  private final FileLock lock;

  private FolderLock(FileChannel channel, FileLock lock) {
    this.channel = channel;
    this.lock = lock;
  }

  /**
   * Takes the lock, or waits so long for it.
   *
   * @param holder who takes it, in words, for whoever finds it taken
   * @param told is told who has it, before it is waited for
   */
  static Lock take(Path file, String holder, Duration patience, Consumer<String> told)
      throws IOException {
    Files.createDirectories(Disk.folder(file));
    FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.READ);
    boolean taken = false;
    try {
      long end = System.nanoTime() + patience.toNanos();
      Optional<FileLock> lock = tried(channel);
      if (lock.isEmpty() && !patience.isZero()) {
        told.accept(Lock.waiting(file.toString(), Files.readString(file).strip(), patience));
      }
      while (lock.isEmpty()) {
        if (System.nanoTime() - end >= 0) {
          throw new Lock.Held(file.toString(), Files.readString(file).strip());
        }
        Lock.pause();
        lock = tried(channel);
      }
      channel.truncate(0);
      channel.write(ByteBuffer.wrap((holder + "\n").getBytes(StandardCharsets.UTF_8)), 0);
      taken = true;
      return new FolderLock(channel, lock.get());
    } finally {
      if (!taken) {
        channel.close();
      }
    }
  }

  private static Optional<FileLock> tried(FileChannel channel) throws IOException {
    try {
      return Optional.ofNullable(channel.tryLock());
    } catch (OverlappingFileLockException e) {
      return Optional.empty();
    }
  }

  @Override
  public void require() {
    if (!lock.isValid()) {
      throw new IllegalStateException("the lock was given back");
    }
  }

  @Override
  public void close() throws IOException {
    channel.truncate(0);
    lock.release();
    channel.close();
  }
}
