package gradepost.app.reissue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Changes;
import gradepost.app.store.Answer;
import gradepost.pack.TemporaryRestriction;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: an issue in whose files a notice is missing is refused, and the notice is named. */
class LostNoticesTest {
  @Test
  void aNoticeThatIsNotReadAgainIsNamed() throws Exception {
    List<TemporaryRestriction> all = Changes.valley().notices();
    Path file = Path.of("pack.yaml");
    assertThat(all).hasSizeGreaterThan(1);
    assertThat(NextIssue.lost(file, all, all)).isEmpty();
    List<TemporaryRestriction> but = all.subList(1, all.size());
    assertThat(NextIssue.lost(file, but, all)).isEmpty();
    Answer refused = NextIssue.lost(file, all, but).orElseThrow();
    assertThat(refused.good()).isFalse();
    assertThat(refused.problems().toString())
        .contains("pack.yaml: error: ", all.get(0).reference() + " would be lost");
  }
}
