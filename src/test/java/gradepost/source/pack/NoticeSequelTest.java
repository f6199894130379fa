package gradepost.source.pack;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.pack.TemporaryRestriction;
import gradepost.source.Fixture;
import gradepost.yaml.Reading;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: what a notice leaves open beside the restriction that it goes on from is asked. */
class NoticeSequelTest {
  private static final String NAME = "n.yaml";
  private static final String EASED =
      "gradepost: restrictions\nnotices:\n  - {reference: T 26/104, type: temporary, status: eased,"
          + " from: 1m 60ch, to: 1m 75ch, directions: Down, speed: 40 mph,"
          + " imposed: 2026-11-10 04:00, until: further notice%s}\n";

  private static Reading<List<TemporaryRestriction>> reading(String name, String text) {
    Fixture fixture = Fixture.good();
    PackFile pack = ((Reading.Good<PackFile>) fixture.sources().pack(Fixture.PACK)).value();
    fixture.put(name, text);
    return fixture.sources().noticeFile(name).read(pack);
  }

  @Test
  void boardsThatStoodAreNotForgotten() {
    assertThat(reading(NAME, EASED.formatted("")).problems().text())
        .startsWith(
            "n.yaml:3:5: error: T 26/104 had boards (warning), and this notice does"
                + " not say what becomes of them; allowed: boards: those in place from now, or none where nothing is at the lineside\n");
  }

  @Test
  void noneIsSaidInAWord() {
    for (String none : List.of(", boards: none", ", boards: []")) {
      var good = (Reading.Good<List<TemporaryRestriction>>) reading(NAME, EASED.formatted(none));
      assertThat(good.value().get(0).boards()).isEmpty();
    }
    String table =
        "reference,type,status,from,to,directions,speed,imposed,until,boards\n"
            + "T 26/104,temporary,eased,1m 60ch,1m 75ch,Down,40 mph,2026-11-10 04:00,"
            + "further notice,%s\n";
    assertThat(reading("n.csv", table.formatted("none")).problems().hasErrors()).isFalse();
    assertThat(reading("n.csv", table.formatted("")).problems().text())
        .startsWith("n.csv:2:1: error: T 26/104 had boards (");
  }

  @Test
  void aSlipInTheWordIsTold() {
    assertThat(reading(NAME, EASED.formatted(", boards: nome")).problems().text())
        .contains("error: boards is \"nome\"; allowed: none, or a list", "Maybe none");
  }

  @Test
  void whatIsWithdrawnNeedsNoBoards() {
    String text = EASED.formatted("").replace("status: eased", "status: withdrawn");
    assertThat(reading(NAME, text).problems().text()).isEmpty();
  }

  @Test
  void withdrawingWhatIsNotThereIsTold() {
    String text = EASED.replace("26/104", "26/140").replace("status: eased", "status: withdrawn");
    assertThat(reading(NAME, text.formatted("")).problems().text())
        .isEqualTo(
            "n.yaml:3:17: warning: T 26/140 is withdrawn, but no file of the pack has it: nothing changes; allowed: one of T 26/104\n");
  }
}
