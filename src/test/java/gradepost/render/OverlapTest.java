package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.CabCards;
import gradepost.briefing.Messages;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.drive.Planner;
import gradepost.units.UnitStyle;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Property: on no page does a text stand upon another or run off the paper, whatever its names (the
 * invented line has a station of more than 30 letters), and no text is smaller than it should be.
 */
class OverlapTest {
  /** What a glyph covers of its size, above its line; letters without accents. */
  private static final double TALL = 0.55;

  private record Word(int page, String text, double x, double y, double w, double h, double size) {
    boolean meets(Word o) {
      return page == o.page
          && x + 0.3 < o.x + o.w
          && o.x + 0.3 < x + w
          && y + 0.3 < o.y + o.h
          && o.y + 0.3 < y + h;
    }
  }

  /** Every run of glyphs with its box on the page, from the upper left. */
  private static List<Word> words(byte[] pdf) throws IOException {
    List<Word> out = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper =
          new PDFTextStripper() {
            @Override
            protected void writeString(String text, List<TextPosition> glyphs) {
              for (TextPosition g : glyphs) {
                double size = g.getFontSizeInPt();
                boolean upright = g.getDir() == 90;
                double along = g.getWidthDirAdj();
                if (!g.getUnicode().isBlank()) {
                  out.add(
                      upright
                          ? new Word(
                              getCurrentPageNo(),
                              g.getUnicode() + " in " + text,
                              g.getX() - size * TALL,
                              g.getY() - along,
                              size * TALL,
                              along,
                              size)
                          : new Word(
                              getCurrentPageNo(),
                              g.getUnicode() + " in " + text,
                              g.getX(),
                              g.getY() - size * TALL,
                              along,
                              size * TALL,
                              size));
                }
              }
            }
          };
      stripper.setSuppressDuplicateOverlappingText(false);
      stripper.getText(document);
      for (Word w : out) {
        PDRectangle box = document.getPage(w.page - 1).getMediaBox();
        assertThat(w.x).as(w.text).isGreaterThan(9);
        assertThat(w.x + w.w).as(w.text).isLessThan(box.getWidth() - 9);
        assertThat(w.y).as(w.text).isGreaterThan(9);
        assertThat(w.y + w.h).as(w.text).isLessThan(box.getHeight() - 9);
      }
    }
    return out;
  }

  private static void apart(byte[] pdf) throws IOException {
    List<Word> all = words(pdf);
    assertThat(all).hasSizeGreaterThan(500);
    List<String> faults = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      for (int j = i + 1; j < all.size() && all.get(j).page == all.get(i).page; j++) {
        if (all.get(i).meets(all.get(j))) {
          faults.add(all.get(i) + " upon " + all.get(j));
        }
      }
    }
    assertThat(faults).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void onTheInventedLineNothingOverlaps(UnitStyle units) throws IOException {
    apart(Papers.pdf(units));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 3, 4, 7})
  void onTheDemoLinesNothingOverlaps(int assignment) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Papers.renderer()
        .pdf(
            new Composer(Messages.english())
                .compose(
                    "",
                    List.of(Planner.plan(DemoPlans.assignments().get(assignment))),
                    SamplePlan.issue(),
                    List.of()),
            out);
    apart(out.toByteArray());
    noSheetForTheSpreadAlone(out.toByteArray());
  }

  /** An approach of many actions is set smaller before its last lines go to another sheet. */
  private static void noSheetForTheSpreadAlone(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper = new PDFTextStripper();
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        String text = stripper.getText(document);
        assertThat(text.contains("If nothing is corrected") && !text.contains("Fallback ladder"))
            .as(text)
            .isFalse();
      }
    }
  }

  @ParameterizedTest
  @MethodSource("gradepost.render.CardsTest#formats")
  void onNoCardDoesAnythingOverlap(CabCards.Format format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Papers.renderer().pdf(CabCards.of(Papers.briefing(UnitStyle.MILES), "Cards", format), out);
    apart(out.toByteArray());
  }

  @Test
  void aBigDropIsNamedInTheUnitsOfThePack() throws IOException {
    try (PDDocument document = Loader.loadPDF(Papers.pdf(UnitStyle.METRIC))) {
      assertThat(new PDFTextStripper().getText(document).replaceAll("\\s+", " "))
          .contains("a third or more, or more than 32 km/h.")
          .doesNotContain("20 mph");
    }
  }

  @Test
  void tablesForTheDeskAreOfTenPoints() throws IOException {
    List<Word> all = words(Papers.pdf(UnitStyle.MILES));
    long body = all.stream().filter(w -> w.size > 9.9 && w.size < 10.1).count();
    assertThat((double) body / all.size()).isGreaterThan(0.3);
  }
}
