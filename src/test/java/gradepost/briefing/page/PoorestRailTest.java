package gradepost.briefing.page;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.Table;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.drive.FrozenPlans;
import gradepost.motion.LowAdhesionRail;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.plan.fallback.Met;
import gradepost.task.Assignment;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: where a braking passes a site that the route lists for poor adhesion, what is told
 * first is what comes of it on the poorest rail, and that rail and the site are named. On dry rail,
 * where the brake goes on later, it may come out worst; then no site is named.
 */
@Tag("slow")
class PoorestRailTest {

  private static double shortM(CaseResult c) {
    Met met = c.answers().get(0).met();
    return met instanceof Met.At at ? at.shortM() : Double.NEGATIVE_INFINITY;
  }

  private static boolean passesSite(Assignment assignment, Application a) {
    double train = assignment.formation().lengthM();
    return LowAdhesionRail.stretches(assignment.path(), assignment.lines()).stream()
        .anyMatch(s -> s.fromM() < a.target().atM() && s.toM() > a.brakingPointM() - train);
  }

  @Test
  void theWorstOfTheListedRailsComesFirst() {
    int onSite = 0;
    int named = 0;
    int elsewhere = 0;
    for (Assignment assignment : FrozenPlans.assignments()) {
      Plan plan = DemoPlans.plan(assignment);
      List<ApproachPage> pages =
          new Composer(Messages.english())
              .compose("", List.of(plan), SampleIssue.issue(), List.of())
              .parts()
              .get(0)
              .approaches();
      for (int i = 0; i < pages.size(); i++) {
        Approach approach = plan.approaches().get(i);
        for (int k = 0; k < pages.get(i).points().size(); k++) {
          Application application = approach.applications().get(k);
          ApproachPage.Point point = pages.get(i).points().get(k);
          List<CaseResult> told = application.told();
          double worst = told.stream().mapToDouble(PoorestRailTest::shortM).min().orElseThrow();
          String name = pages.get(i).title() + " " + point.rail();
          if (passesSite(assignment, application)) {
            onSite++;
            CaseResult said =
                told.stream()
                    .filter(c -> point.rail().startsWith("On " + c.adhesion().name() + " rail"))
                    .findFirst()
                    .orElseThrow();
            assertThat(shortM(said)).as(name).isEqualTo(worst);
            if (said.equals(told.get(0))) {
              assertThat(point.rail()).as(name).isEqualTo("On dry rail:");
              continue;
            }
            named++;
            assertThat(point.rail()).as(name).contains("(");
            List<Table.Column> rails = pages.get(i).ladders().get(k).columns();
            assertThat(rails.get(1).heading()).as(name).startsWith(said.adhesion().name() + " (");
            assertThat(rails.get(2).heading()).as(name).startsWith("dry");
          } else if (point.rail().equals("On dry rail:")) {
            elsewhere++;
          }
        }
      }
    }
    assertThat(onSite).isGreaterThan(3);
    assertThat(named).isGreaterThan(2);
    assertThat(elsewhere).isGreaterThan(20);
  }
}
