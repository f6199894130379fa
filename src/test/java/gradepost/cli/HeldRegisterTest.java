package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.store.Lock;
import gradepost.app.store.Store;
import gradepost.reissue.register.Register;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: whoever finds the register held is told at once by whom, and then gets his turn. */
class HeldRegisterTest {
  @TempDir Path folder;

  @Test
  void whoHoldsItAndHowLongItIsWaitedForIsSaidBeforeTheWait() throws Exception {
    String file = folder.resolve("register.db").toString();
    Register.open("jdbc:sqlite:" + file).close();
    Process holder = RegisterHolder.start(file);
    StringWriter out = new StringWriter();
    StringWriter err =
        new StringWriter() {
          @Override
          public void flush() {
            // The holder lets go only because this was said: else the command would give up.
            if (toString().contains("\n")) {
              letGo(holder);
            }
          }
        };
    int code;
    try {
      code =
          Main.run(
              new PrintWriter(out), new PrintWriter(err), "register", "out", "--register", file);
    } finally {
      letGo(holder);
    }
    assertThat(code).as(err::toString).isZero();
    assertThat(out.toString()).isEqualTo("NONE\n");
    List<String> lines = err.toString().lines().toList();
    assertThat(lines).isNotEmpty();
    assertThat(lines.get(0))
        .isIn(
            Files.isReadable(Path.of("/proc/locks"))
                ? List.of(
                    "the register is held by java (process %d) of %s: it is waited for, up to 10 s"
                        .formatted(holder.pid(), System.getProperty("user.name")))
                : List.of("another program holds the register: it is waited for, up to 10 s"));
    assertThat(holder.waitFor()).isZero();
  }

  @Test
  void whoIsAtWorkIsSaidBeforeAnotherRunWaitsForHim() throws Exception {
    String file = folder.resolve("register.db").toString();
    Register.open("jdbc:sqlite:" + file).close();
    Store store = Store.of(file, Optional.empty());
    StringWriter out = new StringWriter();
    Lock turn = store.take("B Clerk (process 1) since noon", Duration.ZERO);
    AtomicBoolean held = new AtomicBoolean(true);
    StringWriter err =
        new StringWriter() {
          @Override
          public void flush() {
            if (toString().contains("\n") && held.getAndSet(false)) {
              letGo(turn);
            }
          }
        };
    String[] backup = {
      "register", "backup", folder.resolve("backup.zip").toString(), "--register", file
    };
    int code = Main.run(new PrintWriter(out), new PrintWriter(err), backup);
    assertThat(code).as(err::toString).isZero();
    assertThat(held).isFalse();
    assertThat(err.toString())
        .startsWith(
            store.lock() + " is held by B Clerk (process 1) since noon: it is waited for, up to ");
    assertThat(out.toString()).contains("wrote ");
  }

  private static void letGo(Lock lock) {
    try {
      lock.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void letGo(Process holder) {
    try {
      holder.getOutputStream().close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
