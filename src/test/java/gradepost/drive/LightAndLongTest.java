package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.motion.LowAdhesionRail;
import gradepost.motion.Train;
import gradepost.motion.TrainBrake;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Rung;
import gradepost.policy.AdhesionCase;
import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.units.Exact;
import gradepost.units.Pressure;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: on a rail that is not dry the main application is one that every axle carries. */
@Tag("slow")
class LightAndLongTest {

  @Test
  void everyAxleIsCarriedByTheRailThatTheBrakingPasses() {
    int onSites = 0;
    for (int index : new int[] {0, 7}) {
      Assignment assignment = DemoPlans.assignments().get(index);
      for (Approach approach : Planner.plan(assignment).approaches()) {
        for (Application application : approach.applications()) {
          for (CaseResult result : application.cases().subList(1, application.cases().size())) {
            onSites += carried(assignment, application, result) ? 1 : 0;
          }
        }
      }
    }
    assertThat(onSites).isGreaterThan(4);
  }

  /** Whether the braking passes a low-adhesion site. */
  private static boolean carried(Assignment assignment, Application application, CaseResult c) {
    Train train = Train.of(assignment.stock(), assignment.formation(), assignment.load());
    BrakeSystem service = assignment.stock().service();
    TrainBrake rig =
        TrainBrake.of(
            assignment.stock(), assignment.formation(), assignment.load(), train, service, 1, 0);
    if (c.plannedM().isEmpty()) {
      return false;
    }
    double from = c.plannedM().get();
    double rear = from - train.totalLengthM();
    boolean site =
        LowAdhesionRail.stretches(assignment.path(), assignment.lines()).stream()
            .anyMatch(s -> s.fromM() < application.target().atM() && s.toM() > rear);
    double v = application.brakingSpeedMps();
    double mu = c.adhesion().law().mu(v);
    if (site) {
      mu = Math.min(mu, c.adhesion().sites().orElseThrow().mu(v));
    }
    if (c.mainPressurePa() > lightest(service)) {
      for (int i = 0; i < train.vehicles(); i++) {
        double pull =
            rig.gainNPerPa()[i]
                * (c.mainPressurePa() - rig.thresholdPa())
                * rig.blocks().friction(v);
        assertThat(pull)
            .as("%s, %s", application.target().name(), c.adhesion().name())
            .isLessThanOrEqualTo(mu * train.massKg()[i] * Exact.G);
      }
    }
    return site;
  }

  private static double lightest(BrakeSystem service) {
    return service.control() instanceof BrakeControl.Steps steps
        ? steps.pressures().stream()
            .map(Pressure::pascals)
            .min(Comparator.naturalOrder())
            .orElse(0.0)
        : 0;
  }

  /**
   * By hand, for the cutting before Ferrow Road: a seated trailer of 39.5 t carries 0.04 · 39.5 ·
   * 9.807 = 15.5 kN there. Its blocks, 1 of 4.3 shares of 0.85 m/s² · 163.9 t = 139 kN at 50 psi
   * (48 above the springs), give 32.4 kN at the mean friction from 60 mph, so that 0.04 would carry
   * 25 psi if cast iron did not bite harder as the train slows: at 12 mph more than half as much
   * again.
   */
  @Test
  void theCuttingBeforeFerrowRoadIsLight() {
    Plan plan = DemoPlans.plan(0);
    List<CaseResult> cases =
        plan.approaches().stream()
            .filter(a -> a.target().name().equals("Ferrow Road"))
            .findFirst()
            .orElseThrow()
            .first()
            .orElseThrow()
            .cases();
    for (CaseResult damp : cases.subList(1, 3)) {
      assertThat(damp.mainPressurePa() / Pressure.ofPsi(1).pascals()).isCloseTo(16, within(1.5));
      assertThat(damp.plannedM().orElseThrow())
          .isLessThan(cases.get(0).plannedM().orElseThrow() - 200);
    }
  }

  @Test
  void aPointPastTheBrakesOwnLastPlaceSaysHowFar() {
    BrakeSystem service = DemoPlans.assignments().get(0).stock().service();
    AdhesionCase low = DemoPlans.assignments().get(0).policy().adhesion().get(2);
    assertThat(result(low, service, 1000, 960).pastLastM()).contains(40.0);
    assertThat(result(low, service, 1000, 1000).pastLastM()).isEmpty();
    assertThat(result(low, service, 1000, 1040).pastLastM()).isEmpty();
  }

  private static CaseResult result(
      AdhesionCase low, BrakeSystem service, double plannedM, double lastM) {
    Rung rung = new Rung(service, new Latest.Point(lastM, lastM, 20, 0));
    return new CaseResult(
        low,
        Optional.of(plannedM),
        100_000,
        List.of(),
        true,
        List.of(rung),
        List.of(),
        Optional.of(plannedM),
        Optional.of(0.0));
  }
}
