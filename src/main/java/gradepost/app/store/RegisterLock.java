package gradepost.app.store;

import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.Turn;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;

/** A lock in the database of the register: freed when the connection ends. */
final class RegisterLock implements Lock {
  private final Turn turn;

  private RegisterLock(Turn turn) {
    this.turn = turn;
  }

  static Lock take(String url, String holder, Duration patience, Consumer<String> told)
      throws IOException {
    long end = System.nanoTime() + patience.toNanos();
    try {
      Optional<Turn> turn = Turn.tried(url, holder);
      if (turn.isEmpty() && !patience.isZero()) {
        told.accept(Lock.waiting(StoreText.THE_REGISTER, Turn.holder(url), patience));
      }
      while (turn.isEmpty()) {
        if (System.nanoTime() - end >= 0) {
          throw new Lock.Held(StoreText.THE_REGISTER, Turn.holder(url));
        }
        Lock.pause();
        turn = Turn.tried(url, holder);
      }
      return new RegisterLock(turn.get());
    } catch (RegisterException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  @Override
  public void require() {
    if (!turn.isHeld()) {
      throw new IllegalStateException("the lock was given back");
    }
  }

  @Override
  public void close() throws IOException {
    try {
      turn.close();
    } catch (RegisterException e) {
      throw new IOException(e.getMessage(), e);
    }
  }
}
