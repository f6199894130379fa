package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.EvenLine;
import gradepost.policy.AdhesionCase;
import gradepost.route.LowAdhesionSite;
import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.ShareOf;
import gradepost.task.Assignment;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: no rail is left out that may be the poorest for a braking. */
class PoorestRailTest {
  private static final AdhesionCase DRY = EvenLine.of(0).policy().plannedAdhesion();
  private static final AdhesionCase DAMP = rail("damp", 0.1);
  private static final AdhesionCase LOW = rail("low", 0.06);

  private static AdhesionCase rail(String name, double mu) {
    return new AdhesionCase(name, new ConstantAdhesion(mu), "");
  }

  private static List<String> of(List<LowAdhesionSite> sites, AdhesionCase... cases) {
    Assignment assignment = EvenLine.of(0, List.of(cases), EvenLine.SAFE);
    return PoorestRail.of(sites.isEmpty() ? assignment : EvenLine.slippery(assignment, sites))
        .stream()
        .map(AdhesionCase::name)
        .toList();
  }

  private static final List<LowAdhesionSite> SITES =
      List.of(
          new LowAdhesionSite(
              "wood",
              new Extent(EvenLine.at(3000), EvenLine.at(3200)),
              Applies.EVERYWHERE,
              "leaves"));

  @Test
  void theOneThatBearsLessThanAnyOtherIsEnough() {
    assertThat(of(List.of(), DRY, DAMP, LOW)).containsExactly("low");
    assertThat(of(List.of(), DRY, LOW, DAMP)).containsExactly("low");
    assertThat(of(List.of(), DRY)).isEmpty();
    assertThat(of(List.of(), DRY, LOW, rail("leaves", 0.06))).hasSize(1);
  }

  /**
   * A third of Curtius and Kniffler's is 0.11 at a stand and 0.065 at 100 km/h (0.161 + 7.5/(V +
   * 44), 1944): more than 0.08 slowly, and less fast.
   */
  @Test
  void ofTwoThatCrossBothMayBeThePoorest() {
    AdhesionCase third = new AdhesionCase("third", new ShareOf(DRY.law(), 0.33), "");
    assertThat(of(List.of(), DRY, third, rail("even", 0.08))).containsExactly("third", "even");
  }

  /** Poorer on the sites alone: only where the route has any. */
  @Test
  void aRailThatIsPoorerOnTheSitesCountsWhereThereAreSites() {
    AdhesionCase leaves = DAMP.withSites(new ConstantAdhesion(0.03));
    assertThat(of(List.of(), DRY, leaves, LOW)).containsExactly("low");
    assertThat(of(SITES, DRY, leaves, LOW)).containsExactly("damp", "low");
    assertThat(of(SITES, DRY, leaves, LOW.withSites(new ConstantAdhesion(0.03))))
        .containsExactly("low");
  }
}
