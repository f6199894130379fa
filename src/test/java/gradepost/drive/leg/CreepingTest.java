package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("slow")
class CreepingTest {
  private static final double SLOW_MPS = 5.4;
  private static final double MPH = 0.44704;

  private static Ceiling ceiling(Assignment assignment) {
    return Ceiling.of(assignment);
  }

  /** At this speed all the time, with power off. */
  private static List<Trace.Point> coasting(double atM, double mph, double seconds) {
    List<Trace.Point> points = new ArrayList<>();
    for (double t = 0; t <= seconds; t++) {
      points.add(new Trace.Point(t, atM + t * mph * MPH, mph * MPH, 0, -1));
    }
    points.add(new Trace.Point(seconds + 1, atM + seconds * mph * MPH, mph * MPH, 1e5, -1));
    return points;
  }

  @Test
  void longAndSlowIsCreeping() {
    Assignment assignment = DemoPlans.assignments().get(0);
    Ceiling ceiling = ceiling(assignment);
    double fast =
        ceiling.steps().stream()
            .filter(s -> s.speedMps() > 35 * MPH)
            .findFirst()
            .orElseThrow()
            .fromM();
    assertThat(Creeping.count(coasting(fast + 1, 8, 30), ceiling, SLOW_MPS)).isEqualTo(1);
    assertThat(Creeping.count(coasting(fast + 1, 8, 6), ceiling, SLOW_MPS)).isZero();
    assertThat(Creeping.count(coasting(fast + 1, 20, 30), ceiling, SLOW_MPS)).isZero();
  }

  /** Where the permissible speed itself is low, a low speed is none. */
  @Test
  void noPlanCoastsAlongAtAWalk() {
    List<String> creeping = new ArrayList<>();
    for (Assignment assignment : DemoPlans.assignments()) {
      Plan plan = DemoPlans.plan(assignment);
      long count = Creeping.count(plan.trace().points(), ceiling(assignment), SLOW_MPS);
      if (count > 0) {
        creeping.add(assignment.direction() + " " + assignment.formation().name() + ": " + count);
      }
    }
    assertThat(creeping).isEmpty();
  }
}
