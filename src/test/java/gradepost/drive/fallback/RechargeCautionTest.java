package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Arrangements;
import gradepost.drive.Mill;
import gradepost.drive.Planner;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.plan.Trigger;
import gradepost.plan.fallback.Latest;
import gradepost.policy.Policy;
import gradepost.route.place.Direction;
import gradepost.stock.BrakePreset;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Stock;
import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A second application soon after a full release has less to give, and the driver is told. */
class RechargeCautionTest {

  private static Stock recharging(double psiPerSecond) {
    List<BrakeSystem> brakes = new ArrayList<>();
    for (BrakeSystem b : BrakePreset.EP_AND_AUTOMATIC_AIR.systems()) {
      brakes.add(
          new BrakeSystem(
              b.name(),
              b.shortName(),
              b.role(),
              b.action(),
              b.application(),
              b.release(),
              b.gradualRelease(),
              b.control(),
              b.full(),
              b.pipe(),
              b.recharge().map(r -> new PressureRate(Pressure.ofPsi(psiPerSecond).pascals())),
              b.percentage()));
    }
    return Arrangements.braked(brakes);
  }

  private static List<Finding.LessToGive> cautions(Stock stock, Policy policy) {
    return Planner.plan(Arrangements.assignment(Direction.FORWARD, 0, stock, policy))
        .approaches()
        .stream()
        .flatMap(a -> a.findings().stream())
        .filter(Finding.LessToGive.class::isInstance)
        .map(Finding.LessToGive.class::cast)
        .toList();
  }

  /**
   * Derived from common practice (70 psi pipe, 20 psi reduction, 50 psi in the cylinder) with the
   * handbook's 2.5 (Howard 1913): 50 psi left in the reservoir equalises at 50·2.5/3.5.
   */
  @Test
  void whatIsLeftOfAFullApplication() {
    BrakeSystem automatic = recharging(1).brakes().get(1);
    double psi = Pressure.ofPsi(1).pascals();
    assertThat(RechargeCaution.availablePa(automatic, 0) / psi).isCloseTo(35.71, within(0.01));
    assertThat(RechargeCaution.availablePa(automatic, 7) / psi).isCloseTo(40.71, within(0.01));
    assertThat(RechargeCaution.availablePa(automatic, 20) / psi).isCloseTo(50, within(0.01));
    assertThat(RechargeCaution.availablePa(automatic, 500) / psi).isCloseTo(50, within(0.01));
  }

  @Test
  void aFallbackThatFillsSlowlyIsCautionedAgainstAndAQuickOneIsNot() {
    List<Finding.LessToGive> slow = cautions(recharging(0.02), Mill.policy());
    assertThat(slow).isNotEmpty();
    assertThat(slow).allMatch(c -> !c.planned() && c.brake().shortName().equals("Auto"));
    assertThat(slow)
        .allSatisfy(
            c ->
                assertThat(c.givesPa())
                    .isBetween(Pressure.ofPsi(35).pascals(), Pressure.ofPsi(49).pascals()));
    assertThat(cautions(recharging(50), Mill.policy())).isEmpty();
  }

  /** Property: the seconds since the release are those of the run, at whatever stop it is. */
  @Test
  void theSecondsSinceTheReleaseAreThoseOfTheRun() {
    Plan plan =
        Planner.plan(
            Arrangements.assignment(Direction.FORWARD, 0, recharging(0.02), Mill.policy()));
    int cautions = 0;
    for (Approach approach : plan.approaches()) {
      for (Finding finding : approach.findings()) {
        if (finding instanceof Finding.LessToGive less) {
          // Up a terminal platform for that application at which it is worst.
          assertThat(approach.applications())
              .map(application -> braked(plan, application))
              .anyMatch(braked -> released(plan, braked.timeS() - less.afterS()));
          cautions++;
        }
      }
    }
    assertThat(cautions).isPositive();
  }

  private static Action braked(Plan plan, Application application) {
    return plan.actions().stream()
        .filter(a -> a.command() instanceof Command.Brake)
        .filter(a -> Math.abs(a.atM() - application.brakingPointM()) < 0.01)
        .findFirst()
        .orElseThrow();
  }

  private static boolean released(Plan plan, double atS) {
    return plan.actions().stream()
        .filter(a -> a.command() instanceof Command.Release || a.trigger() instanceof Trigger.Start)
        .anyMatch(a -> Math.abs(atS - a.timeS()) < 1e-6);
  }

  @Test
  void stockWithoutARechargeHasNone() {
    assertThat(cautions(Mill.stock(), Mill.policy())).isEmpty();
  }

  /** Property: what the reservoirs lack, the latest places of the next approach do not count on. */
  @Test
  void latestPlacesKnowWhatThePlannedRunHasTaken() {
    Plan slow = planOnOnePipe(0.02);
    Plan quick = planOnOnePipe(50);
    // The first approach begins with full reservoirs; the stop behind the curve does not.
    assertThat(latestM(slow, 0)).isCloseTo(latestM(quick, 0), within(0.02));
    assertThat(slow.approaches().get(1).brakingPointM())
        .isEqualTo(quick.approaches().get(1).brakingPointM());
    assertThat(latestM(slow, 1)).isLessThan(latestM(quick, 1) - 1);
    assertThat(
            slow.approaches().stream()
                .flatMap(a -> a.findings().stream())
                .filter(f -> f instanceof Finding.LessToGive less && less.planned()))
        .isNotEmpty();
    assertThat(
            quick.approaches().stream()
                .flatMap(a -> a.findings().stream())
                .filter(f -> f instanceof Finding.LessToGive))
        .isEmpty();
  }

  /** For full service. */
  private static double latestM(Plan plan, int approach) {
    Latest latest =
        plan.approaches()
            .get(approach)
            .first()
            .orElseThrow()
            .cases()
            .get(0)
            .ladder()
            .get(0)
            .latest();
    assertThat(latest).isInstanceOf(Latest.Point.class);
    return ((Latest.Point) latest).exactM();
  }

  private static Plan planOnOnePipe(double psiPerSecond) {
    List<BrakeSystem> brakes =
        Arrangements.onePipe().brakes().stream()
            .map(
                b ->
                    new BrakeSystem(
                        b.name(),
                        b.shortName(),
                        b.role(),
                        b.action(),
                        b.application(),
                        b.release(),
                        b.gradualRelease(),
                        b.control(),
                        b.full(),
                        b.pipe(),
                        Optional.of(new PressureRate(Pressure.ofPsi(psiPerSecond).pascals())),
                        b.percentage()))
            .toList();
    return Planner.plan(
        Arrangements.assignment(
            Direction.FORWARD, 0, Arrangements.braked(brakes), Arrangements.fullRelease()));
  }
}
