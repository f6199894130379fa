package gradepost.app.store;

import gradepost.reissue.register.Register.By;
import gradepost.units.MomentStyle;
import java.io.IOException;
import java.time.Duration;

/** Keeps two runs apart. It is freed when its holder ends, however he ends. */
public interface Lock extends AutoCloseable {

  /** Someone else has it. */
  final class Held extends IOException {
    private static final long serialVersionUID = 1L;

    Held(String lock, String holder) {
      super(StoreText.HELD.with(lock, holder).inWords());
    }
  }

  /** Who takes it, in words: this process, for somebody. */
  static String holder(By by) {
    return "%s (process %d) since %s"
        .formatted(by.who(), ProcessHandle.current().pid(), MomentStyle.MOMENT.format(by.when()));
  }

  /**
   * What is said before a lock is waited for.
   *
   * @param holder who has it, in words; blank where that is not known
   */
  static String waiting(String lock, String holder, Duration patience) {
    return StoreText.WAITING.of(new StoreText.Wait(lock, holder, patience));
  }

  /** Throws where the lock was given back: what needs it must not go on. */
  void require();

  @Override
  void close() throws IOException;

  /** A moment, before it is tried again. */
  static void pause() throws IOException {
    try {
      Thread.sleep(50);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("stopped while waiting for the lock", e);
    }
  }
}
