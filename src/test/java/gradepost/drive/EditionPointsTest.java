package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.FullBraking;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.motion.TrainBrake;
import gradepost.policy.DegradedRules;
import gradepost.policy.Policy;
import gradepost.policy.SafeSide;
import gradepost.policy.Technique;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.stock.WorkingBrakes;
import gradepost.task.Assignment;
import gradepost.task.DegradedRun;
import gradepost.task.Edition;
import gradepost.task.Target;
import gradepost.units.Pressure;
import gradepost.units.Speed;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Property: from one speed, a train whose brake is not whole never needs less room. Its points in a
 * plan may still lie later: its clause keeps it slower, and one application without eases takes
 * less room than the eased run-in of the ordinary technique. So the techniques compared here are
 * the same.
 */
class EditionPointsTest {
  private static final int CASES = 150;
  private static final Target.Signal STOP = new Target.Signal("S 1", 5000);

  private static double technique(Assignment a, double fromMps) {
    TrainModels bench = new TrainModels(a);
    Stepper stepper = bench.plannedStepper();
    stepper.place(0, 1500, fromMps);
    Braking.Outcome outcome = Braking.of(a, bench, STOP).run(stepper);
    return outcome.held() ? outcome.endM() - 1500 : Double.POSITIVE_INFINITY;
  }

  private static double fullService(Assignment a, double fromMps) {
    TrainModels bench = new TrainModels(a);
    Stepper worst = bench.worstStepper(a.policy().plannedAdhesion());
    worst.place(0, 1500, fromMps);
    TrainBrake rig = bench.worstRig(a.stock().service());
    double shortM = new FullBraking(EvenLine.LENGTH_M, STOP, worst, rig).shortM();
    return shortM < -1e5 ? Double.POSITIVE_INFINITY : STOP.atM() - shortM - 1500;
  }

  /** Some line, policy and speed of so many. */
  private record Case(Assignment line, double fromMps, List<Integer> vehicles) {
    static Case of(Random random) {
      SafeSide safe =
          new SafeSide(LoadCase.CRUSH, new Speed(1), 0.9, random.nextBoolean() ? 0.25 : 0);
      Assignment line = EvenLine.of(-12 + 20 * random.nextDouble(), Mill.policy().adhesion(), safe);
      List<Integer> all = List.of(1, 2, 3, 4);
      int from = random.nextInt(3);
      return new Case(
          line, 6 + 18 * random.nextDouble(), all.subList(from, from + 1 + random.nextInt(2)));
    }
  }

  @Test
  void someVehiclesWithoutBrakeNeverBrakeLater() {
    Random random = new Random(1);
    for (int i = 0; i < CASES; i++) {
      Case c = Case.of(random);
      for (Edition.Kind kind : List.of(Edition.Kind.EP_ON_PART, Edition.Kind.BRAKES_ISOLATED)) {
        Assignment some = c.line().with(EditionLine.some(kind, c.vehicles()));
        assertThat(technique(some, c.fromMps()))
            .as("%s %s", kind, c)
            .isGreaterThan(technique(c.line(), c.fromMps()) + 1);
        assertThat(fullService(some, c.fromMps()))
            .as("%s %s", kind, c)
            .isGreaterThan(fullService(c.line(), c.fromMps()) + 1);
      }
    }
  }

  @Test
  void theAutomaticBrakeAloneNeverBrakesLaterByTheSameTechnique() {
    Random random = new Random(2);
    DegradedRules.AutomaticTechnique technique = EditionLine.TECHNIQUE;
    for (int i = 0; i < CASES; i++) {
      Case c = Case.of(random);
      Assignment out = c.line().with(EditionLine.out(40));
      Policy once = c.line().policy().with(technique);
      assertThat(technique(out, c.fromMps()))
          .as("%s", c)
          .isGreaterThan(technique(c.line().with(once), c.fromMps()) + 1);
      assertThat(fullService(out, c.fromMps()))
          .as("%s", c)
          .isGreaterThan(fullService(c.line(), c.fromMps()) + 1);
    }
  }

  @Test
  void aTechniqueWithAnEaseIsNoneForABrakeThatCannotBeEased() {
    Technique eased =
        new Technique(
            Pressure.ofPsi(12),
            EditionLine.TECHNIQUE.stopping().firstHeld(),
            Pressure.ofPsi(25),
            List.of(new Technique.Ease(new Speed(3), Pressure.ofPsi(6))));
    org.assertj.core.api.Assertions.assertThatThrownBy(
            () ->
                new DegradedRules.AutomaticTechnique(
                    eased,
                    EditionLine.TECHNIQUE.restriction(),
                    Pressure.ofPsi(12),
                    "stops",
                    "lower speeds"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * By hand: four equal brakes. The one named as isolated is the one that the policy's share of a
   * quarter takes first, so that it has to take another. Two brake; they answer as the two rearmost
   * of the three that work.
   */
  @Test
  void isolatedVehiclesComeOnTopOfTheShareOfThePolicy() {
    Assignment line = EvenLine.of(0);
    BrakeSystem auto = line.stock().brakes().get(1);
    Assignment one = line.with(EditionLine.some(Edition.Kind.BRAKES_ISOLATED, List.of(1)));
    TrainBrake whole = new TrainModels(line).worstRig(auto);
    TrainBrake rest = new TrainModels(one).worstRig(auto);
    assertThat(braking(whole)).isEqualTo(3);
    assertThat(braking(rest)).isEqualTo(2);
    assertThat(whole.gainNPerPa()[0]).isZero();
    assertThat(rest.gainNPerPa()[0]).isZero();
    assertThat(Arrays.stream(rest.gainNPerPa()).sum())
        .isCloseTo(Arrays.stream(whole.gainNPerPa()).sum() * 2 / 3, within(1e-9));
    // Valves at 10, 30, 50 and 70 m; of the three that work the foremost is the policy's.
    for (int i = 0; i < 4; i++) {
      if (rest.gainNPerPa()[i] > 0) {
        assertThat(rest.delayS()[i]).isIn(50 / 250.0, 70 / 250.0);
      }
    }
    assertThat(braking(new TrainModels(one).service())).isEqualTo(3);
  }

  /** By hand: EP works on two of four, the automatic brake behind it on all. */
  @Test
  void epOnPartLeavesTheAutomaticBrakeWhole() {
    Assignment part =
        EvenLine.of(0, Mill.policy().adhesion(), EvenLine.SAFE)
            .with(EditionLine.some(Edition.Kind.EP_ON_PART, List.of(1, 2)));
    TrainModels bench = new TrainModels(part);
    assertThat(braking(bench.service())).isEqualTo(2);
    assertThat(braking(bench.worstRig(part.stock().brakes().get(1)))).isEqualTo(3);
    assertThat(part.formation().numbersWith(WorkingBrakes.ALL_BUT_SERVICE))
        .isEqualTo(List.of(1, 2));
  }

  /** Vehicles are counted from the end that leads in the forward direction, whichever leads now. */
  @Test
  void theVehiclesStayTheSameWhenTheOtherEndLeads() {
    Assignment back = Mill.assignment(gradepost.route.place.Direction.BACKWARD, "4-car");
    DegradedRun run = EditionLine.some(Edition.Kind.BRAKES_ISOLATED, List.of(1));
    assertThat(back.with(run).formation().numbersWith(WorkingBrakes.NONE)).isEqualTo(List.of(4));
    assertThat(back.with(run).degraded()).isEqualTo(Optional.of(run));
  }

  private static int braking(TrainBrake rig) {
    return (int) Arrays.stream(rig.gainNPerPa()).filter(g -> g > 0).count();
  }
}
