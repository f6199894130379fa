package gradepost.app.queue;

import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.util.Optional;

/** The issues that workers have still to make, counted over one connection as long as it lasts. */
final class Unmade implements AutoCloseable {
  private final String url;
  private Optional<Register> register = Optional.empty();

  /**
   * @param url of the register
   */
  Unmade(String url) {
    this.url = url;
  }

  /** How many they are; one where the database does not answer, since nobody knows better. */
  int count() {
    try {
      if (register.isEmpty()) {
        register = Optional.of(Register.again(url));
      }
      return register.get().jobs().waiting();
    } catch (RegisterException e) {
      close();
      return 1;
    }
  }

  @Override
  public void close() {
    try {
      if (register.isPresent()) {
        register.get().close();
      }
    } catch (RegisterException e) {
      // It is lost already: the next count begins another.
      return;
    } finally {
      register = Optional.empty();
    }
  }
}
