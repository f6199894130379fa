package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.BreakIterator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Property: what belongs together is not torn apart at the end of a line. */
class LineBreaksTest {
  private static String pieces(String text) {
    LineBreaks breaks = new LineBreaks();
    breaks.setText(text);
    StringBuilder out = new StringBuilder();
    int from = 0;
    for (int to = breaks.next(); to != BreakIterator.DONE; to = breaks.next()) {
      out.append(out.isEmpty() ? "" : "|").append(text, from, to);
      from = to;
    }
    assertThat(from).isEqualTo(text.length());
    return out.toString();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "the buffer stops at 11 km/h.; the |buffer |stops |at |11 km/h.",
        "From 40 mph to 20 mph at 2m 70ch, notice; From |40 mph |to |20 mph |at |2m 70ch, |notice",
        "way: 1 in 66 falling. 25 ch check-railed; way: |1 in 66 |falling. |25 ch |check-|railed",
        "2026-10-01 · 4-car mark; 2026-10-01 · |4-car |mark",
        "from 2026-12-11 04:00, to; from |2026-12-11 04:00, |to",
        "14 for 13, at platform 1; 14 |for 13, |at |platform 1",
        "10 in 100 run; 10 |in |100 |run",
        "track 1 in use; track |1 |in |use",
        "(night: 44 yd past); (night: |44 yd |past)",
        "a  b; a  |b",
      })
  void breaksOnlyBetween(String text, String expected) {
    assertThat(pieces(text)).isEqualTo(expected);
  }
}
