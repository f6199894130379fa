package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.task.Assignment;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: what holds of the braking points by speed, on the packs. */
@Tag("slow")
class BySpeedTest {
  @Test
  void onThePacks() {
    BySpeedJudge judge = new BySpeedJudge();
    for (Assignment assignment : DemoPlans.tried()) {
      judge.look("pack", DemoPlans.plan(assignment));
    }
    assertThat(judge.wrong).isEmpty();
    assertThat(judge.tables).isGreaterThan(8 * DemoPlans.tried().size());
    assertThat(judge.rows).isGreaterThan(4 * judge.tables);
    assertThat(judge.planned).isGreaterThan(9 * judge.tables / 10);
    assertThat(judge.poorPlanned).isGreaterThan(8 * judge.tables / 10);
    assertThat(judge.poorer).isGreaterThan(judge.rows / 3);
  }
}
