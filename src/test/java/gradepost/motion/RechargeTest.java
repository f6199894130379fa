package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.BrakePreset;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.units.Exact;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * An automatic brake after a full release. Common practice: the reservoirs fill again in their own
 * time, and another application before that has less to give. The pressures are derived with the
 * rule of Howard 1913, 2.5 lb in the cylinder for a pound out of the reservoir.
 */
class RechargeTest {
  private static final double PSI = Exact.PSI_PA;

  private Stepper stepper;
  private TrainBrake auto;
  private TrainBrake ep;

  @BeforeEach
  void train() {
    Textbook textbook = Textbook.empty().brake(0.9);
    for (int i = 0; i < 4; i++) {
      textbook.vehicle(35, 0.1, 20, 0.5);
    }
    Stock plain = textbook.stock();
    List<BrakeSystem> systems = BrakePreset.EP_AND_AUTOMATIC_AIR.systems();
    Stock stock =
        new Stock(
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
            plain.brakeForce(),
            systems,
            List.of());
    Formation formation = stock.formations().get(0);
    Train train = Train.of(stock, formation, LoadCase.TARE);
    auto = TrainBrake.of(stock, formation, LoadCase.TARE, train, systems.get(1), 1, 0);
    ep = TrainBrake.of(stock, formation, LoadCase.TARE, train, systems.get(0), 1, 0);
    stepper = textbook.onGradient(0);
    stepper.place(0, 0, 60);
  }

  private void pass(double seconds) {
    stepper.advance(new StopConditions().time(stepper.timeS() + seconds));
  }

  @Test
  void a_charged_brake_gives_all() {
    assertThat(stepper.availablePa(auto)).isCloseTo(50 * PSI, within(1.0));
    stepper.brake(auto, 50 * PSI);
    pass(10);
    assertThat(stepper.pressurePa()).isCloseTo(50 * PSI, within(1.0));
  }

  /** 50 psi took 20 out of 70: 50 left; after 17 s of release and 1 psi/s, 67, which gives 47.9. */
  @Test
  void a_second_application_has_less_to_give() {
    stepper.brake(auto, 50 * PSI);
    pass(6);
    stepper.brake(auto, 0);
    pass(17.5);
    assertThat(stepper.pressurePa()).isZero();
    assertThat(stepper.availablePa(auto)).isCloseTo(67.5 * 2.5 / 3.5 * PSI, within(1.0));
    stepper.brake(auto, 50 * PSI);
    pass(6);
    assertThat(stepper.pressurePa()).isCloseTo(67.5 * 2.5 / 3.5 * PSI, within(1.0));
  }

  /** Fully charged again once the 20 psi are back. */
  @Test
  void in_time_all_comes_back() {
    stepper.brake(auto, 50 * PSI);
    pass(6);
    stepper.brake(auto, 0);
    pass(19);
    assertThat(stepper.availablePa(auto)).isLessThan(49.5 * PSI);
    pass(3);
    assertThat(stepper.availablePa(auto)).isCloseTo(50 * PSI, within(1.0));
  }

  /** A light application takes little: 15 psi took 6. */
  @Test
  void a_light_application_costs_little() {
    stepper.brake(auto, 15 * PSI);
    pass(3);
    stepper.brake(auto, 0);
    pass(1e-6);
    // Reservoir 64, cylinder still 15: equal at (2.5·64 + 15)/3.5.
    assertThat(stepper.availablePa(auto)).isCloseTo(50 * PSI, within(0.01 * PSI));
    stepper.advance(new StopConditions().time(stepper.timeS() + 5.5));
    assertThat(stepper.pressurePa()).isZero();
    assertThat(stepper.availablePa(auto)).isCloseTo((64 + 5.5) * 2.5 / 3.5 * PSI, within(2.0));
  }

  @Test
  void the_brake_by_wire_always_has_all() {
    for (int i = 0; i < 4; i++) {
      stepper.brake(ep, 50 * PSI);
      pass(4);
      assertThat(stepper.pressurePa()).isCloseTo(50 * PSI, within(1.0));
      stepper.brake(ep, 0);
      pass(4);
    }
  }

  /** Common practice: graduated on and off by wire; automatic on only, a release is a full one. */
  @Test
  void only_the_brake_by_wire_eases() {
    stepper.brake(ep, 40 * PSI);
    pass(4);
    stepper.brake(ep, 15 * PSI);
    pass(4);
    assertThat(stepper.pressurePa()).isCloseTo(15 * PSI, within(1.0));
    stepper.place(0, 0, 60);
    stepper.brake(auto, 20 * PSI);
    pass(4);
    stepper.brake(auto, 35 * PSI);
    pass(4);
    assertThat(stepper.pressurePa()).isCloseTo(35 * PSI, within(1.0));
    stepper.brake(auto, 15 * PSI);
    pass(13);
    assertThat(stepper.pressurePa()).isZero();
  }

  @Test
  void a_saved_state_keeps_its_charge() {
    stepper.brake(auto, 50 * PSI);
    pass(6);
    stepper.brake(auto, 0);
    pass(17);
    Snapshot kept = stepper.save();
    double had = stepper.availablePa(auto);
    pass(10);
    assertThat(stepper.availablePa(auto)).isGreaterThan(had);
    stepper.restore(kept);
    assertThat(stepper.availablePa(auto)).isEqualTo(had);
    assertThat(stepper.timeS()).isEqualTo(kept.timeS());
    stepper.place(0, 0, 20);
    assertThat(stepper.availablePa(auto)).isCloseTo(50 * PSI, within(1.0));
  }

  /**
   * As after 17.5 s of release above: 67.5 psi, which give 48.2; and what is done since is undone.
   */
  @Test
  void a_saved_state_has_what_it_had_whatever_was_done_since() {
    stepper.brake(auto, 50 * PSI);
    pass(6);
    stepper.brake(auto, 0);
    pass(17.5);
    Snapshot kept = stepper.save();
    stepper.brake(auto, 50 * PSI);
    pass(6);
    stepper.brake(auto, 0);
    pass(1);
    stepper.restore(kept);
    assertThat(stepper.availablePa(auto)).isCloseTo(67.5 * 2.5 / 3.5 * PSI, within(1.0));
  }

  /** A train of the worst case takes over what the planned run has left. */
  @Test
  void the_charge_of_another_run_is_taken_over() {
    stepper.brake(auto, 50 * PSI);
    pass(6);
    stepper.brake(auto, 0);
    pass(17.5);
    Stepper other = Textbook.train(40, 0).onGradient(0);
    other.place(stepper.timeS(), 0, 30);
    assertThat(other.availablePa(auto)).isCloseTo(50 * PSI, within(1.0));
    other.chargeAs(stepper);
    assertThat(other.availablePa(auto)).isCloseTo(67.5 * 2.5 / 3.5 * PSI, within(1.0));
  }
}
