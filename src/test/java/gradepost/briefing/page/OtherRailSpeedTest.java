package gradepost.briefing.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Messages;
import gradepost.briefing.Plate;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.plan.Application;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.task.Assignment;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: the speed beside a point on another rail is that of the planned run at that point, and
 * not that of the point on the planned rail, which stands below it in the same box.
 */
@Tag("slow")
class OtherRailSpeedTest {
  private static final Pattern SPEED = Pattern.compile("(\\w+) rail .*? at (\\d+)\\W(?:mph|km/h)");

  @Test
  void aPointOnAnotherRailHasItsOwnSpeed() {
    int told = 0;
    for (Assignment assignment : DemoPlans.tried()) {
      Plan plan = DemoPlans.plan(assignment);
      double unitMps = assignment.route().units().speedUnitMps();
      Run run = new Run(plan.trace());
      List<ApproachPage> pages =
          new Composer(Messages.english())
              .compose("", List.of(plan), SampleIssue.issue(), List.of())
              .parts()
              .get(0)
              .approaches();
      for (int i = 0; i < pages.size(); i++) {
        List<String> others =
            pages
                .get(i)
                .plate()
                .flatMap(Plate::brakeAt)
                .map(Plate.BrakeAt::others)
                .orElse(List.of());
        for (String other : others) {
          Matcher found = SPEED.matcher(other);
          if (found.find()) {
            Application first = plan.approaches().get(i).applications().get(0);
            assertThat(Double.parseDouble(found.group(2)))
                .as(pages.get(i).title() + ": " + other)
                .isCloseTo(run.speedAt(pointM(first, found.group(1))) / unitMps, within(1.0));
            told++;
          }
        }
      }
    }
    assertThat(told).isGreaterThan(5);
  }

  private static double pointM(Application application, String rail) {
    return application.cases().stream()
        .filter(c -> c.adhesion().name().equals(rail))
        .findFirst()
        .flatMap(CaseResult::plannedM)
        .orElseThrow();
  }
}
