package gradepost.briefing.compose;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Cue;
import gradepost.briefing.Messages;
import gradepost.briefing.SamplePlan;
import gradepost.drive.Approach;
import gradepost.drive.DemoPlans;
import gradepost.drive.Plan;
import gradepost.drive.Planner;
import gradepost.drive.Run;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Properties of the sentences on the approach pages of the demo packs. */
class ApproachWordsTest {

  private static Briefing briefing(Plan plan) {
    return new Composer(Messages.english())
        .compose("", List.of(plan), SamplePlan.issue(), List.of());
  }

  /** Also that the speed printed is the one that the chart and the route story have there. */
  @ParameterizedTest
  @ValueSource(ints = {0, 7})
  void aLowerSpeedMetWithoutABrakeSaysAtWhatSpeedAndWhatIfFaster(int paper) {
    Plan plan = Planner.plan(DemoPlans.assignments().get(paper));
    UnitStyle units = plan.assignment().path().units();
    Run run = new Run(plan.trace());
    List<ApproachPage> pages = briefing(plan).parts().get(0).approaches();
    int met = 0;
    for (int i = 0; i < pages.size(); i++) {
      Approach approach = plan.approaches().get(i);
      String says = pages.get(i).unbraked();
      if (approach.brakingPointM().isPresent()) {
        assertThat(says).as(pages.get(i).title()).isEmpty();
        continue;
      }
      met++;
      double there = run.speedAt(approach.target().atM());
      assertThat(there).isLessThanOrEqualTo(approach.target().speedMps());
      assertThat(says)
          .as(pages.get(i).title())
          .contains(" at " + units.speed(there, Rounding.DOWN) + " and without a brake.")
          .endsWith(
              "If yours would be faster than "
                  + units.speed(approach.target().speedMps(), Rounding.DOWN)
                  + " there, brake for it before.");
    }
    assertThat(met).isPositive();
  }

  /** The clock of a brake that is the first thing on its page starts on a page before. */
  @ParameterizedTest
  @ValueSource(ints = {0, 7})
  void theClockCueNamesWhatStartsItWhereAnotherPageTellsIt(int paper) {
    Plan plan = Planner.plan(DemoPlans.assignments().get(paper));
    List<ApproachPage> pages = briefing(plan).parts().get(0).approaches();
    int named = 0;
    for (int i = 0; i < pages.size(); i++) {
      Approach approach = plan.approaches().get(i);
      if (approach.brakingPointM().isEmpty()) {
        continue;
      }
      double point = approach.brakingPointM().get();
      boolean first = approach.actions().get(0).atM() > point - 0.01;
      String goBy = pages.get(i).goBy().toString();
      assertThat(goBy.contains("the action before it")).as(pages.get(i).title()).isEqualTo(!first);
      assertThat(goBy.contains(", the page before")).as(pages.get(i).title()).isEqualTo(first);
      named += first ? 1 : 0;
    }
    assertThat(named).isPositive();
  }

  /** The terminal platform of the Down direction steps its speeds down ahead of the stop. */
  @Test
  void applicationsThatTheLadderIsNotForAreNamed() {
    Plan plan = Planner.plan(DemoPlans.assignments().get(0));
    List<ApproachPage> pages = briefing(plan).parts().get(0).approaches();
    int named = 0;
    for (ApproachPage page : pages) {
      List<String> before =
          page.actions().stream()
              .takeWhile(a -> !a.key())
              .filter(a -> a.todo().equals("first application"))
              .map(ApproachPage.ActionLine::number)
              .toList();
      if (page.question().isEmpty() || before.isEmpty()) {
        assertThat(page.answer()).noneMatch(a -> a.contains("no fallback is worked out"));
      } else {
        named++;
        assertThat(page.answer())
            .contains(
                "▲ This is not for the applications before it ("
                    + String.join(", ", before)
                    + "): no fallback is worked out for these.");
      }
    }
    assertThat(named).isPositive();
  }

  /** The demo routes hold a test in each state of the handles that does not suit it. */
  @Test
  void aRunningBrakeTestThatThePlanDoesNotSuitSaysSo() {
    assertThat(tests(0))
        .anyMatch(t -> t.matches("(?s).*30 mph \\(planned here: \\d+ mph, under power: .*"))
        .anyMatch(t -> t.matches("(?s).*40 mph \\(planned here: \\d+ mph, the brake already on.*"));
    assertThat(tests(7))
        .anyMatch(t -> t.matches("(?s).*50 km/h \\(planned here: \\d+ km/h, under power: .*"));
  }

  private static List<String> tests(int paper) {
    Plan plan = Planner.plan(DemoPlans.assignments().get(paper));
    return briefing(plan).parts().get(0).story().stream()
        .map(Cue::toString)
        .filter(c -> c.contains("running brake test"))
        .toList();
  }
}
