package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.fallback.Latest;
import gradepost.policy.AdhesionCase;
import gradepost.route.LowAdhesionSite;
import gradepost.route.Route;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.ShareOf;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: low-adhesion sites hold where and when the policy says, and never to the good. */
class SiteAdhesionPlanTest {
  private static final AdhesionLaw DRY = new CurtiusKniffler();

  private static List<AdhesionCase> cases(Optional<AdhesionLaw> dry, Optional<AdhesionLaw> others) {
    return List.of(
        new AdhesionCase("dry", DRY, "", dry),
        new AdhesionCase("damp", new ShareOf(DRY, 0.6), "", others),
        new AdhesionCase("low", new ConstantAdhesion(0.06), "", others));
  }

  /** The invented line with leaves on the way down to the curve and to the stop at Ford. */
  private static Route leafy() {
    return Changed.in(
        Mill.route(),
        "lowAdhesion",
        List.of(
            new LowAdhesionSite("wood", Mill.extent(1, 45, 1, 62), Applies.EVERYWHERE, ""),
            new LowAdhesionSite("cutting", Mill.extent(3, 30, 3, 60), Applies.EVERYWHERE, "")));
  }

  private static Plan plan(List<AdhesionCase> cases) {
    return Planner.plan(
        Arrangements.assignment(
            leafy(), Direction.FORWARD, 0, Mill.stock(), Arrangements.adhesion(cases)));
  }

  private static List<CaseResult> cases(Approach approach) {
    return approach.applications().stream().flatMap(a -> a.told().stream()).toList();
  }

  @Test
  void sitesMakeTheirOwnCasesEarlierAndLeaveTheDryPlanAlone() {
    Plan named = plan(cases(Optional.empty(), Optional.empty()));
    Plan felt = plan(cases(Optional.empty(), Optional.of(new ConstantAdhesion(0.03))));
    assertThat(felt.failures()).isEmpty();
    assertThat(felt.actions()).isEqualTo(named.actions());
    int earlier = 0;
    for (int i = 0; i < named.approaches().size(); i++) {
      List<CaseResult> without = cases(named.approaches().get(i));
      List<CaseResult> with = cases(felt.approaches().get(i));
      for (int c = 0; c < without.size(); c++) {
        for (int b = 0; b < without.get(c).ladder().size(); b++) {
          Latest plain = without.get(c).ladder().get(b).latest();
          Latest leaves = with.get(c).ladder().get(b).latest();
          if (without.get(c).adhesion().equals(named.assignment().policy().plannedAdhesion())) {
            assertThat(leaves).isEqualTo(plain);
          } else if (plain instanceof Latest.Point p && leaves instanceof Latest.Point l) {
            assertThat(l.exactM()).isLessThanOrEqualTo(p.exactM() + 0.02);
            earlier += l.exactM() < p.exactM() - 1 ? 1 : 0;
          }
        }
      }
    }
    assertThat(earlier).isGreaterThan(4);
  }

  @Test
  void thePlannedRunFeelsThemWhereThePolicySaysSo() {
    Plan named = plan(cases(Optional.empty(), Optional.empty()));
    Plan felt = plan(cases(Optional.of(new ConstantAdhesion(0.04)), Optional.empty()));
    assertThat(felt.actions()).isNotEqualTo(named.actions());
    assertThat(meanMps2(felt)).isLessThan(meanMps2(named));
  }

  /** A run that is slower there may brake later, but not harder: the mean up to the board. */
  private static double meanMps2(Plan plan) {
    Target board = plan.approaches().get(0).target();
    Action first =
        plan.actions().stream()
            .filter(a -> a.command() instanceof Command.Brake)
            .findFirst()
            .orElseThrow();
    return (Math.pow(first.speedMps(), 2) - Math.pow(board.speedMps(), 2))
        / (2 * (board.atM() - first.atM()));
  }
}
