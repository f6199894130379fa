package gradepost.app.store;

import gradepost.reissue.register.Register.By;
import gradepost.units.MomentStyle;
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

/**
 * Keeps two runs apart. The operating system frees it when its holder ends, however he ends; who he
 * is stands in the file.
 */
public final class Lock implements AutoCloseable {
  private static final long STEP_MS = 50;
  private final FileChannel channel;
  private final FileLock lock;

  private Lock(FileChannel channel, FileLock lock) {
    this.channel = channel;
    this.lock = lock;
  }

  /** Someone else has it. */
  static final class Held extends IOException {
    private static final long serialVersionUID = 1L;

    Held(Path file, String holder) {
      super(
          file
              + " is held by "
              + (holder.isBlank() ? "another process" : holder)
              + "; nothing was done\n  Maybe wait with --wait SECONDS");
    }
  }

  /** Who takes it, in words: this process, for somebody. */
  public static String holder(By by) {
    return "%s (process %d) since %s"
        .formatted(by.who(), ProcessHandle.current().pid(), MomentStyle.MOMENT.format(by.when()));
  }

  /**
   * Takes the lock, or waits so long for it.
   *
   * @param holder who takes it, in words, for whoever finds it taken
   */
  public static Lock take(Path file, String holder, Duration patience) throws IOException {
    Files.createDirectories(Disk.folder(file));
    FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.READ);
    boolean taken = false;
    try {
      long end = System.nanoTime() + patience.toNanos();
      Optional<FileLock> lock = tried(channel);
      while (lock.isEmpty()) {
        if (System.nanoTime() - end >= 0) {
          throw new Held(file, Files.readString(file).strip());
        }
        pause();
        lock = tried(channel);
      }
      channel.truncate(0);
      channel.write(ByteBuffer.wrap((holder + "\n").getBytes(StandardCharsets.UTF_8)), 0);
      taken = true;
      return new Lock(channel, lock.get());
    } finally {
      if (!taken) {
        channel.close();
      }
    }
  }

  private static void pause() throws IOException {
    try {
      Thread.sleep(STEP_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("stopped while waiting for the lock", e);
    }
  }

  private static Optional<FileLock> tried(FileChannel channel) throws IOException {
    try {
      return Optional.ofNullable(channel.tryLock());
    } catch (OverlappingFileLockException e) {
      return Optional.empty();
    }
  }

  /** Throws where the lock was given back: what needs it must not go on. */
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
