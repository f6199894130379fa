package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.line.LineBreaks;
import gradepost.render.chart.Canvas;
import gradepost.render.chart.Fonts;
import gradepost.units.PrintedText;
import org.junit.jupiter.api.Test;

/** Validation: no letter that can be printed is wider than the rows of the line reckon with. */
class LineBreaksTest {
  @Test
  void noLetterIsWiderThanItIsTaken() throws Exception {
    Fonts fonts = new Fonts();
    int letters = 0;
    for (int c = ' '; c < 0x20000; c++) {
      if (PrintedText.prints(c)) {
        letters++;
        for (boolean bold : new boolean[] {false, true}) {
          String text = Character.toString(c);
          assertThat(fonts.width(text, new Canvas.Type(1, bold)))
              .as("%s U+%04x bold %s", text, c, bold)
              .isLessThanOrEqualTo(LineBreaks.width(text, bold) + 0.0005);
        }
      }
    }
    assertThat(letters).isGreaterThan(1000);
  }

  /** Plain letters are not taken for wider than they are: a line is as full as it can be. */
  @Test
  void plainWordsAreMeasuredAsTheyAre() throws Exception {
    Fonts fonts = new Fonts();
    for (String text : new String[] {"signal WL 12, stop", "Moor Road bridge (left, by day)"}) {
      for (boolean bold : new boolean[] {false, true}) {
        double width = fonts.width(text, new Canvas.Type(1, bold));
        assertThat(LineBreaks.width(text, bold)).isBetween(width - 0.01, width * 1.01);
      }
    }
  }
}
