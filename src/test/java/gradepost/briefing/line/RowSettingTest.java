package gradepost.briefing.line;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.chart.LineChart;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: lines keep to their column, and a quantity to its line. */
class RowSettingTest {
  private static final double NARROW = 7;

  @Test
  void aQuantityIsNotBroken() {
    for (String text :
        List.of(
            "ease the brake then 14 psi at 12 mph for now",
            "platform of Market Road 2 on the left",
            "low adhesion as far as 12m 05ch: Ferrow",
            "from 60 km/h to 55 km/h and 4 s later")) {
      List<String> lines = LineBreaks.HEAVY.of(text, NARROW);
      assertThat(String.join(" ", lines)).isEqualTo(text);
      assertThat(lines)
          .noneMatch(l -> l.matches("(psi|mph|km/h|s|2|05ch)\\b.*"))
          .hasSizeGreaterThan(2);
    }
  }

  @Test
  void noLineIsWiderThanItsColumn() {
    for (String text :
        List.of("a b c d e f g h i j", "Llanfairymynyddbachgoch", "on 2027-01-15 04:00 at 3 mph")) {
      for (double column = 2; column < 20; column += 0.7) {
        double most = column;
        assertThat(LineBreaks.PLAIN.of(text, column))
            .allMatch(l -> LineBreaks.width(l, false) <= most + 1e-9);
      }
    }
  }

  @Test
  void aRowIsAsHighAsItsLines() {
    assertThat(RowSetting.lines("2m 08ch", List.of("mill"), List.of(), false, "; ").heightPx())
        .isEqualTo(15);
    assertThat(
            RowSetting.lines("2m 08ch", List.of("mill race wall"), List.of("shut off"), false, "; ")
                .heightPx())
        .isEqualTo(29);
    assertThat(
            RowSetting.lines("2m 08ch", List.of("mill"), List.of("shut off"), false, "; ")
                .heightPx())
        .as("a short word stands beside what there is to do")
        .isEqualTo(15);
    assertThat(RowSetting.lines("2m 08ch", List.of("mill", "hut"), List.of(), false, "; ").what())
        .containsExactly("mill; hut");
    assertThat(
            RowSetting.lines("2m 08ch", List.of("Mill Halt", "hut"), List.of(), true, "; ").what())
        .containsExactly("Mill Halt", "hut");
  }

  /** Words without end make one row higher than a sheet: it is set, and runs out of it. */
  @Test
  void aRowHigherThanTheSheetIsSet() {
    assertThat(RowSetting.levels(List.of(400.0), List.of(968), 0, 1000, 959))
        .extracting(LineChart.Level::topPx)
        .containsExactly(0);
  }
}
