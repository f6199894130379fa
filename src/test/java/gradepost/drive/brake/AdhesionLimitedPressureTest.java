package gradepost.drive.brake;

import static gradepost.drive.EvenLine.SEATED_T;
import static gradepost.drive.EvenLine.pascals;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.policy.AdhesionCase;
import gradepost.route.LowAdhesionSite;
import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.ShareOf;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: no axle is asked for more than its rail bears. Every vehicle has a
 * quarter of the brake, and a trailer of 35 t bears least.
 */
class AdhesionLimitedPressureTest {
  private static final Target STAND = new Target.Signal("S 1", 4000);

  private static Braking lighter(AdhesionLaw law, double fromMps, double[] easePa) {
    Assignment a = EvenLine.of(0);
    TrainModels models = new TrainModels(a);
    Braking usual = Braking.of(a, models, STAND).withMain(pascals(40)).withEases(easePa);
    return new AdhesionLimitedPressure(a, models, new AdhesionCase("low", law, ""))
        .lighter(usual, fromMps, 3000, 4000);
  }

  /** The pressure at which a trailer's quarter of the brake is what its rail bears, in bar. */
  private static double mostBar(double mu) {
    double bearsKn = mu * 35 * 9.80665;
    double knPerPsi = 0.85 * SEATED_T / 4 / 46;
    return (4 + bearsKn / knPerPsi) * pascals(1) / 1e5;
  }

  private static final double[] NONE = {3e5, 2.5e5};

  @Test
  void theTrailersBearTheLeast() {
    Braking light = lighter(new ConstantAdhesion(0.05), 20, NONE);
    double bar = Math.floor(10 * mostBar(0.05)) / 10;
    assertThat(mostBar(0.05)).isBetween(1.7, 1.8);
    assertThat(light.mainPa()).isCloseTo(bar * 1e5, within(1e-3));
    assertThat(Arrays.stream(light.easePa()).boxed()).allMatch(p -> Math.abs(p - bar * 1e5) < 1e-3);
    assertThat(lighter(new ConstantAdhesion(0.2), 20, NONE).mainPa()).isEqualTo(pascals(40));
  }

  /** 0.161 + 7.5 / (V + 44), V in km/h (Curtius and Kniffler 1944): the faster, the less. */
  @Test
  void eachStageIsLightEnoughForTheFastestOfIt() {
    AdhesionLaw law = new ShareOf(new CurtiusKniffler(), 0.25);
    double[] at = Braking.of(EvenLine.of(0), new TrainModels(EvenLine.of(0)), STAND).easeAtMps();
    Braking light = lighter(law, 25, NONE);
    assertThat(light.mainPa() / 1e5).isCloseTo(floor(mostBar(mu(25))), within(1e-6));
    assertThat(light.easePa()[0] / 1e5).isCloseTo(floor(mostBar(mu(at[0]))), within(1e-6));
    assertThat(light.easePa()[1] / 1e5).isCloseTo(floor(mostBar(mu(at[1]))), within(1e-6));
    assertThat(light.mainPa()).isLessThan(light.easePa()[0]);
    assertThat(light.easePa()[0]).isLessThan(light.easePa()[1]);
  }

  private static double mu(double mps) {
    return 0.25 * (0.161 + 7.5 / (mps * 3.6 + 44));
  }

  private static double floor(double bar) {
    return Math.floor(bar * 10) / 10;
  }

  private static Braking onSites(double siteFromM, double siteToM) {
    Assignment a =
        EvenLine.slippery(
            EvenLine.of(0),
            List.of(
                new LowAdhesionSite(
                    "cutting",
                    new Extent(EvenLine.at(siteFromM), EvenLine.at(siteToM)),
                    Applies.EVERYWHERE,
                    "")));
    TrainModels models = new TrainModels(a);
    AdhesionCase usual =
        new AdhesionCase("damp", new ConstantAdhesion(0.06), "")
            .withSites(new ConstantAdhesion(0.05));
    return new AdhesionLimitedPressure(a, models, usual)
        .lighter(
            Braking.of(a, models, STAND).withMain(pascals(40)).withEases(NONE), 20, 3000, 4000);
  }

  /** Of 80 m, the train that begins at 3000 m is on the rail from 2920 m on, up to the target. */
  @Test
  void aSiteUnderAnyPartOfTheBrakingCounts() {
    double usual = floor(mostBar(0.06)) * 1e5;
    double poor = floor(mostBar(0.05)) * 1e5;
    assertThat(usual).isGreaterThan(poor + 1);
    assertThat(onSites(3500, 3520).mainPa()).isCloseTo(poor, within(1e-3));
    assertThat(onSites(2900, 2921).mainPa()).isCloseTo(poor, within(1e-3));
    assertThat(onSites(3999, 4100).mainPa()).isCloseTo(poor, within(1e-3));
    assertThat(onSites(2900, 2919).mainPa()).isCloseTo(usual, within(1e-3));
    assertThat(onSites(4001, 4100).mainPa()).isCloseTo(usual, within(1e-3));
  }

  @Test
  void aReleaseStaysARelease() {
    Braking light = lighter(new ConstantAdhesion(0.05), 20, new double[] {3e5, 0});
    assertThat(light.easePa()[1]).isZero();
    assertThat(List.of(light.firstPa())).allMatch(p -> p <= light.mainPa());
  }
}
