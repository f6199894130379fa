package gradepost.pack;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Property: texts are the same that nobody tells apart on paper, and no others. */
class LookalikeTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "T 1|T  1",
        "T 1|t\u00A01",
        "T 1|\u0422 1",
        "T 1|\u03A4 1",
        "T 1|\uFF34\u3000\uFF11",
        "HX/7|\u041D\u0425/7",
        "oca|\u043E\u0441\u0430",
        "T 1|T\u200B 1",
        "\u00E9|\u0435\u0301",
      })
  void oneLooksLikeTheOther(String one, String other) {
    assertThat(Lookalike.same(one, other)).isTrue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"T 1|T 11", "T 1|T1", "T 1|T-1", "\u0416 1|X 1", "e|\u00E9", "T 1|U 1"})
  void twoAreToldApart(String one, String other) {
    assertThat(Lookalike.same(one, other)).isFalse();
  }
}
