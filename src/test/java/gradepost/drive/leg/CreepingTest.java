package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.Changed;
import gradepost.drive.DemoPlans;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.policy.CoastPractice;
import gradepost.policy.Practice;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.units.Length;
import gradepost.units.Span;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("slow")
class CreepingTest {
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
    assertThat(Creeping.count(coasting(fast + 1, 8, 30), ceiling, Practice.USUAL)).isEqualTo(1);
    assertThat(Creeping.count(coasting(fast + 1, 8, 6), ceiling, Practice.USUAL)).isZero();
    assertThat(Creeping.count(coasting(fast + 1, 20, 30), ceiling, Practice.USUAL)).isZero();
  }

  @Test
  void whatCreepingIsIsThePolicys() {
    Assignment assignment = DemoPlans.assignments().get(0);
    Ceiling ceiling = ceiling(assignment);
    double fast =
        ceiling.steps().stream()
            .filter(s -> s.speedMps() > 35 * MPH)
            .findFirst()
            .orElseThrow()
            .fromM();
    List<Trace.Point> slow = coasting(fast + 1, 8, 30);
    CoastPractice usual = CoastPractice.USUAL;
    assertThat(Creeping.count(slow, ceiling, coast(usual, "creepingShare", 0.05))).isZero();
    assertThat(Creeping.count(slow, ceiling, coast(usual, "creepingLongest", new Span(40))))
        .isZero();
    // So near the end of the line, where the train has to stand, it may creep.
    double least = ceiling.lowest(fast + 1, fast + 1 + 120_000);
    assertThat(least).isLessThan(16 * MPH);
    assertThat(Creeping.count(slow, ceiling, coast(usual, "creepingBefore", new Length(120_000))))
        .isZero();
  }

  private static Practice coast(CoastPractice usual, String what, Object value) {
    return Practice.USUAL.with(Changed.in(usual, what, value));
  }

  /** Where the permissible speed itself is low, a low speed is none. */
  @Test
  void noPlanCoastsAlongAtAWalk() {
    List<String> creeping = new ArrayList<>();
    for (Assignment assignment : DemoPlans.tried()) {
      Plan plan = DemoPlans.plan(assignment);
      long count = Creeping.count(plan.trace().points(), ceiling(assignment), Practice.USUAL);
      if (count > 0) {
        creeping.add(assignment.direction() + " " + assignment.formation().name() + ": " + count);
      }
    }
    assertThat(creeping).isEmpty();
  }
}
