package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.briefing.Briefing;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.units.UnitStyle;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: a sheet of the line is one page, and each row stands where its leader ends. */
@Tag("slow")
class LineLevelsTest {
  private static final double PT_IN_PX = 72 / 96.0;

  /** Where the first letter of a place stands: the inner margin and the drawing. */
  private static final double PLACES_PT = 15 / 25.4 * 72 + 193;

  private static final double DRIFT_PT = 0.8;

  private static void level(Briefing briefing) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Papers.renderer().pdf(briefing, out);
    List<LineSheet> sheets = briefing.parts().get(0).line();
    List<Integer> pages = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
      PDFTextStripper stripper = new PDFTextStripper();
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        if (stripper.getText(document).startsWith("Line: ")) {
          pages.add(page);
        }
      }
    }
    assertThat(pages).hasSameSizeAs(sheets);
    List<Glyphs.Glyph> glyphs = Glyphs.of(out.toByteArray());
    for (int i = 0; i < sheets.size(); i++) {
      int page = pages.get(i);
      TreeMap<Double, String> starts = new TreeMap<>();
      glyphs.stream()
          .filter(g -> g.page() == page && !g.drawn())
          .filter(g -> Math.abs(g.x() - PLACES_PT) < 2.5 && Character.isDigit(g.letter().charAt(0)))
          .forEach(g -> starts.put(g.y() + g.h(), g.letter()));
      List<LineChart.Level> levels = sheets.get(i).chart().levels();
      double first = starts.firstKey();
      for (LineChart.Level level : levels) {
        double wanted = first + level.topPx() * PT_IN_PX;
        double near =
            starts.keySet().stream()
                .min((a, b) -> Double.compare(Math.abs(a - wanted), Math.abs(b - wanted)))
                .orElseThrow();
        assertThat(near).as(sheets.get(i).title()).isCloseTo(wanted, within(DRIFT_PT));
      }
      assertThat(starts.size()).isEqualTo(levels.size());
    }
  }

  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void onTheInventedLine(UnitStyle units) throws IOException {
    level(Papers.briefing(units));
  }

  @ParameterizedTest
  @MethodSource("gradepost.drive.DemoPlans#numbers")
  void onTheDemoLines(int assignment) throws IOException {
    level(
        new Composer(Messages.english())
            .compose("", List.of(DemoPlans.plan(assignment)), SampleIssue.issue(), List.of()));
  }
}
