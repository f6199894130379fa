package gradepost.source.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: no cell is a formula, and what went out comes in again. */
class CsvTest {
  @Test
  void aFormulaIsTextAndComesBackAsItWas() {
    List<String> cells =
        List.of("=1+1", "+1 x=", "-2+3", "@sum", "'=x", "'plain", "-1.2 m", "+5", "a=b", "1 in 80");
    String text = Csv.text(List.of(cells));
    assertThat(text).isEqualTo("'=1+1,'+1 x=,'-2+3,'@sum,''=x,'plain,-1.2 m,+5,a=b,1 in 80\n");
    assertThat(Csv.rows(text)).containsExactly(cells);
  }

  @Test
  void theSeparatorIsThatOfTheHeadings() {
    assertThat(Csv.rows("a;b\n1,5;\"x;y\"\n"))
        .containsExactly(List.of("a", "b"), List.of("1,5", "x;y"));
    assertThat(Csv.rows("a\tb\r\n1\t2\r\n")).containsExactly(List.of("a", "b"), List.of("1", "2"));
  }
}
