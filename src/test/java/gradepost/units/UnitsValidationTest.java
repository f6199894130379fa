package gradepost.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Imperial measures by their definitions (international yard and pound, 1959). */
class UnitsValidationTest {
  @Test
  void chain_and_mile() {
    assertThat(Length.ofChains(1).metres()).isCloseTo(20.1168, within(1e-12));
    assertThat(Length.ofChains(80).metres()).isCloseTo(1609.344, within(1e-9));
    assertThat(1760 * Exact.YARD_M).isCloseTo(1609.344, within(1e-9));
    assertThat(Speed.ofMph(1).metresPerSecond()).isCloseTo(0.44704, within(1e-12));
  }

  /** Derived: 48m 69ch is 78 636.571 m. */
  @Test
  void a_mileage() {
    assertThat(Mileage.ofMilesChains(48, 69).metres()).isCloseTo(78_636.571, within(0.001));
  }

  /** Derived: 1 in 80 is 12.5 ‰. */
  @Test
  void one_in_eighty() {
    assertThat(Gradient.rising(80).permille()).isEqualTo(12.5);
    assertThat(Gradient.falling(80)).isEqualTo(Gradient.rising(80).reversed());
    assertThat(Gradient.falling(80).reversed().reversed()).isEqualTo(Gradient.falling(80));
  }

  @Test
  void a_pound_per_square_inch() {
    assertThat(Pressure.ofPsi(1).pascals()).isCloseTo(6894.757, within(0.001));
    assertThat(Pressure.ofPsi(70).bar()).isCloseTo(4.826, within(0.001));
  }
}
