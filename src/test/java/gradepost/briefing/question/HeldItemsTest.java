package gradepost.briefing.question;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Messages;
import gradepost.briefing.Table;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.drive.HeldLines;
import gradepost.plan.Plan;
import gradepost.policy.PaperRules;
import gradepost.policy.Subject;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: a plan that holds a speed asks for it, and only one of the answers is true. */
@Tag("slow")
class HeldItemsTest {
  private static QuestionBank bank(Plan plan) {
    Table changes = new Table("changes", "changes", "", "", List.of(), List.of(), "");
    return new QuestionBank(
        new BriefingFacts(plan, Messages.english()),
        "p1",
        new Issued(List.of(), changes),
        new PaperRules(1, 20, 0.8, List.of(), List.of()),
        List.of());
  }

  @Test
  void aHeldSpeedIsAskedForWithItsHandle() {
    List<String> rights = new ArrayList<>();
    for (Plan plan : HeldLines.plans()) {
      Judge judge = new Judge(plan, List.of(), List.of());
      QuestionBank bank = bank(plan);
      assertThat(bank.of(Subject.HELD_SPEED)).isNotEmpty();
      for (long seed = 1; seed <= 50; seed++) {
        for (Asked asked : bank.paper(seed)) {
          if (asked.item().subject() == Subject.HELD_SPEED) {
            assertThat(asked.choices())
                .filteredOn(choice -> judge.holds(asked, choice))
                .containsExactly(asked.item().right());
            rights.add(asked.item().right());
            assertThat(asked.item().ask()).contains(" to ");
          }
        }
      }
    }
    assertThat(rights).anyMatch(r -> r.contains("brake at"));
    assertThat(rights).anyMatch(r -> r.contains("shunt"));
  }
}
