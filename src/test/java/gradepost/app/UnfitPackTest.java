package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.issue.Failures;
import gradepost.app.issue.Task;
import gradepost.app.store.Answer;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Progress;
import gradepost.app.store.Unplanned;
import gradepost.motion.NoEnd;
import gradepost.source.Frozen;
import gradepost.source.file.FileKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a train that cannot be driven as planned has no paper, and it is said why. */
@Tag("slow")
class UnfitPackTest {
  @TempDir Path folder;

  private Path pack(String force) throws IOException {
    Path pack = folder.resolve("pack.yaml");
    assertThat(new NewFile().of(FileKind.PACK, pack).good()).isTrue();
    Path stock = folder.resolve("stock.yaml");
    String text = Files.readString(stock);
    assertThat(text).contains("force: 28 kN");
    Files.writeString(stock, text.replace("force: 28 kN", "force: " + force));
    return pack;
  }

  private static Answer brief(Path pack, Path out) {
    Progress silent =
        new Progress() {
          @Override
          public void expect(int papers) {}

          @Override
          public void done(String paper) {}
        };
    return new Brief(Optional.empty(), Brief.Wish.PAPERS, silent).of(List.of(pack), out);
  }

  /**
   * By hand: 81 t on 1 in 200 rising, where the Up train starts, are 81 000 · 9.80665 / 200 = 3972
   * N, and 14 N/t are 1134 N: 5.11 kN. The Down train starts on the level.
   */
  @Test
  void nothingIsWrittenForATrainThatCannotStart() throws IOException {
    Path pack = pack("5.0 kN");
    Path out = folder.resolve("out");
    Answer answer = brief(pack, out);
    assertThat(answer.good()).isFalse();
    assertThat(answer.written()).isEmpty();
    assertThat(out).doesNotExist();
    assertThat(answer.problems())
        .anyMatch(
            p ->
                p.startsWith(pack + ": error: Starting line, Up, 2-car: ") && p.contains("stalls"));
    assertThat(new Check().of(List.of(pack)).problems())
        .anyMatch(
            p ->
                p.startsWith(pack + ":1:1: error: Starting line, Up, 2-car: ")
                    && p.contains("stalls"));
  }

  @Test
  void oneThatJustStartsHasItsPapers() throws IOException {
    Path pack = pack("5.2 kN");
    Answer answer = brief(pack, folder.resolve("out"));
    assertThat(answer.problems()).noneMatch(p -> p.contains(": error: "));
    assertThat(answer.written()).hasSizeGreaterThanOrEqualTo(2);
  }

  @Test
  void aRunThatComesToNoEndNamesItsPaper() {
    Task task = Task.of(Frozen.valley()).get(0);
    assertThat(Failures.of(task, new NoEnd("after 3 steps")).what())
        .isEqualTo(
            "Thrumble Valley, stopping trains, Down, 4-car:"
                + " the run cannot be computed from these data: after 3 steps");
    assertThat(IoErrorText.inWords(new Unplanned("pack.yaml: error: so", new NoEnd("why"))))
        .isEqualTo("pack.yaml: error: so");
  }
}
