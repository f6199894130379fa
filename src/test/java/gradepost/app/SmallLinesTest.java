package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.store.Answer;
import gradepost.app.store.Progress;
import gradepost.source.file.FileKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: the small lines are read as they are meant, and all but one can be driven. */
@Tag("slow")
class SmallLinesTest {
  private static final Progress SILENT =
      new Progress() {
        @Override
        public void expect(int papers) {}

        @Override
        public void done(String paper) {}
      };

  @Test
  void theyHoldNoMistakeAndTheFindingsAreThoseThatAreMeant() {
    // Braked so early that the next brake is enough, a board is warned of too late.
    assertThat(rules("steep-terminal/pack.yaml"))
        .containsExactly("warning-late", "big-drop", "big-drop", "big-drop");
    assertThat(rules("falling-kilometres/pack.yaml")).hasSize(8).containsOnly("big-drop");
    // N 11 is warned of at 4m 66ch. Two cars with one isolated begin to brake before that, for the
    // next brake to be enough; four cars with one isolated begin after it.
    assertThat(rules("overlapping/pack.yaml"))
        .containsExactlyInAnyOrder(
            "big-drop",
            "big-drop",
            "big-drop",
            "big-drop",
            "big-drop",
            "mark-missing",
            "mark-missing",
            "mark-missing",
            "signal-spacing",
            "signal-spacing",
            "warning-late");
    assertThat(rules("long-train/pack.yaml"))
        .containsExactlyInAnyOrder(
            "mark-off-platform",
            "mark-off-platform",
            "mark-off-platform",
            "mark-missing",
            "platform-short",
            "platform-short");
    assertThat(rules("unbrakeable/pack-stronger.yaml")).isEmpty();
  }

  /** Those of the data; whether a braking point is found on every rail is the plan's business. */
  private static List<String> rules(String pack) {
    List<String> problems = new Check().of(List.of(SmallLines.FOLDER.resolve(pack))).problems();
    assertThat(problems).noneMatch(p -> p.contains(": error: "));
    return problems.stream()
        .filter(p -> p.contains(": warning: "))
        .map(p -> p.substring(p.lastIndexOf('[') + 1, p.lastIndexOf(']')))
        .filter(rule -> !rule.equals("no-braking-point"))
        .toList();
  }

  @Test
  void theirFilesFollowThePublishedSchemas() throws IOException {
    try (Stream<Path> files = Files.walk(SmallLines.FOLDER)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
        assertThat(SchemaTest.faults(file)).as(file.toString()).isEmpty();
        assertThat(FileKind.values())
            .as(file.toString())
            .anyMatch(k -> first(file).equals("gradepost: " + k.word()));
      }
    }
  }

  private static String first(Path file) {
    try {
      return Files.readAllLines(file).get(0);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void runFromTheirPrintedInstructionsTheyKeepTheRules() {
    assertThat(SmallLines.papers()).hasSize(15);
    for (SmallLines.Paper paper : SmallLines.papers()) {
      assertThat(paper.plan().failures()).as(paper.name()).isEmpty();
    }
  }

  /** In one message: which stop, why, and what would help; what would not is not told. */
  @Test
  void aStopThatCannotBeBrakedForIsRefusedInOneMessage(@TempDir Path folder) {
    Path pack = SmallLines.FOLDER.resolve("unbrakeable/pack.yaml");
    Answer answer =
        new Brief(Optional.empty(), Brief.Wish.PAPERS, SILENT).of(List.of(pack), folder);
    assertThat(answer.good()).isFalse();
    assertThat(answer.written()).isEmpty();
    assertThat(answer.problems().stream().filter(p -> !p.contains(": note: ")))
        .containsExactly(
            pack
                + ": error: Nettlecombe bank, Down, 4-car: the train cannot be braked for the stop"
                + " at Nettlecombe, platform 1 (2m 25ch). Its main application (48 psi) does not"
                + " slow it on 1 in 30 falling at 2m 18ch. What would help: a train with a stronger"
                + " brake");
  }
}
