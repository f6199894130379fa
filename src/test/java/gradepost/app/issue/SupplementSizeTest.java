package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Changes;
import gradepost.app.issue.Differences.OfPaper;
import gradepost.app.store.Disk;
import gradepost.briefing.Messages;
import gradepost.briefing.reissue.ReissuePapers.Aged;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What one new restriction costs, wherever it lies: at most six sheets of each paper. */
@Tag("long")
class SupplementSizeTest extends Changes {
  private static final int MOST_SHEETS = 6;

  @Test
  void aNewRestrictionCostsAtMostSixSheetsAPaper() throws Exception {
    PackFile before = valley();
    DifferenceFinder finder = new DifferenceFinder(Messages.english());
    Differences first = FrozenIssue.first();
    for (String where :
        List.of(
            "from: 2m 30ch, to: 2m 40ch, lines: [Down Main, Up Main]",
            "from: 4m 15ch, to: 4m 25ch, lines: [Down Main, Up Main]",
            "from: 5m 05ch, to: 5m 12ch, lines: [Down Main, Up Main]",
            "from: 6m 05ch, to: 6m 15ch, lines: [Single]",
            "from: 14m 10ch, to: 14m 05ch, lines: [Single]",
            "from: 12m 60ch, to: 12m 50ch, lines: [Single]",
            "from: 11m 60ch, to: 11m 50ch, lines: [Down Main, Up Main]",
            "from: 0m 30ch, to: 0m 40ch, lines: [Down Harbour, Up Harbour]")) {
      PackFile after =
          with(
              numbered(before, before.issue().number() + 1),
              "status: in force, reference: T 26/200, speed: 20 mph, normal-speed: 40 mph,"
                  + " reason: wet bed, boards: [], "
                  + where);
      Differences now =
          finder.of(FrozenIssue.FILE, after, Optional.of(new LastIssue(before, first.sheets())));
      assertThat(now.papers()).hasSize(4);
      for (OfPaper paper : now.papers()) {
        List<String> changed =
            paper.sheets().stream()
                .filter(s -> s.since() == after.issue().number())
                .map(Aged::title)
                .toList();
        assertThat(changed)
            .as("%s, %s", where, paper.task().stem())
            .hasSizeBetween(3, MOST_SHEETS)
            .anyMatch(t -> t.startsWith("T 26/200"));
      }
    }
  }

  private static PackFile numbered(PackFile pack, int number) {
    List<Input> inputs = new ArrayList<>(pack.inputs());
    String text = new String(inputs.get(0).bytes(), StandardCharsets.UTF_8);
    text = text.replaceFirst("\\n  number: \\d+\\n", "\n  number: " + number + "\n");
    inputs.set(0, new Input(inputs.get(0).name(), text.getBytes(StandardCharsets.UTF_8)));
    return good(Disk.sources().pack(inputs));
  }
}
