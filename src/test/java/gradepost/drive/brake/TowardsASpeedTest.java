package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Arrangements;
import gradepost.drive.Mill;
import gradepost.drive.Planner;
import gradepost.plan.Plan;
import gradepost.route.place.Direction;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import org.junit.jupiter.api.Test;

/** The equivalent build-up of stock by brake percentage, where the plan brakes to a lower speed. */
class TowardsASpeedTest {

  /**
   * Validation: SUBSET-026 A.3.8 and A.3.9 for 80 m: 3.00 + 1.50·0.8 + 0.10·0.8² = 4.264 s, and 1.2
   * times that towards a speed above zero; emergency 2.30 + 0.17·4² (400 m at least) = 5.020 s.
   */
  @Test
  void theBuildUpIsAFifthLongerTowardsASpeed() {
    Assignment assignment =
        Arrangements.assignment(Direction.FORWARD, 0, Arrangements.percentage(110), Mill.policy());
    TrainModels bench = new TrainModels(assignment);
    BrakeSystem emergency = assignment.stock().brakes().get(1);
    Plan plan = Planner.plan(assignment);
    Target reduction = plan.approaches().get(0).target();
    Target stop = plan.approaches().get(1).target();
    assertThat(reduction.speedMps()).isPositive();
    assertThat(stop.speedMps()).isZero();
    assertThat(bench.service(stop).deadTimeS()).isCloseTo(4.264, within(0.001));
    assertThat(bench.service(reduction).deadTimeS()).isCloseTo(5.117, within(0.001));
    assertThat(bench.slowing().deadTimeS()).isCloseTo(5.117, within(0.001));
    assertThat(bench.worstRig(emergency, stop).deadTimeS()).isCloseTo(5.020, within(0.001));
    assertThat(bench.worstRig(emergency, reduction).deadTimeS()).isCloseTo(6.024, within(0.001));
  }

  @Test
  void otherBrakesAreTheSameTowardsBoth() {
    TrainModels bench = new TrainModels(Mill.assignment(Direction.FORWARD, "4-car"));
    assertThat(bench.slowing().deadTimeS()).isEqualTo(bench.service().deadTimeS());
  }
}
