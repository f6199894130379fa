package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.MadeUp;
import gradepost.drive.Planner;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Train;
import gradepost.motion.TrainBrake;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Rung;
import gradepost.policy.SafeSide;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.task.Assignment;
import gradepost.units.Speed;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Property: each number by which a policy leans to the safe side reaches the last places. */
class SafeSideTest {
  private static final SafeSide NONE = new SafeSide(LoadCase.SEATED, new Speed(0), 1, 0);
  private static final SafeSide ONE_ISOLATED = new SafeSide(LoadCase.SEATED, new Speed(0), 1, 0.25);
  private static final SafeSide LESS_FORCE = new SafeSide(LoadCase.SEATED, new Speed(0), 0.8, 0);
  private static final SafeSide CRUSH = new SafeSide(LoadCase.CRUSH, new Speed(0), 1, 0);
  private static final SafeSide FASTER = new SafeSide(LoadCase.SEATED, new Speed(2), 1, 0);

  private static final String DRY = ", dry, ";

  private static double sum(double[] values) {
    return Arrays.stream(values).sum();
  }

  private static TrainModels models(SafeSide safe) {
    return new TrainModels(MadeUp.leaning(safe));
  }

  private static List<BrakeSystem> brakes() {
    return MadeUp.leaning(NONE).stock().brakes();
  }

  @Test
  void anIsolatedVehicleDoesNotBrakeAndTheOthersBrakeAsBefore() {
    for (BrakeSystem system : brakes()) {
      double[] all = models(NONE).worstRig(system).gainNPerPa();
      double[] left = models(ONE_ISOLATED).worstRig(system).gainNPerPa();
      assertThat(all).hasSize(4).doesNotContain(0);
      assertThat(left[0]).isZero();
      assertThat(Arrays.copyOfRange(left, 1, 4)).isEqualTo(Arrays.copyOfRange(all, 1, 4));
    }
  }

  /** The front vehicle is the one that would answer first. */
  @Test
  void withTheFrontVehicleIsolatedTheBrakeAnswersLater() {
    BrakeSystem automatic = brakes().get(1);
    TrainBrake all = models(NONE).worstRig(automatic);
    TrainBrake left = models(ONE_ISOLATED).worstRig(automatic);
    for (int i = 1; i < 3; i++) {
      assertThat(left.delayS()[i]).isGreaterThanOrEqualTo(all.delayS()[i]);
    }
    assertThat(left.delayS()[1]).isEqualTo(all.delayS()[1]);
    assertThat(sum(left.gainNPerPa())).isLessThan(0.8 * sum(all.gainNPerPa()));
  }

  @Test
  void onlyTheShareOfTheForceIsCountedOn() {
    for (BrakeSystem system : brakes()) {
      assertThat(sum(models(LESS_FORCE).worstRig(system).gainNPerPa()))
          .isCloseTo(0.8 * sum(models(NONE).worstRig(system).gainNPerPa()), within(1e-9));
    }
  }

  @Test
  void theLoadIsThatOfThePolicyAndThePlanKeepsItsOwn() {
    Assignment assignment = MadeUp.leaning(CRUSH);
    Train crush = Train.of(assignment.stock(), assignment.formation(), LoadCase.CRUSH);
    Train seated = Train.of(assignment.stock(), assignment.formation(), LoadCase.SEATED);
    TrainModels models = models(CRUSH);
    assertThat(models.worstTrain().inertiaKg()).isEqualTo(crush.inertiaKg());
    assertThat(models.plannedTrain().inertiaKg()).isEqualTo(seated.inertiaKg());
    assertThat(crush.inertiaKg()).isGreaterThan(1.05 * seated.inertiaKg());
  }

  /** What is planned does not lean: the policy's safe side is for the last places alone. */
  @Test
  void thePlannedBrakeIsWholeUnderEveryPolicy() {
    double[] whole = models(NONE).service().gainNPerPa();
    for (SafeSide safe : List.of(ONE_ISOLATED, LESS_FORCE, CRUSH, FASTER)) {
      assertThat(models(safe).service().gainNPerPa()).isEqualTo(whole);
      assertThat(models(safe).slowing().gainNPerPa()).isEqualTo(whole);
    }
  }

  /**
   * Beside the stop at the end of a level line: 2 m/s more than some 10 m/s at less than 1.5 m/s²
   * are (2 · 10 · 2 + 2²) / (2 · 1.5) = 15 m; a fifth or a quarter less force, or a tenth more
   * mass, on some 50 m of braking are 5 m at the least.
   */
  @Test
  void eachOfThemMovesEveryLastPlaceBack() {
    Map<String, Double> free = lastPlaces(NONE);
    assertThat(free).hasSizeGreaterThan(5);
    assertEarlier(free, lastPlaces(ONE_ISOLATED), "", 1);
    assertEarlier(free, lastPlaces(ONE_ISOLATED), DRY, 5);
    assertEarlier(free, lastPlaces(LESS_FORCE), "", -1e-6);
    assertEarlier(free, lastPlaces(LESS_FORCE), DRY, 5);
    assertEarlier(free, lastPlaces(FASTER), "", 15);
    assertEarlier(free, lastPlaces(CRUSH), "", -1e-6);
    assertEarlier(free, lastPlaces(CRUSH), "dry, emergency", 1);
  }

  private static void assertEarlier(
      Map<String, Double> free, Map<String, Double> lean, String of, double byM) {
    assertThat(lean.keySet()).isEqualTo(free.keySet()).anyMatch(what -> what.contains(of));
    free.forEach(
        (what, at) -> {
          if (what.contains(of)) {
            assertThat(at - lean.get(what)).as(what).isGreaterThan(byM);
          }
        });
  }

  /** By the target, the state of the rail and the brake. */
  private static Map<String, Double> lastPlaces(SafeSide safe) {
    Plan plan = Planner.plan(MadeUp.leaning(safe));
    assertThat(plan.failures()).isEmpty();
    Map<String, Double> out = new TreeMap<>();
    plan.approaches()
        .forEach(
            a ->
                a.applications().stream()
                    .flatMap(application -> application.cases().stream())
                    .forEach(c -> put(out, a.target().name(), c)));
    return out;
  }

  private static void put(Map<String, Double> out, String target, CaseResult result) {
    for (Rung rung : result.ladder()) {
      rung.latest()
          .point()
          .map(Latest.Point::exactM)
          .ifPresent(
              at ->
                  out.put(
                      target + ", " + result.adhesion().name() + ", " + rung.brake().name(), at));
    }
  }
}
