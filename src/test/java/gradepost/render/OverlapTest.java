package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.CabCards;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.units.UnitStyle;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: on no page does a text stand upon another or run off the paper, whatever its names (the
 * invented line has a station of more than 30 letters), and none is smaller than is promised.
 */
@Tag("slow")
class OverlapTest {
  /** How a row begins: a place and what is there, or a place and the section of its mileage. */
  private static final Pattern PLACE =
      Pattern.compile("^(\\d+m \\d\\dch|\\d+\\.\\d\\d km)( |\\s*\\R\\()", Pattern.MULTILINE);

  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void onTheInventedLineNothingOverlaps(UnitStyle units) throws IOException {
    Glyphs.apart(Papers.pdf(units));
    Glyphs.legible(Papers.pdf(units));
  }

  @ParameterizedTest
  @MethodSource("gradepost.drive.DemoPlans#numbers")
  void onTheDemoLinesNothingOverlaps(int assignment) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Papers.renderer()
        .pdf(
            new Composer(Messages.english())
                .compose("", List.of(DemoPlans.plan(assignment)), SampleIssue.issue(), List.of()),
            out);
    Glyphs.apart(out.toByteArray());
    Glyphs.legible(out.toByteArray());
    noSheetForALineAlone(out.toByteArray());
  }

  /** No sheet of the line has a row or two only. */
  private static void noSheetForALineAlone(byte[] pdf) throws IOException {
    int lines = 0;
    for (String text : pages(pdf)) {
      if (text.startsWith("Line: ")) {
        lines++;
        assertThat(PLACE.matcher(text).results().count()).as(text).isGreaterThan(6);
      }
    }
    assertThat(lines).isGreaterThan(3);
  }

  private static List<String> pages(byte[] pdf) throws IOException {
    List<String> out = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper = new PDFTextStripper();
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        out.add(stripper.getText(document));
      }
    }
    return out;
  }

  @ParameterizedTest
  @MethodSource("gradepost.render.CardsTest#formats")
  void onNoCardDoesAnythingOverlap(CabCards.Format format) throws IOException {
    Glyphs.apart(
        Papers.renderer().cards(CabCards.of(Papers.briefing(UnitStyle.MILES), "Cards", format)));
  }

  @Test
  void aBigDropIsNamedInTheUnitsOfThePack() throws IOException {
    try (PDDocument document = Loader.loadPDF(Papers.pdf(UnitStyle.METRIC))) {
      assertThat(new PDFTextStripper().getText(document).replaceAll("\\s+", " "))
          .containsPattern("drops from \\d+ km/h to \\d+ km/h: by a third or more\\.")
          .doesNotContain("20 mph");
    }
  }
}
