package gradepost.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.DemoPlans;
import gradepost.drive.Mill;
import gradepost.drive.Planner;
import gradepost.drive.Scattered;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.policy.Scatter;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: what is drawn differs from the plan by the scatter alone, and is measured at the board.
 */
@Tag("slow")
class SpreadTest {
  private static final Span AT_ONCE = new Span(0);

  /** Down with eight cars: boards on falling grades, where the brake stays on. */
  private static Plan plan(Scatter scatter) {
    return Planner.plan(Scattered.by(Optional.of(scatter), DemoPlans.assignments().get(1)));
  }

  private static List<Approach> drawn(Plan plan) {
    return plan.approaches().stream().filter(a -> a.spread().isPresent()).toList();
  }

  /**
   * The last place at which the planned run is faster than this, before the target: between two
   * points of the trace the square of the speed is linear.
   */
  private static double downM(Plan plan, Target target) {
    double square = target.speedMps() * target.speedMps();
    double down = Double.NaN;
    List<Trace.Point> points = plan.trace().points();
    for (int i = 1; i < points.size() && points.get(i - 1).atM() < target.atM(); i++) {
      double from = points.get(i - 1).speedMps() * points.get(i - 1).speedMps();
      double to = points.get(i).speedMps() * points.get(i).speedMps();
      if (from > square && to <= square) {
        double share = (from - square) / (from - to);
        double over = points.get(i).atM() - points.get(i - 1).atM();
        down = points.get(i - 1).atM() + share * over;
      }
    }
    return down;
  }

  @Test
  void withoutScatterEveryRunIsThePlannedOne() {
    Plan plan = plan(new Scatter(0, 0, 0, AT_ONCE, Speed.ofMph(0), 0, 20));
    assertThat(drawn(plan)).anyMatch(a -> a.target().speedMps() > 0);
    for (Approach approach : drawn(plan)) {
      Target target = approach.target();
      double planned =
          target.speedMps() == 0
              ? target.atM() - approach.endM()
              : target.atM() - downM(plan, target);
      Spread spread = approach.spread().orElseThrow();
      assertThat(spread.shortM05().orElseThrow()).as(target.name()).isCloseTo(planned, within(0.5));
      assertThat(spread.shortM95().orElseThrow()).as(target.name()).isCloseTo(planned, within(0.5));
    }
  }

  /** A train that is a little faster has the same pressures on, not an ease that is not printed. */
  @Test
  void aFasterTrainBrakesAsItIsPrinted() {
    double deviation = Speed.ofMph(1).metresPerSecond();
    Plan plan = plan(new Scatter(0, 0, 0, AT_ONCE, Speed.ofMph(1), 0, 200));
    Run run = new Run(plan.trace());
    for (Approach approach : drawn(plan)) {
      Target target = approach.target();
      if (target.speedMps() == 0) {
        continue;
      }
      Action main =
          approach.actions().stream()
              .filter(a -> a.command() instanceof Command.Brake)
              .reduce((a, b) -> b)
              .orElseThrow();
      double down = downM(plan, target);
      double least = Double.POSITIVE_INFINITY;
      for (double at = main.atM() + 40; at + 10 < down; at += 5) {
        double slower = run.speedAt(at) * run.speedAt(at) - Math.pow(run.speedAt(at + 10), 2);
        least = Math.min(least, slower / 20);
      }
      if (least == Double.POSITIVE_INFINITY) {
        continue;
      }
      double v = approach.brakingSpeedMps();
      double faster = v + 1.645 * deviation;
      double longer = (faster * faster - v * v) / (2 * least) + 10 * deviation;
      assertThat(approach.spread().orElseThrow().shortM05().orElseThrow())
          .as(target.name())
          .isGreaterThan(target.atM() - down - 1.3 * longer);
    }
  }

  @Test
  void manyThatAreLateAtABoardAreAFinding() {
    assertThat(oftenLate(0)).isZero();
    assertThat(oftenLate(5)).isPositive();
  }

  /** How many boards of the mill line have it, under so much scatter of speed. */
  private static long oftenLate(double mph) {
    Scatter scatter = new Scatter(0, 0, 0, AT_ONCE, Speed.ofMph(mph), 0, 100);
    Assignment mill = Mill.assignment(Direction.FORWARD, "4-car");
    Plan plan = Planner.plan(Scattered.by(Optional.of(scatter), mill));
    long late = 0;
    for (Approach approach : plan.approaches()) {
      boolean told = approach.findings().stream().anyMatch(f -> f instanceof Finding.OftenLate);
      boolean is =
          approach.target().speedMps() > 0
              && approach.spread().filter(s -> s.pastShare() > 0.16).isPresent();
      assertThat(told).as(approach.target().name()).isEqualTo(is);
      late += told ? 1 : 0;
    }
    return late;
  }

  @Test
  void aBrakeThatChecksTheSpeedIsOnWhereTheRunIsPickedUp() {
    TrainModels bench = new TrainModels(DemoPlans.assignments().get(0));
    Stepper stepper = bench.plannedStepper();
    RunStates line = new RunStates();
    stepper.place(0, 5000, 15);
    stepper.brake(bench.slowing(), 80_000);
    line.add(stepper.save());
    stepper.advance(new StopConditions().place(5200));
    double braked = stepper.speedMps();
    stepper.place(stepper.timeS(), 5200, braked);
    line.add(stepper.save());

    line.pickUpBraked(stepper, 5200);
    assertThat(stepper.pressurePa()).isCloseTo(80_000, within(1.0));
    assertThat(stepper.speedMps()).isCloseTo(braked, within(1e-9));
    line.pickUp(stepper, 5200);
    assertThat(stepper.pressurePa()).isZero();
  }
}
