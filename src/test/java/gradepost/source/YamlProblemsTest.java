package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.yaml.Problems;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Property: what is no file of ours is refused at a place, whatever it is. */
class YamlProblemsTest {

  private static String check(String text) {
    return check(text.getBytes(StandardCharsets.UTF_8));
  }

  private static String check(byte[] bytes) {
    return Fixture.good().put(Fixture.ROUTE, bytes).sources().check(Fixture.ROUTE).text();
  }

  @Test
  void anEmptyFile() {
    assertThat(check(""))
        .isEqualTo(
            "line/route.yaml:1:1: error: the file is empty; allowed: gradepost: route, stock,"
                + " policy, restrictions, pack\n");
  }

  @Test
  void aFileThatDoesNotSayWhatItIs() {
    assertThat(check("name: x"))
        .isEqualTo(
            "line/route.yaml:1:1: error: the file lacks the key \"gradepost\"; allowed: route,"
                + " stock, policy, restrictions, pack\n");
  }

  @Test
  void anUnknownKindOfFile() {
    assertThat(check("gradepost: rout"))
        .isEqualTo(
            "line/route.yaml:1:12: error: gradepost \"rout\" is not known; allowed: route, stock,"
                + " policy, restrictions, pack\n  Maybe route\n");
  }

  @Test
  void aFileThatIsNotThere() {
    assertThat(Fixture.good().sources().check("line/none.yaml").text())
        .isEqualTo("line/none.yaml:1:1: error: the file cannot be read: there is no such file\n");
  }

  @Test
  void aTab() {
    assertThat(check("gradepost: route\nlines:\n\t- x"))
        .isEqualTo(
            "line/route.yaml:3:1: error: not YAML: found character '\\t(TAB)' that cannot start any"
                + " token. (Do not use \\t(TAB) for indentation) (while scanning for the next"
                + " token)\n  Maybe spaces in place of the tab\n");
  }

  @Test
  void aColonInAText() {
    assertThat(check("gradepost: route\nname: one: two"))
        .isEqualTo(
            "line/route.yaml:2:10: error: not YAML: mapping values are not allowed here\n"
                + "  Maybe quotation marks round a text that holds a colon\n");
  }

  @Test
  void aControlCharacter() {
    assertThat(check("gradepost: route\nname: a\0b"))
        .isEqualTo(
            "line/route.yaml:2:8: error: the control character U+0000; allowed: printable text\n");
  }

  @Test
  void anotherEncoding() {
    assertThat(check("gradepost: route\nname: Röckl".getBytes(StandardCharsets.ISO_8859_1)))
        .isEqualTo(
            "line/route.yaml:2:8: error: a byte that is not UTF-8; allowed: text in UTF-8\n");
  }

  @Test
  void aSecondDocument() {
    assertThat(check("gradepost: route\n---\ngradepost: route\n"))
        .startsWith("line/route.yaml:2:1: error: not YAML: but found another document");
  }

  @Test
  void nestingWithoutEnd() {
    assertThat(check("gradepost: " + "[".repeat(10_000)))
        .startsWith("line/route.yaml:1:")
        .contains("error: not YAML: ");
  }

  @Test
  void aliasesThatGrow() {
    StringBuilder bomb = new StringBuilder("gradepost: route\na0: &a0 [x, x]\n");
    for (int i = 1; i < 60; i++) {
      bomb.append("a%d: &a%d [*a%d, *a%d]\n".formatted(i, i, i - 1, i - 1));
    }
    assertThat(check(bomb.toString()))
        .startsWith("line/route.yaml:1:1: error: not YAML: Number of aliases");
  }

  @Test
  void anAliasOfItself() {
    assertThat(check("gradepost: route\nname: x\nlines: &a [*a]\n"))
        .contains("line/route.yaml:3:8: error: an entry of lines is a list; allowed: ");
  }

  @Test
  void aByteOrderMarkAndCarriageReturnsAreNoProblem() {
    String text = "\ufeff" + Fixture.good().text(Fixture.ROUTE).replace("\n", "\r\n");
    assertThat(check(text)).isEmpty();
  }

  @Test
  void prints50ProblemsAndHowManyMore() {
    StringBuilder text = new StringBuilder("gradepost: route\n");
    for (int i = 0; i < 60; i++) {
      text.append("key-")
          .append((char) ('a' + i / 26))
          .append((char) ('a' + i % 26))
          .append(": 1\n");
    }
    Problems problems =
        Fixture.good().put(Fixture.ROUTE, text.toString()).sources().check(Fixture.ROUTE);
    String[] lines = problems.text().split("\n");
    assertThat(problems.all()).hasSize(69);
    assertThat(lines[lines.length - 1]).isEqualTo("and 19 more");
    assertThat(Arrays.stream(lines).filter(l -> l.startsWith("line/"))).hasSize(50);
  }

  @Test
  void theTextDoesNotDependOnTheLocale() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(check("gradepost: 12"))
          .isEqualTo(
              "line/route.yaml:1:12: error: gradepost \"12\" is not known; allowed: route, stock,"
                  + " policy, restrictions, pack\n");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void anAliasReportsItsProblemOnce() {
    String text =
        Fixture.good()
            .text(Fixture.ROUTE)
            .replace(
                "buffer-stops: {section: Harbour, at: 0m 58ch}",
                "buffer-stops: &x {section: Harbour, at: 0m 99ch}")
            .replace("at: 11m 40ch", "at: *x");
    assertThat(check(text))
        .isEqualTo(
            "line/route.yaml:80:49: error: at \"0m 99ch\" has 80 chains or more, and 80 chains"
                + " make a mile; allowed: a mileage, such as 3m 24ch or 12.460 km\n"
                + "  Maybe 1m 19ch\n");
  }
}
