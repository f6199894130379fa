package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import gradepost.app.Changes;
import gradepost.briefing.Briefing;
import gradepost.briefing.Cover;
import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: what concerns one direction or formation alone stands on its own papers only. */
@Tag("slow")
class OwnPaperTest {
  @Test
  void itemsAndAcceptedFindingsStandWhereTheyBelong() throws Exception {
    List<Briefing> papers =
        new DifferenceFinder(Messages.english())
            .of(Path.of("pack-thrumble.yaml"), Changes.valley(), Optional.empty()).papers().stream()
                .map(Differences.OfPaper::briefing)
                .toList();
    assertThat(papers).hasSize(4);
    for (Briefing paper : papers) {
      boolean down = paper.cover().heading().contains("Down");
      String own = paper.cover().heading().contains("4-car") ? "4-car" : "8-car";
      assertThat(paper.cover().highRisk()).allMatch(r -> !r.place().isEmpty());
      assertThat(paper.cover().highRisk().stream().map(Cover.Risk::item))
          .contains("Ferrow Junction: 20 mph on a check-railed curve of 9.5 chains.")
          .hasSize(down && own.equals("8-car") ? 3 : 2)
          .anyMatch(i -> i.contains(down ? "60 to 20 mph" : "comes late"))
          .noneMatch(i -> i.contains(down ? "comes late" : "60 to 20 mph"))
          .noneMatch(i -> i.startsWith("Sallowdene Halt") && own.equals("4-car"));
      assertThat(
              paper.parts().get(0).tables().stream()
                  .filter(t -> t.name().equals("withdrawn"))
                  .flatMap(t -> t.rows().stream())
                  .map(r -> r.cells().get(0)))
          .as("withdrawn, of Down lines")
          .containsExactlyElementsOf(down ? List.of("T 26/098") : List.of());
      assertThat(
              paper.parts().get(0).approaches().stream()
                  .filter(a -> a.title().startsWith("T 26/104"))
                  .map(a -> a.target()))
          .singleElement()
          .asString()
          .endsWith(", notice T 26/104. End date: first page.");
      assertThat(paper.cover().restrictions())
          .extracting(Fact::label, Fact::value)
          .containsExactly(
              tuple(
                  "T 26/104",
                  down
                      ? "20 mph, 13m 20ch to 13m 04ch, until 2027-01-15 04:00"
                      : "20 mph, 13m 04ch to 13m 20ch, until 2027-01-15 04:00"));
      List<String> accepted =
          paper.parts().get(0).answeredFor().stream()
              .filter(n -> n.startsWith("Accepted by "))
              .toList();
      assertThat(accepted)
          .allMatch(a -> a.contains(": " + own + ", " + (down ? "Down" : "Up") + ": "))
          .hasSize(own.equals("8-car") ? (down ? 0 : 1) : (down ? 1 : 2));
    }
  }
}
