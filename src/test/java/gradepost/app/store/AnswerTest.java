package gradepost.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.source.file.FileMistakes;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Property: only so many problems are printed, and no number of notes hides one that needs an eye.
 */
class AnswerTest {
  private static Problem at(int line, Severity severity) {
    return new Problem(
        new SourcePosition("line/route.yaml", line, 1), severity, FileMistakes.NO_SUCH_FILE);
  }

  @Test
  void notesStandBehindAllThatNeedsAnEye() {
    List<Problem> all = new ArrayList<>();
    for (int line = 1; line <= Answer.PRINTED; line++) {
      all.add(at(line, Severity.NOTE));
    }
    all.add(at(70, Severity.WARNING));
    all.add(at(80, Severity.ERROR));
    Answer answer = Answer.of(new Problems(all));
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems()).hasSize(Answer.PRINTED + 2);
    assertThat(answer.problems().get(0)).startsWith("line/route.yaml:70:1: warning: ");
    assertThat(answer.problems().get(1)).startsWith("line/route.yaml:80:1: error: ");
    assertThat(answer.problems().get(2)).startsWith("line/route.yaml:1:1: note: ");
  }
}
