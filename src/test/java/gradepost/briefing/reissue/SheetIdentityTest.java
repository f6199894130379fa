package gradepost.briefing.reissue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.briefing.Briefing;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.compose.Composer;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Property: what a sheet is known by hangs on what it prints, and on no name in the program. */
class SheetIdentityTest {
  private enum Side {
    LEFT
  }

  public record Told(String place, int number, List<Part> parts, Optional<String> more) {}

  public record Part(double atM, boolean grave, Side side) {}

  public record Renamed(String where, int count, List<Piece> pieces, Optional<String> rest) {}

  public record Piece(double metres, boolean bold, Side hand) {}

  @Test
  void anotherNameGivesTheSameText() {
    Told told = new Told("3m 24ch", 2, List.of(new Part(1.25, true, Side.LEFT)), Optional.empty());
    Renamed renamed =
        new Renamed("3m 24ch", 2, List.of(new Piece(1.25, true, Side.LEFT)), Optional.empty());
    assertThat(CanonicalText.of(renamed)).isEqualTo(CanonicalText.of(told));
  }

  /** Regression: where this turns red, the format needs another number. */
  @Test
  void theTextOfThisFormat() {
    assertThat(Sheets.FORMAT).isEqualTo(10);
    Told told =
        new Told("a \"b\" \\ \n", -7, List.of(new Part(12, false, Side.LEFT)), Optional.of(""));
    assertThat(CanonicalText.of(told, List.of("x", "y"), new double[] {0.25, 3}))
        .isEqualTo(
            "(\"a \\\"b\\\" \\\\ \\n\",-7,[(12.0,false,LEFT)],[\"\"])\n[\"x\",\"y\"]\n[0.2,3.0]");
  }

  @Test
  void numbersAreWrittenInOneWay() {
    assertThat(CanonicalText.of(1e-7, -0.0, -0.04, 1e10, 0.1 + 0.2, 2.95e-1))
        .isEqualTo("0.0\n0.0\n0.0\n10000000000.0\n0.3\n0.3");
  }

  @Test
  void textsCannotRunIntoOneAnother() {
    assertThat(CanonicalText.of("a", "b")).isNotEqualTo(CanonicalText.of("a\",\"b"));
    assertThat(CanonicalText.of(List.of("a", "b"))).isNotEqualTo(CanonicalText.of(List.of("a,b")));
    assertThat(CanonicalText.of("a\nb")).isNotEqualTo(CanonicalText.of("a", "b"));
  }

  @Test
  void whatHasNoOrderHasNoText() {
    assertThatThrownBy(() -> CanonicalText.of(Set.of("a")))
        .hasMessageStartingWith("no canonical text for a class ");
  }

  private static final Briefing PACK =
      new Composer(Messages.english())
          .compose("", List.of(SamplePlan.of(UnitStyle.METRIC)), SampleIssue.issue(), List.of());

  /** A record's own text names it and each of its components. */
  @Test
  void noSheetNamesAComponent() {
    Pattern named = Pattern.compile("\\b[a-z][A-Za-z]*=|[A-Z][A-Za-z]*\\[\\w+=");
    for (Sheets.Sheet sheet : new Sheets(Messages.english()).of(PACK)) {
      assertThat(named.matcher(sheet.text()).results().map(r -> r.group()).toList())
          .as(sheet.key())
          .isEmpty();
    }
  }

  /** What is printed is never rounded on the way: a place to ten metres has two decimals. */
  @Test
  void aPlaceThatDiffersInItsLastDigitIsAnotherSheet() {
    List<LineSheet.Row> rows =
        PACK.parts().get(0).line().stream().flatMap(l -> l.rows().stream()).toList();
    assertThat(rows).anyMatch(row -> row.place().matches("\\d+\\.\\d\\d km"));
    for (LineSheet.Row row : rows) {
      if (row.place().matches("\\d+\\.\\d0 km")) {
        LineSheet.Row moved =
            new LineSheet.Row(
                row.place().replaceFirst("0 km", "1 km"),
                row.speed(),
                row.what(),
                row.todo(),
                row.heading(),
                row.link(),
                row.changed(),
                row.set());
        assertThat(CanonicalText.of(moved.told())).isNotEqualTo(CanonicalText.of(row.told()));
      }
    }
  }

  /** Where a row stands on the paper, where it leads and its mark are no part of it. */
  @Test
  void aRowIsKnownByWhatItTells() {
    LineSheet.Set set =
        new LineSheet.Set(List.of("1.20 km"), List.of("mill"), List.of(), false, 16);
    LineSheet.Set other =
        new LineSheet.Set(List.of("1.20 km"), List.of("mill"), List.of(), false, 99);
    LineSheet.Row row =
        new LineSheet.Row("1.20 km", "50", List.of("mill"), List.of(), false, "", false, set);
    LineSheet.Row elsewhere =
        new LineSheet.Row("1.20 km", "50", List.of("mill"), List.of(), false, "a", true, other);
    LineSheet.Row slower =
        new LineSheet.Row("1.20 km", "49", List.of("mill"), List.of(), false, "", false, set);
    assertThat(CanonicalText.of(elsewhere.told())).isEqualTo(CanonicalText.of(row.told()));
    assertThat(CanonicalText.of(slower.told())).isNotEqualTo(CanonicalText.of(row.told()));
  }
}
