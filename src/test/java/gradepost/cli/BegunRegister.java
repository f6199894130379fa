package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.SyntheticNetwork;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A register with two packs, copied for each test, and a clerk with a clock. */
abstract class BegunRegister {
  @TempDir static Path begun;
  @TempDir Path folder;
  String err = "";
  Clock clock = Clock.system(ZoneId.systemDefault());

  /** One register with two packs, copied for each test. */
  @BeforeAll
  static void enter() throws Exception {
    Path routes = begun.resolve("routes");
    new SyntheticNetwork(routes, 2).packs(2, 7);
    StringWriter told = new StringWriter();
    int code =
        Main.run(
            new PrintWriter(told),
            new PrintWriter(told),
            "register",
            "enter",
            routes.toString(),
            "--by",
            "Ash",
            "--depot",
            "North",
            "--out",
            begun.resolve("papers").toString(),
            "--register",
            begun.resolve("reg/register.db").toString());
    assertThat(code).as(told::toString).isZero();
  }

  @AfterAll
  static void nothingElseWasChanged() {
    assertThat(begun.resolve("papers/0000-issue-1")).isDirectory();
  }

  @BeforeEach
  void copy() throws Exception {
    Files.createDirectories(folder.resolve("reg"));
    Files.copy(begun.resolve("reg/register.db"), folder.resolve("reg/register.db"));
  }

  /** Types a command of the register that ends with this code; gives what it prints. */
  String run(int code, String... words) {
    StringWriter out = new StringWriter();
    StringWriter told = new StringWriter();
    List<String> args = new ArrayList<>(List.of("register"));
    args.addAll(List.of(words));
    args.addAll(List.of("--register", folder.resolve("reg/register.db").toString()));
    args.addAll(List.of("--archive", begun.resolve("reg/archive").toString()));
    int done =
        Main.run(clock, new PrintWriter(out), new PrintWriter(told), args.toArray(new String[0]));
    err = told.toString();
    assertThat(done).as(() -> String.join(" ", words) + ": " + out + err).isEqualTo(code);
    return out.toString();
  }

  Path table(String text) throws Exception {
    return Files.writeString(folder.resolve("table.csv"), text);
  }

  String batch(int code, String act, String text) throws Exception {
    return run(code, "batch", act, table(text).toString());
  }

  static String entry(List<String> log, String what) {
    return log.stream()
        .filter(l -> l.contains("," + what + ","))
        .findFirst()
        .map(l -> l.split(" ", -1)[0])
        .orElseThrow();
  }
}
