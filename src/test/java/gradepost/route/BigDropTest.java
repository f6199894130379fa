package gradepost.route;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.units.Speed;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Validation. More than 20 mph: FRA Safety Advisory 2015-03. A third or more: British practice.
 * Both worked by hand.
 */
class BigDropTest {
  @ParameterizedTest
  @CsvSource({
    "75, 55, false, false",
    "75, 54, true, false",
    "60, 40, true, true",
    "60, 41, false, false",
    "30, 20, true, true",
    "30, 21, false, false",
    "90, 60, true, true",
    "40, 40, false, false",
    "0, 0, false, false",
    "40, 90, false, false",
  })
  void aThirdOrMoreThanTwenty(double fromMph, double toMph, boolean big, boolean third) {
    double from = Speed.ofMph(fromMph).metresPerSecond();
    double to = Speed.ofMph(toMph).metresPerSecond();
    assertThat(BigDrop.is(from, to)).isEqualTo(big);
    assertThat(BigDrop.isThird(from, to)).isEqualTo(third);
  }
}
