package gradepost.render.chart;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.units.PrintedText;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.fontbox.ttf.CmapLookup;
import org.junit.jupiter.api.Test;

/** What texts are refused for is what the embedded font lacks. */
class PrintedTextTest {

  /** Every code point there is, in every face, against the table. */
  @Test
  void theTableIsWhatEveryFaceHas() throws IOException {
    Fonts fonts = new Fonts();
    List<CmapLookup> faces = new ArrayList<>();
    for (Fonts.Face face : Fonts.Face.values()) {
      faces.add(fonts.font(face).getUnicodeCmapLookup());
    }
    List<String> wrong = new ArrayList<>();
    for (int c = 0; c <= Character.MAX_CODE_POINT; c++) {
      int codePoint = c;
      boolean has = faces.stream().allMatch(face -> face.getGlyphId(codePoint) != 0);
      if (has != PrintedText.prints(c)) {
        wrong.add("U+%04X".formatted(c));
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void whatIsInTheWayIsNamed() {
    assertThat(obstacle("Dvořák, Ελένη, Жанна, Nguyễn – 4½ \"m\"")).isEmpty();
    assertThat(obstacle("a 日")).contains("has 日 (U+65E5) in it, which the papers cannot print");
    assertThat(obstacle("a\u202eb")).contains("has the invisible character U+202E in it");
    assertThat(obstacle("a\u200b")).contains("has the invisible character U+200B in it");
    assertThat(obstacle("a\u00adb")).contains("has the invisible character U+00AD in it");
    assertThat(obstacle("a\u001bb")).contains("has the invisible character U+001B in it");
    assertThat(obstacle("a\nb")).contains("has a line break or a tab in it");
  }

  private static Optional<String> obstacle(String text) {
    return PrintedText.obstacle(text).map(PrintedText.Obstacle::inWords);
  }

  @Test
  void linesAreJoinedAndUnseenCharactersShown() {
    assertThat(PrintedText.joined("one \r\n\n  two\u2028three\tfour\n"))
        .isEqualTo("one two three four");
    assertThat(PrintedText.joined("one  two ")).isEqualTo("one  two");
    assertThat(PrintedText.seen("a\u202e\u001b日")).isEqualTo("aU+202EU+001B日");
    assertThat(PrintedText.coded("日本 Ash")).isEqualTo("U+65E5 U+672C Ash");
    assertThat(PrintedText.meant("Weir\n Lane\u202e")).contains("Weir Lane");
    assertThat(PrintedText.meant("日\n")).isEmpty();
    assertThat(PrintedText.meant("Weir Lane")).isEmpty();
  }
}
