package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.BrakeAction;
import gradepost.stock.BrakePercentage;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.NoCurveResistance;
import gradepost.units.Length;
import gradepost.units.Pressure;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Braked weight percentage against UNISIG SUBSET-026 chapter 3, A.3.7 to A.3.9. */
class BrakePercentageValidationTest {
  private static final Pressure FULL = new Pressure(Textbook.FULL_PA);
  private static final double HUNDRED = 100 / 3.6;

  /** How hard the brake is asked for: service braking counts less of a high λ. */
  private enum Asked {
    SERVICE,
    EMERGENCY;

    BrakeSystem system(double lambda) {
      BrakePercentage percentage = new BrakePercentage(lambda);
      return this == SERVICE ? percentage.service(FULL) : percentage.emergency(FULL);
    }
  }

  /** Ten vehicles of 16 m; the rotating mass is the case's. */
  private static Textbook train(double rotating) {
    Textbook train = Textbook.empty();
    for (int i = 0; i < 10; i++) {
      train.vehicle(40, rotating, 16, 0);
    }
    return train;
  }

  private static Stock stock(Textbook train, double lambda, Asked asked) {
    Stock plain = train.stock();
    BrakeSystem system = asked.system(lambda);
    BrakeSystem only =
        new BrakeSystem(
            system.name(),
            system.shortName(),
            BrakeSystem.Role.SERVICE,
            system.action(),
            system.application(),
            system.release(),
            system.gradualRelease(),
            system.control(),
            system.full(),
            system.pipe(),
            system.recharge(),
            system.percentage());
    return new Stock(
        plain.name(),
        "",
        List.of(),
        plain.maximum(),
        plain.vehicles(),
        plain.formations(),
        plain.resistance(),
        plain.curves(),
        0,
        plain.traction(),
        new BrakePercentage(lambda).inService().force(FULL),
        List.of(only),
        List.of());
  }

  private record Braked(Stepper stepper, TrainBrake rig) {
    double stop(double fromMps) {
      stepper.place(0, 0, fromMps);
      stepper.brake(rig, rig.fullPa());
      assertThat(stepper.advance(new StopConditions())).isEqualTo(StopReason.STANDSTILL);
      return stepper.atM();
    }
  }

  private static Braked braked(double lambda, Asked asked, double permille, double rotating) {
    Stock stock = stock(train(rotating), lambda, asked);
    Formation formation = stock.formations().get(0);
    Train train = Train.of(stock, formation, LoadCase.CRUSH);
    Stepper stepper =
        new Stepper(
            train,
            train.resistance(),
            TrackForce.of(Textbook.gradient(permille), train, new NoCurveResistance(), 0),
            new ConstantAdhesion(1));
    return new Braked(
        stepper, TrainBrake.of(stock, formation, LoadCase.CRUSH, train, stock.service(), 1, 0));
  }

  /** Deceleration with the brake full at a speed in km/h, through the stepper. */
  private double deceleration(double lambda, Asked asked, double kmh) {
    Braked train = braked(lambda, asked, 0, 0.1);
    train.stepper().place(0, 0, kmh / 3.6);
    train.stepper().brake(train.rig(), train.rig().fullPa());
    Stepper stepper = train.stepper();
    stepper.advance(new StopConditions().time(train.rig().deadTimeS() + 1e-5));
    return -stepper.accelerationMps2();
  }

  /** A.3.7: λ 100, first step up to 120.948 km/h, 0.826 m/s². */
  @Test
  void lambda_100_has_its_first_step() {
    assertThat(new BrakePercentage(100).firstLimit().kmh()).isCloseTo(120.948, within(0.001));
    assertThat(deceleration(100, Asked.EMERGENCY, 100)).isCloseTo(0.826, within(1e-6));
    assertThat(deceleration(100, Asked.EMERGENCY, 120.9)).isCloseTo(0.826, within(1e-6));
  }

  /** A.3.7.6; derived from its coefficients: λ 100 at 130 km/h, λ 135 at 160 km/h. */
  @Test
  void above_the_first_step_the_polynomials_hold() {
    assertThat(deceleration(100, Asked.EMERGENCY, 130)).isCloseTo(0.6171, within(1e-4));
    assertThat(deceleration(135, Asked.EMERGENCY, 160)).isCloseTo(0.7968, within(1e-4));
  }

  /** A.3.7.1: in service braking λ 150 counts as 135. */
  @Test
  void service_braking_counts_135_at_most() {
    assertThat(new BrakePercentage(150).inService()).isEqualTo(new BrakePercentage(135));
    assertThat(new BrakePercentage(120).inService()).isEqualTo(new BrakePercentage(120));
    assertThat(deceleration(150, Asked.SERVICE, 160))
        .isEqualTo(deceleration(135, Asked.SERVICE, 160));
  }

  /**
   * A.3.7.1 cuts for service braking only. By hand, λ 150 at 160 km/h, band up to 180: ((3.00e-8 ×
   * 150 − 3.85e-6) × 150 + 5.52e-3) × 150 + 0.0480 = 0.8906 m/s²; at 100 km/h, within the first
   * step, 0.0075 × 150 + 0.076 = 1.201 m/s². λ 200, 160 m, from 100 km/h: 5.020 s rolling is 139.4
   * m, then 27.778²/(2 × 1.576) = 244.8 m; counted as 135 it was 139.4 + 354.4 = 493.9 m.
   */
  @Test
  void an_emergency_application_counts_all_of_lambda() {
    assertThat(deceleration(150, Asked.EMERGENCY, 160)).isCloseTo(0.8906, within(1e-4));
    assertThat(deceleration(150, Asked.EMERGENCY, 100)).isCloseTo(1.201, within(1e-6));
    assertThat(braked(200, Asked.EMERGENCY, 0, 0).stop(HUNDRED)).isCloseTo(384.2, within(0.5));
  }

  /** The trap of A.3.7.6: at λ 50 the brake is weaker up to 100 km/h than above it. */
  @Test
  void a_low_lambda_is_not_monotonic() {
    assertThat(deceleration(50, Asked.EMERGENCY, 95)).isCloseTo(0.376, within(5e-4));
    assertThat(deceleration(50, Asked.EMERGENCY, 110)).isCloseTo(0.410, within(5e-4));
  }

  /** A.3.8 and A.3.9, passenger train of 160 m; towards a target speed above zero times 1.2. */
  @Test
  void the_brake_builds_up_by_the_length_of_the_train() {
    assertThat(braked(100, Asked.EMERGENCY, 0, 0).rig().deadTimeS())
        .isCloseTo(5.020, within(0.001));
    assertThat(braked(100, Asked.SERVICE, 0, 0).rig().deadTimeS()).isCloseTo(5.656, within(0.001));
    Length length = new Length(160);
    BrakeAction.ByLength fast = (BrakeAction.ByLength) Asked.EMERGENCY.system(100).action();
    BrakeAction.ByLength slow = (BrakeAction.ByLength) Asked.SERVICE.system(100).action();
    assertThat(fast.towardsASpeed().deadTime(length).seconds()).isCloseTo(6.024, within(0.001));
    assertThat(slow.towardsASpeed().deadTime(length).seconds()).isCloseTo(6.787, within(0.001));
    assertThat(fast.deadTime(new Length(500)).seconds()).isCloseTo(2.30 + 0.17 * 25, within(1e-9));
  }

  /** Derived from SUBSET-026: stop from 100 km/h, λ 100, 160 m, level. */
  @Test
  void a_stop_from_100_on_the_level() {
    assertThat(braked(100, Asked.EMERGENCY, 0, 0).stop(HUNDRED)).isCloseTo(606.5, within(0.5));
    assertThat(braked(100, Asked.SERVICE, 0, 0).stop(HUNDRED)).isCloseTo(624.2, within(0.5));
  }

  /**
   * Derived from SUBSET-026: emergency, 1 % falling, rotating mass 2 %: 668.1 m. That sum takes the
   * speed as even during the build-up; so does the check, with the brake's own part from the
   * stepper. The whole run is longer, since the train gathers speed until the brake acts.
   */
  @Test
  void a_stop_from_100_down_one_per_cent() {
    Braked train = braked(100, Asked.EMERGENCY, -10, 0.02);
    double whole = train.stop(HUNDRED);
    double buildUp = HUNDRED * train.rig().deadTimeS();
    Braked atOnce = braked(100, Asked.EMERGENCY, -10, 0.02);
    // Ask before the place where the brake acts, at the speed that is then 100 km/h.
    double gathered = 0.01 * 9.80665 / 1.02 * train.rig().deadTimeS();
    double acting = atOnce.stop(HUNDRED - gathered);
    double before = (HUNDRED - gathered / 2) * train.rig().deadTimeS();
    assertThat(buildUp + acting - before).isCloseTo(668.1, within(0.5));
    assertThat(whole).isGreaterThan(668.1);
  }

  @Test
  void a_percentage_outside_the_conversion_is_refused() {
    assertThatThrownBy(() -> new BrakePercentage(29)).hasMessageContaining("30 to 250");
    assertThatThrownBy(() -> new BrakePercentage(251)).hasMessageContaining("30 to 250");
  }
}
