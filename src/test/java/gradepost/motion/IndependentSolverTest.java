package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Validation by another solver: the same equations, written a second time and integrated by
 * Hipparchus' Dormand–Prince 8(5,3) with tolerance 1e-10, on random legal routes and trains.
 */
@Tag("slow")
class IndependentSolverTest {
  private static final int SEEDS = Integer.getInteger("gradepost.seeds", Examples.of(20, 60));

  /** Far below the 0.1 m that a published braking point may be off. */
  private static final double WITHIN_M = 1e-3;

  @Test
  void places_and_times_agree_with_an_independent_solver() {
    double worstS = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      Scenario scenario = new Scenario(seed);
      Stepper ours = scenario.stepper();
      Oracle theirs = new Oracle(scenario, 1e-10);
      TrainBrake rig = scenario.rig();
      double at = scenario.between(300, 2500);
      double speed = scenario.between(0.5, 18);
      ours.place(0, at, speed);
      theirs.place(at, speed);
      for (int act = 0; act < 6; act++) {
        double pressure = scenario.between(0.1, 1) * rig.fullPa();
        int notch = scenario.random.nextInt(3);
        switch (act) {
          case 0 -> {
            ours.power(notch);
            theirs.power(notch);
          }
          case 1 -> {
            ours.shutOff();
            theirs.power(-1);
          }
          default -> {
            ours.brake(rig, act == 5 ? rig.fullPa() : pressure);
            theirs.brake(act == 5 ? rig.fullPa() : pressure);
          }
        }
        double[] leg = {3000, 800, 100, 60, 40, 8000};
        at = Math.min(Scenario.LENGTH_M + 500, at + scenario.between(0.3, 1) * leg[act]);
        StopReason ended = ours.advance(new StopConditions().place(at));
        theirs.runTo(at);
        assertThat(ended).isIn(StopReason.PLACE, StopReason.STANDSTILL);
        double offM = Math.abs(ours.atM() - theirs.atM());
        assertThat(offM).as("seed %d act %d %s at %f", seed, act, ended, at).isLessThan(WITHIN_M);
        worstS = Math.max(worstS, Math.abs(ours.timeS() - theirs.timeS()));
        if (ended == StopReason.STANDSTILL) {
          break;
        }
      }
    }
    assertThat(worstS).isLessThan(1e-3);
  }
}
