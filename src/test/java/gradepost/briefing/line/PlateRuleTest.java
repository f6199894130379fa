package gradepost.briefing.line;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Messages;
import gradepost.briefing.word.Words;
import gradepost.drive.DemoPlans;
import gradepost.plan.Approach;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedFaster;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: a page for each approach with something to learn, and none for one without. */
class PlateRuleTest {
  private int without;
  private int belowTheirSpeed;
  private int withFindings;

  @Test
  void aLowerSpeedThatTheTrainCannotExceedHasNoPage() {
    for (int i = 0; i < 8; i++) {
      look(DemoPlans.plan(i));
    }
    assertThat(without).isPositive();
    assertThat(belowTheirSpeed).isGreaterThan(3);
    assertThat(withFindings).isPositive();
  }

  private void look(Plan plan) {
    Words words = new Words(Messages.english(), plan.assignment().path());
    PlateRule rule = new PlateRule(plan, new Lineside(plan.assignment(), words));
    List<InstructionSheet> sheets = plan.told().sheets();
    for (int i = 0; i < sheets.size(); i++) {
      InstructionSheet sheet = sheets.get(i);
      Approach approach = plan.approaches().get(i);
      boolean never =
          sheet.faster().filter(f -> f.verdict() == PrintedFaster.Verdict.NEVER).isPresent();
      boolean brakes =
          sheet.steps().stream().anyMatch(s -> s.order().does().brake().isPresent())
              || !sheet.applications().isEmpty();
      boolean amiss = approach.findings().stream().anyMatch(f -> about(f, never));
      boolean holds = rule.holds(approach);
      if (sheet.passing().isEmpty() || brakes || amiss) {
        assertThat(holds).as(approach.target().name()).isTrue();
      } else if (never) {
        belowTheirSpeed++;
        withFindings += approach.findings().isEmpty() ? 0 : 1;
        assertThat(holds).as(approach.target().name()).isFalse();
      }
      without += holds ? 0 : 1;
    }
  }

  private static boolean about(Finding finding, boolean never) {
    Finding.About about = finding.about();
    return about != Finding.About.BRAKE_TEST && !(never && about == Finding.About.LOWER_SPEED);
  }
}
