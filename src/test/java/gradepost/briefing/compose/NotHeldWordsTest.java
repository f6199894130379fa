package gradepost.briefing.compose;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.drive.MadeUp;
import gradepost.drive.Planner;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: a page says nothing that its data do not bear out. */
@Tag("slow")
class NotHeldWordsTest {
  private static final Pattern YARDS = Pattern.compile("(\\d+) yd (past|late)");
  private static final Pattern LONGER = Pattern.compile("(\\d+) s extra time");

  private static List<String> told(Plan plan) {
    List<String> out = new ArrayList<>();
    for (ApproachPage page :
        new Composer(Messages.english())
            .compose("", List.of(plan), SampleIssue.issue(), List.of())
            .parts()
            .get(0)
            .approaches()) {
      StringBuilder text = new StringBuilder(String.join(" ", page.findings()));
      page.points().forEach(p -> text.append(p.question()).append(p.answer()));
      page.ladders().forEach(t -> t.rows().forEach(r -> text.append(r.cells())));
      out.add(text.toString());
    }
    return out;
  }

  /**
   * 1 in 37 is 27 in 1,000: one brake of four is beaten by it, two need more track than there is.
   */
  @Test
  void aBrakeThatDoesNotHoldIsSaidNotToAndWhy() {
    assertThat(String.join(" ", told(Planner.plan(MadeUp.steep(0.75)))))
        .contains("not enough: the fall is too steep; mark at")
        .containsPattern("last place for Auto full service, [^\\]]*▲ none: the fall is too steep")
        .doesNotContain("the approach is too short");
    assertThat(String.join(" ", told(Planner.plan(MadeUp.steep(0.5)))))
        .contains("not enough: the route data end first; mark at");
  }

  @Test
  void noDistanceIsLongerThanTheLineAndNoTimeThanTheRun() {
    for (Assignment line :
        List.of(MadeUp.steep(0.25), MadeUp.steep(0.5), MadeUp.steep(0.75), MadeUp.slippery())) {
      Plan plan = Planner.plan(line);
      double last = 0;
      for (int i = 0; i < plan.approaches().size(); i++) {
        Target target = plan.approaches().get(i).target();
        String text = told(plan).get(i);
        double left = line.path().lengthM() - target.atM();
        for (Matcher m = YARDS.matcher(text); m.find(); ) {
          // A planned point is past a last place before it, an overrun past the target.
          double most = text.startsWith(" past the last place", m.end() - 5) ? target.atM() : left;
          assertThat(0.9144 * Integer.parseInt(m.group(1)))
              .as(m.group() + " in " + text)
              .isLessThan(most + 1);
        }
        for (Matcher m = LONGER.matcher(text); m.find(); ) {
          last = Math.max(last, Integer.parseInt(m.group(1)));
        }
      }
      assertThat(last).isLessThan(plan.runningTimeS());
    }
  }

  /**
   * None of these lines has a signal in its data. Where the brake is put on so early that the next
   * one is enough, no train comes past a mark, and nothing has to be said of what is behind it; so
   * each line is also driven by a policy that does not ask for that.
   */
  @Test
  void whereNoSignalIsSuppliedNoneIsSpokenOfAndNoEmergencyIsAdvisedAgainst() {
    int unknown = 0;
    for (long seed : new long[] {1, 5, 9, 13, 17, 21}) {
      Assignment line = MadeUp.random(seed);
      unknown += unknownSignals(Planner.plan(line));
      unknown += unknownSignals(Planner.plan(MadeUp.notLeavingNextBrake(line)));
    }
    assertThat(unknown).isPositive();
  }

  /** How many pages say that they do not know of a signal, all of them looked at. */
  private static int unknownSignals(Plan plan) {
    int unknown = 0;
    List<String> told = told(plan);
    for (int i = 0; i < told.size(); i++) {
      boolean stop = plan.approaches().get(i).target() instanceof Target.Stop s && !s.terminal();
      assertThat(told.get(i)).doesNotContain("next signal");
      if (stop) {
        assertThat(told.get(i)).doesNotContain("Do not use emergency");
        unknown +=
            told.get(i).contains("The data do not say whether a signal comes first.") ? 1 : 0;
      }
    }
    return unknown;
  }
}
