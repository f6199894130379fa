package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.app.Check;
import gradepost.app.store.Answer;
import gradepost.cli.terminal.Saying;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Regression: exit codes and the wording of mistakes. */
@Tag("slow")
class MainTest {
  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    return Main.run(new PrintWriter(out), new PrintWriter(err), args);
  }

  @Test
  void aMistakeInTheCommandIsTwo() {
    assertThat(run()).isEqualTo(2);
    assertThat(err.toString()).startsWith("A command is missing: brief, check, verify, ");
    assertThat(run("brief")).isEqualTo(2);
    assertThat(run("check")).isEqualTo(2);
    assertThat(run("breif", "x")).isEqualTo(2);
    assertThat(err.toString())
        .contains("there is no command \"breif\"; allowed: ", "\n  Maybe brief\n");
    assertThat(run("new", "pack", "a.yaml", "b.yaml")).isEqualTo(2);
    assertThat(err.toString()).contains("\"b.yaml\" is one word too many; allowed: words with sp");
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void helpAndVersionAreGood() {
    assertThat(run("--help")).isZero();
    assertThat(out.toString()).contains("brief", "check", "Exit codes:", "A training aid");
    assertThat(run("brief", "--help")).isZero();
    assertThat(out.toString()).contains("--out=DIR", "--json", "--templates=DIR");
    assertThat(run("--version")).isZero();
    assertThat(out.toString()).contains("gradepost ");
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void dataThatCannotBeUsedIsOneAndWritesNothing() throws IOException {
    Path pack = Files.writeString(folder.resolve("pack-x.yaml"), "gradepost: pack\n");
    Path papers = folder.resolve("papers");
    assertThat(run("brief", pack.toString(), "--out", papers.toString())).isEqualTo(1);
    assertThat(err.toString()).contains("pack-x.yaml:", "error: ");
    assertThat(papers).doesNotExist();
    assertThat(run("check", pack.toString())).isEqualTo(1);
  }

  @Test
  void aFolderWithoutPacksSaysSo() {
    assertThat(run("brief", folder.toString())).isEqualTo(1);
    assertThat(err.toString())
        .isEqualTo(folder + ": error: no pack below this folder; a pack is a file pack-….yaml\n");
    assertThat(out.toString()).isEmpty();
  }

  /**
   * It is an invented survey, and not one of every cue: that much is said of it. The command prints
   * no more than fifty; so all are taken from the answer.
   */
  @Test
  void theDemoDataAreWithoutFaultAndWantNothingButCues() {
    boolean all = Examples.of(0, 1) == 1;
    Path data = Path.of(all ? "routes" : "routes/ormel-coast");
    Answer answer = new Check().of(List.of(data));
    assertThat(answer.problems())
        .isNotEmpty()
        .allMatch(problem -> problem.contains(": note: ") && problem.endsWith(" [cue-missing]"));
    CommandLine check = new CommandLine(new CheckCommand());
    check.setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    assertThat(Saying.exitCode(check.getCommandSpec(), answer)).isZero();
    assertThat(out.toString())
        .isEqualTo(all ? "10 files checked, notes only\n" : "3 files checked, notes only\n");
  }

  @Test
  void aFaultOfAFileThatTwoPacksNameIsToldOnceAndFiftyAreEnough() throws IOException {
    StringBuilder stock = new StringBuilder("gradepost: stock\n");
    for (int i = 0; i < 60; i++) {
      stock.append("unheard-of-").append(i).append(": 1\n");
    }
    Files.writeString(folder.resolve("stock.yaml"), stock);
    for (String name : new String[] {"pack-a.yaml", "pack-b.yaml"}) {
      Files.writeString(folder.resolve(name), "gradepost: pack\nstock: stock.yaml\n");
    }
    assertThat(run("brief", folder.toString())).isEqualTo(1);
    List<String> lines = err.toString().lines().filter(line -> !line.startsWith("  ")).toList();
    assertThat(lines).hasSize(51).doesNotHaveDuplicates();
    assertThat(lines.get(50)).matches("and \\d+ more");
  }
}
