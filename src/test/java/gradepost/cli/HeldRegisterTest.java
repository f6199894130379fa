package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.reissue.register.Register;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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

  private static void letGo(Process holder) {
    try {
      holder.getOutputStream().close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
