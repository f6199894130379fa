package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import gradepost.units.Span;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** By hand: what can be asked of a brake, with a gauge of tenths of a bar. */
class PressuresTest {
  private static final double STEP = 1e4;
  private static final BrakeSystem ANY = brake(new BrakeControl.Continuous());
  private static final BrakeSystem STEPS =
      brake(
          new BrakeControl.Steps(
              List.of(Pressure.ofBar(1), Pressure.ofBar(2), Pressure.ofBar(3.5))));

  private static BrakeSystem brake(BrakeControl control) {
    return new BrakeSystem(
        "brake",
        "B",
        BrakeSystem.Role.SERVICE,
        new BrakeAction.Simultaneous(new Span(0.3)),
        new PressureRate(1e5),
        new PressureRate(1e5),
        true,
        control,
        Pressure.ofBar(3.5),
        Optional.empty());
  }

  @Test
  void whatIsStatedIsAskedAsTheGaugeShowsIt() {
    assertThat(Pressures.asked(ANY, 1.234e5, STEP)).isEqualTo(1.2e5);
    assertThat(Pressures.asked(ANY, 1.26e5, STEP)).isEqualTo(1.3e5);
    assertThat(Pressures.asked(ANY, 9e5, STEP)).isEqualTo(3.5e5);
    assertThat(Pressures.asked(ANY, 1, STEP)).isEqualTo(STEP);
    assertThat(Pressures.asked(ANY, 1.2e5 + 0.0009, STEP)).isEqualTo(1.2e5 + 0.0009);
    assertThat(Pressures.asked(ANY, 1.2e5 + 0.0011, STEP)).isEqualTo(1.2e5);
  }

  /** Never less than what is stated, but for a pascal of arithmetic. */
  @Test
  void ofABrakeWithStepsTheNextOneUp() {
    assertThat(Pressures.asked(STEPS, 0.5e5, STEP)).isEqualTo(1e5);
    assertThat(Pressures.asked(STEPS, 1e5 + 1, STEP)).isEqualTo(1e5);
    assertThat(Pressures.asked(STEPS, 1e5 + 2, STEP)).isEqualTo(2e5);
    assertThat(Pressures.asked(STEPS, 9e5, STEP)).isEqualTo(3.5e5);
  }

  /** What the rail bears is not exceeded. */
  @Test
  void atMostIsDownToAStep() {
    assertThat(Pressures.atMost(ANY, 1.29e5, STEP)).isEqualTo(1.2e5);
    assertThat(Pressures.atMost(ANY, 1.3e5, STEP)).isEqualTo(1.3e5);
    assertThat(Pressures.atMost(ANY, 0.01e5, STEP)).isEqualTo(STEP);
    assertThat(Pressures.atMost(STEPS, 1.9e5, STEP)).isEqualTo(1e5);
    assertThat(Pressures.atMost(STEPS, 2e5 - 1, STEP)).isEqualTo(2e5);
    assertThat(Pressures.atMost(STEPS, 2e5 - 2, STEP)).isEqualTo(1e5);
    assertThat(Pressures.atMost(STEPS, 0.5e5, STEP)).isEqualTo(1e5);
  }

  @Test
  void theMainApplicationsAreFromTheHeaviestDownToTheFirst() {
    assertThat(Pressures.mains(ANY, 1.2e5, 1.5e5, STEP))
        .containsExactly(1.5e5, 1.4e5, 1.3e5, 1.2e5);
    assertThat(Pressures.mains(ANY, 3.4e5, 9e5, STEP)).containsExactly(3.5e5, 3.4e5);
    assertThat(Pressures.mains(STEPS, 1e5, 3e5, STEP)).containsExactly(2e5, 1e5);
    assertThat(Pressures.mains(STEPS, 1e5 + 1, 2e5 - 1, STEP)).containsExactly(2e5, 1e5);
    assertThat(Pressures.mains(STEPS, 1e5 + 2, 2e5 - 2, STEP)).isEmpty();
    assertThat(Pressures.mains(STEPS, 1.5e5, 9e5, STEP)).containsExactly(3.5e5, 2e5);
  }
}
