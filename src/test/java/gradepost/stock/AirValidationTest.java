package gradepost.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.units.Exact;
import gradepost.units.Pressure;
import org.junit.jupiter.api.Test;

/** Brake pipe, reservoir and cylinder against handbooks; pressures in psi. */
class AirValidationTest {
  private static double psi(double pascals) {
    return pascals / Exact.PSI_PA;
  }

  private static double cylinder(PipeLaw law, double reductionPsi) {
    return psi(law.cylinderPa(reductionPsi * Exact.PSI_PA));
  }

  private static final PipeLaw SEVENTY = new PipeLaw.Ratio(Pressure.ofPsi(70), 2.5);

  /** Howard 1913: a pound of reduction gives 2.5 lb in the cylinder; 10 psi give 25. */
  @Test
  void a_pound_of_reduction_gives_two_and_a_half() {
    assertThat(cylinder(SEVENTY, 10)).isCloseTo(25, within(0.1));
    assertThat(cylinder(SEVENTY, 0)).isZero();
    assertThat(cylinder(SEVENTY, -3)).isZero();
  }

  /** Boyle, derived; 70, 20 and 50 psi are common practice. */
  @Test
  void a_pipe_of_70_psi_is_at_full_service_with_50_after_20() {
    assertThat(psi(SEVENTY.fullReductionPa())).isCloseTo(20, within(0.1));
    assertThat(cylinder(SEVENTY, 20)).isCloseTo(50, within(0.1));
    assertThat(cylinder(SEVENTY, 35)).isCloseTo(50, within(0.1));
    assertThat(psi(SEVENTY.equalPa(SEVENTY.pipe().pascals(), 0))).isCloseTo(50, within(0.1));
  }

  /** American trade practice: 26 psi (25.7 by Boyle). */
  @Test
  void a_pipe_of_90_psi_is_at_full_service_after_26() {
    PipeLaw law = new PipeLaw.Ratio(Pressure.ofPsi(90), 2.5);
    assertThat(psi(law.fullReductionPa())).isCloseTo(26, within(0.5));
  }

  /**
   * Derived: strict Boyle, ratio 3.235, piston from no volume: 10, 15, 20 give 17.7, 33.8, 50.0.
   */
  @Test
  void strict_boyle_begins_later_and_meets_the_rule_at_equalisation() {
    PipeLaw law = new PipeLaw.Boyle(Pressure.ofPsi(70), 3.235);
    assertThat(cylinder(law, 10)).isCloseTo(17.7, within(0.1));
    assertThat(cylinder(law, 15)).isCloseTo(33.8, within(0.1));
    assertThat(cylinder(law, 20)).isCloseTo(50.0, within(0.1));
    assertThat(cylinder(law, 4)).isZero();
    assertThat(psi(law.fullReductionPa())).isCloseTo(20, within(0.1));
    assertThat(psi(law.equalPa(law.pipe().pascals(), 0))).isCloseTo(50, within(0.1));
    double left = law.reservoirAfterPa(law.pipe().pascals(), 0, 50 * Exact.PSI_PA);
    assertThat(psi(left)).isCloseTo(50, within(0.1));
  }

  /**
   * Common practice of distributors (in the manner of UIC 540, from memory): pipe 5 bar, 3.8 bar in
   * the cylinder from a reduction of 1.5 bar on; in between in proportion, 0.5 bar gives 1.267.
   */
  @Test
  void a_distributor_gives_a_ratio_of_the_reduction_up_to_its_limit() {
    PipeLaw law = BrakePreset.TWO_PIPE_AIR.systems().get(0).pipe().orElseThrow();
    assertThat(law.pipe().pascals()).isCloseTo(5e5, within(1e-6));
    assertThat(law.cylinderPa(1.5e5)).isCloseTo(3.8e5, within(1.0));
    assertThat(law.cylinderPa(0.5e5)).isCloseTo(1.267e5, within(100.0));
    assertThat(law.cylinderPa(5e5)).isCloseTo(3.8e5, within(1.0));
    assertThat(law.cylinderPa(0)).isZero();
    assertThat(law.cylinderPa(-1e5)).isZero();
    assertThat(law.fullReductionPa()).isCloseTo(1.5e5, within(1.0));
    // Reservoirs that a second pipe keeps full: the third application finds what the first found.
    assertThat(law.reservoirAfterPa(5e5, 0, 3.8e5)).isEqualTo(5e5);
    assertThat(law.equalPa(5e5, 0)).isCloseTo(3.8e5, within(1.0));
  }

  /** Trade encyclopaedia and a trade explainer of UIC practice: ranges. */
  @Test
  void presets_lie_inside_the_ranges_of_practice() {
    for (BrakePreset preset : BrakePreset.values()) {
      assertThat(preset.systems().get(0).role()).isEqualTo(BrakeSystem.Role.SERVICE);
      boolean goods = preset == BrakePreset.GOODS_AIR;
      for (BrakeSystem system : preset.systems()) {
        if (system.action() instanceof BrakeAction.Propagated along) {
          double mps = along.speed().metresPerSecond();
          assertThat(mps).isBetween(goods ? 90.0 : 250.0, goods ? 180.0 : 280.0);
          if (system.role() != BrakeSystem.Role.EMERGENCY) {
            double full = system.full().pascals();
            double fill = 0.95 * full / system.application().pascalsPerSecond();
            double empty = full / system.release().pascalsPerSecond();
            assertThat(fill).isBetween(goods ? 18.0 : 3.0, goods ? 30.0 : 5.0);
            assertThat(empty).isBetween(goods ? 45.0 : 15.0, goods ? 60.0 : 20.0);
          }
        }
      }
    }
  }

  /**
   * Common practice: 90 / 70 / 50 psi; EP graduated both ways, automatic only on, one full release;
   * emergency is not graduated and is held to the stand.
   */
  @Test
  void the_older_electric_unit_has_its_pressures() {
    var systems = BrakePreset.EP_AND_AUTOMATIC_AIR.systems();
    BrakeSystem ep = systems.get(0);
    BrakeSystem automatic = systems.get(1);
    assertThat(ep.gradualRelease()).isTrue();
    assertThat(automatic.gradualRelease()).isFalse();
    assertThat(ep.full().psi()).isCloseTo(50, within(1e-9));
    assertThat(automatic.full().psi()).isCloseTo(50, within(1e-9));
    assertThat(automatic.pipe().orElseThrow().pipe().psi()).isCloseTo(70, within(1e-9));
    assertThat(ep.action()).isInstanceOf(BrakeAction.Simultaneous.class);
    BrakeSystem emergency = systems.get(2);
    assertThat(emergency.role()).isEqualTo(BrakeSystem.Role.EMERGENCY);
    assertThat(emergency.gradualRelease()).isFalse();
    assertThat(emergency.full().psi()).isCloseTo(50, within(1e-9));
  }

  /** Hansard, written answer of 21 October 1991: three steps give equal thirds of the force. */
  @Test
  void three_steps_are_one_two_three() {
    var control = (BrakeControl.Steps) BrakePreset.THREE_STEP_EP.systems().get(0).control();
    double first = control.pressures().get(0).pascals();
    assertThat(control.pressures().get(1).pascals()).isCloseTo(2 * first, within(1e-6));
    assertThat(control.pressures().get(2).pascals()).isCloseTo(3 * first, within(1e-6));
  }
}
