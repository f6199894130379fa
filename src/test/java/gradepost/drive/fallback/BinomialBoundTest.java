package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Validation: upper limits of a share, to one side with 95 %, against published ones. */
class BinomialBoundTest {
  /**
   * The manual of the R package GenBinomApps, clopper.pearson.ci(5, 100000, alpha = 0.05), read.
   */
  @Test
  void fiveOfAHundredThousand() {
    assertThat(BinomialBound.upper(5, 100_000)).isCloseTo(0.0001051275, within(5e-11));
  }

  /**
   * NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1, from memory: 4 of 20, 90 % to both
   * sides, which is 95 % to each; found there by the solver of a spreadsheet.
   */
  @Test
  void fourOfTwenty() {
    assertThat(BinomialBound.upper(4, 20)).isCloseTo(0.401029, within(2e-6));
  }

  /**
   * None of n, from the definition: (1 − p)ⁿ = 0.05. Near 3/n, the rule of three (Hanley and
   * Lippman-Hand, <em>If nothing goes wrong, is everything all right?</em>, JAMA 249, 1983, from
   * memory).
   */
  @ParameterizedTest
  @CsvSource({"1, 0.95", "2, 0.776393", "10, 0.258866", "100, 0.029513", "1000, 0.0029912"})
  void noneOfThem(int runs, double upper) {
    assertThat(BinomialBound.upper(0, runs)).isCloseTo(upper, within(1e-6));
    if (runs >= 100) {
      assertThat(BinomialBound.upper(0, runs)).isCloseTo(3.0 / runs, within(0.02 * 3 / runs));
    }
  }

  /** All but one, from the definition: 1 − pⁿ = 0.05. */
  @Test
  void allButOneOfThemAndAll() {
    assertThat(BinomialBound.upper(9, 10)).isCloseTo(Math.pow(0.95, 0.1), within(1e-12));
    assertThat(BinomialBound.upper(10, 10)).isEqualTo(1);
  }

  @Test
  void moreThanAllAreNoCount() {
    assertThatThrownBy(() -> BinomialBound.upper(11, 10))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * One of a thousand is at most 0.00474 of all, two at most 0.0063: by the limits of Poisson's
   * law, 4.744 and 6.296, from memory.
   */
  @Test
  void oneOfAThousandMayBeLateForOneInTwoHundred() {
    assertThat(1000 * BinomialBound.upper(1, 1000)).isCloseTo(4.744, within(0.01));
    assertThat(1000 * BinomialBound.upper(2, 1000)).isCloseTo(6.296, within(0.02));
    assertThat(new LateShare(0.005, false).mostOf(1000)).isEqualTo(1);
    assertThat(new LateShare(0.0047, false).mostOf(1000)).isZero();
    assertThat(new LateShare(0.0063, false).mostOf(1000)).isEqualTo(2);
    assertThat(new LateShare(0.005, false).kept(0.001, 1000)).isTrue();
    assertThat(new LateShare(0.005, false).kept(0.002, 1000)).isFalse();
  }

  @Test
  void whereNoneMayBeLateOneIsTooMany() {
    assertThat(new LateShare(0.5, true).mostOf(1000)).isZero();
    assertThat(new LateShare(0.5, true).kept(0.001, 1000)).isFalse();
    assertThat(new LateShare(0.5, true).kept(0, 1000)).isTrue();
  }

  /** None of twenty says little; more runs than there are cannot be asked for. */
  @Test
  void whereTooFewAreDrawnNoneMayBeLate() {
    assertThat(new LateShare(0.005, false).mostOf(20)).isZero();
    assertThat(new LateShare(0.005, false).kept(0, 20)).isTrue();
  }

  @Test
  void aShareOfAllIsNoRule() {
    assertThat(new LateShare(1, true).mostOf(1000)).isEqualTo(1000);
    assertThat(new LateShare(1, false).kept(1, 1000)).isTrue();
  }
}
