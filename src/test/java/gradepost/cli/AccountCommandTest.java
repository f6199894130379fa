package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Accounts as they are kept at the command line. */
class AccountCommandTest {
  @TempDir private Path folder = Path.of("");
  private String said = "";
  private String wrong = "";

  private int gp(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    List<String> all = new ArrayList<>(List.of("account"));
    all.addAll(List.of(args));
    all.addAll(List.of("--register", folder.resolve("register.db").toString(), "--by", "The Boss"));
    int code =
        Main.run(
            new PrintWriter(out, true), new PrintWriter(err, true), all.toArray(new String[0]));
    said = out.toString();
    wrong = err.toString();
    return code;
  }

  @Test
  void aPasswordIsSaidOnceAndNeverListed() {
    assertThat(gp("add", "R Clerk", "--role", "clerk")).isZero();
    assertThat(said)
        .contains("R Clerk added")
        .containsPattern("first password: ([a-z2-9]{5}-?){4}");
    String password = said.replaceFirst("(?s).*first password: (\\S+).*", "$1");
    assertThat(gp("add", "r clerk", "--role", "learner")).isEqualTo(1);
    assertThat(wrong)
        .contains("already has an account")
        .doesNotContainPattern("first password: [a-z2-9]{5}-");
    assertThat(gp("list")).isZero();
    assertThat(said).contains("R Clerk", "clerk", "first password").doesNotContain(password);
    assertThat(gp("reset", "R Clerk")).isZero();
    assertThat(said).contains("first password: ").doesNotContain(password);
    assertThat(gp("sign-out", "R Clerk")).isZero();
    assertThat(gp("shut", "R Clerk")).isZero();
    assertThat(gp("list")).isZero();
    assertThat(said).contains("shut");
  }

  @Test
  void whatCannotBeIsTold() {
    assertThat(gp("add", "R Clerk", "--role", "boss")).isEqualTo(2);
    assertThat(wrong).contains("CLERK, INSTRUCTOR, LEARNER");
    assertThat(gp("add", "R Clerk")).isEqualTo(2);
    assertThat(gp("reset", "Nobody")).isEqualTo(1);
    assertThat(wrong).contains("Nobody has no account");
  }
}
