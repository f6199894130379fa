package gradepost.briefing.line;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Messages;
import gradepost.briefing.Table;
import gradepost.briefing.word.NoticeWords;
import gradepost.briefing.word.Words;
import gradepost.route.place.Direction;
import gradepost.source.Fixture;
import gradepost.source.pack.PackFile;
import gradepost.task.Assignment;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Regression: the table of restrictions holds all that their notices say. */
class NoticesInFullTest {
  private static final PackFile PACK =
      Fixture.good().sources().pack(Fixture.PACK).found().orElseThrow();
  private static final Assignment DOWN =
      PACK.assignment(PACK.directions().get(0), PACK.formations().get(0));
  private static final Words WORDS = new Words(Messages.english(), DOWN.path());

  @Test
  void aNoticeIsToldInFull() {
    Table table = new SpeedTables(DOWN, new Lineside(DOWN, WORDS)).temporary("p1");
    List<List<String>> cells =
        table.rows().get(0).cells().stream()
            .map(c -> List.of(c.replace('\u00a0', ' ').split("\n", -1)))
            .toList();
    assertThat(cells.get(0))
        .containsExactly(
            "T 26/104",
            "temporary, in force",
            "by notice office",
            "issued 2026-11-09 12:00",
            "first in 45",
            "last in 47");
    assertThat(cells.get(1))
        .hasSize(4)
        .startsWith("1m 75ch to 12m 10ch")
        .endsWith("between Top and Mill", "from WL 12 to Millbeck Junction");
    assertThat(cells.get(2)).containsExactly("20 (MU 25) (normal 50 mph)");
    assertThat(cells.get(3))
        .containsExactly("2026-11-10 04:00 to", "2027-01-15 04:00", "between 22:00 and 05:30");
    assertThat(cells.get(4)).containsExactly("warning board 1m 45ch", "AWS: magnets suppressed");
    assertThat(cells.get(5)).containsExactly("slip");
  }

  @Test
  void theEndThatIsMetFirstIsToldFirst() {
    assertThat(new NoticeWords(WORDS, Direction.BACKWARD).where(PACK.notices().get(0)))
        .containsExactly("between Top and Mill", "from Millbeck Junction to WL 12");
  }
}
