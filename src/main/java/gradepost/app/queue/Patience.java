package gradepost.app.queue;

import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.time.Duration;

/** Tries again for a while where the database does not answer: it may be starting. */
final class Patience {
  private static final Duration LONGEST = Duration.ofSeconds(30);

  /** What is tried. */
  interface Work {
    void done() throws RegisterException;
  }

  /**
   * Does it as soon as it can be done.
   *
   * @throws RegisterException where it cannot, after half a minute or for another reason
   */
  static void until(Work work) throws RegisterException, IOException {
    long end = System.nanoTime() + LONGEST.toNanos();
    while (true) {
      try {
        work.done();
        return;
      } catch (RegisterException e) {
        if (!e.isAway() || System.nanoTime() - end >= 0) {
          throw e;
        }
      }
      Queue.pause(0);
    }
  }

  private Patience() {}
}
