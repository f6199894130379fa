package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.policy.CorrectionPractice;
import gradepost.policy.Practice;
import gradepost.policy.Scatter;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: what wants a braking point earlier moves it towards the train, and never away. */
@Tag("slow")
class EarlierPointsTest {
  private static final double SAME_M = 0.01;

  /** Of how many runs a few may be late. */
  private static final int RUNS = 700;

  /** In an ordinary run each direction and each formation once. */
  static Stream<Assignment> lines() {
    return Stream.of(Direction.values())
        .flatMap(
            d ->
                Stream.of("4-car", "8-car")
                    .filter(
                        f -> Examples.of(0, 1) == 1 || d == Direction.FORWARD == f.equals("4-car"))
                    .map(f -> Mill.assignment(d, f)));
  }

  private static Assignment by(Assignment line, double share, boolean leavesNext, double much) {
    return by(line, share, leavesNext, Optional.of(scatter(much)));
  }

  private static Assignment by(
      Assignment line, double share, boolean leavesNext, Optional<Scatter> scatter) {
    CorrectionPractice correction =
        new CorrectionPractice(new Span(2), new Span(1), share, leavesNext);
    Assignment scattered = Scattered.by(scatter, line);
    return scattered.with(scattered.policy().with(Practice.USUAL.with(correction)));
  }

  private static Scatter scatter(double much) {
    return new Scatter(
        0.04 * much,
        0.06 * much,
        0.1 * much,
        new Span(0.8 * much),
        new Speed(0.6 * much),
        0.1 * much,
        RUNS);
  }

  private static Map<Target, Double> points(Plan plan) {
    Map<Target, Double> points = new HashMap<>();
    for (Approach approach : plan.approaches()) {
      approach.applications().forEach(a -> points.put(a.target(), a.brakingPointM()));
    }
    return points;
  }

  private static List<Application> applications(Plan plan) {
    return plan.approaches().stream().flatMap(a -> a.applications().stream()).toList();
  }

  /** A target that is met without a brake in one of both runs is left out. */
  private static void assertNoLater(Map<Target, Double> points, Map<Target, Double> than) {
    points.forEach(
        (target, m) ->
            Optional.ofNullable(than.get(target))
                .ifPresent(
                    other -> assertThat(m).as(target.name()).isLessThanOrEqualTo(other + SAME_M)));
  }

  private static boolean saysThatManyAreLate(Approach approach) {
    return approach.findings().stream().anyMatch(f -> f instanceof Finding.LateThough);
  }

  private static boolean isMoved(Application a) {
    return a.setBy() == Application.SetBy.LATE_SHARE || a.setBy() == Application.SetBy.NEXT_BRAKE;
  }

  @ParameterizedTest
  @MethodSource("lines")
  void aShareOfAllAndNoNextBrakeMoveNothing(Assignment line) {
    Plan plan = Planner.plan(by(line, 1, false, 2));
    assertThat(applications(plan)).noneMatch(EarlierPointsTest::isMoved);
    assertThat(points(plan))
        .isEqualTo(points(Planner.plan(by(line, 0.01, false, Optional.empty()))));
  }

  /**
   * Some are moved, and each that is moved is earlier than without. A point from which the share is
   * kept is no later than one for less scatter.
   */
  @Test
  void aShareMovesAPointEarlierAndMoreScatterNoLater() {
    long moved = 0;
    for (Assignment line : lines().toList()) {
      Map<Target, Double> computed = points(Planner.plan(by(line, 1, false, 1)));
      Map<Target, Double> before = computed;
      for (double much :
          List.of(1.0, 3.0, 2.0).subList(0, Examples.of(2, 3)).stream().sorted().toList()) {
        Plan plan = Planner.plan(by(line, 0.01, false, much));
        Map<Target, Double> points = points(plan);
        Map<Target, Double> keeping = new HashMap<>(points);
        plan.approaches().stream()
            .filter(EarlierPointsTest::saysThatManyAreLate)
            .flatMap(x -> x.applications().stream())
            .forEach(x -> keeping.remove(x.target()));
        assertNoLater(keeping, before);
        assertNoLater(points, computed);
        for (Application a : applications(plan)) {
          double was = computed.getOrDefault(a.target(), Double.POSITIVE_INFINITY);
          boolean earlier = a.brakingPointM() < was - SAME_M;
          boolean byShare = a.setBy() == Application.SetBy.LATE_SHARE;
          assertThat(earlier || !byShare).as(a.target().name()).isTrue();
          moved += byShare ? 1 : 0;
        }
        before = points;
      }
    }
    assertThat(moved).isPositive();
  }

  /** Where more than the share are late the sheet says so; where it does not, no more are. */
  @ParameterizedTest
  @MethodSource("lines")
  void theShareIsKeptOrTheSheetSaysThatItIsNot(Assignment line) {
    Plan plan = Planner.plan(by(line, 0.01, true, 2));
    for (Approach approach : plan.approaches()) {
      boolean told = saysThatManyAreLate(approach);
      boolean late =
          approach
              .spread()
              .filter(s -> s.corrected().lateShare() > 0)
              .filter(s -> s.corrected().noneMayBeLate() || s.corrected().lateAtMost() > 0.01)
              .isPresent();
      assertThat(told).as(approach.target().name()).isEqualTo(late);
    }
  }

  /**
   * Where the technique, begun so early, ends at its aim; else the sheet tells that place alone.
   */
  private static void assertLeavesTheNextBrake(Plan plan) {
    for (Application a : applications(plan)) {
      CaseResult dry = a.cases().get(0);
      if (dry.protectedM().isPresent() && dry.protectedCostS().isPresent()) {
        assertThat(a.brakingPointM())
            .as(a.target().name())
            .isLessThanOrEqualTo(dry.protectedM().get() + SAME_M);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("lines")
  void aPointLeavesTheNextBrakeEnough(Assignment line) {
    assertLeavesTheNextBrake(Planner.plan(by(line, 1, true, 1)));
  }

  @Test
  void onTheFrozenPacksAPointLeavesTheNextBrakeAndNobodyRunsIntoTheBuffers() {
    long buffers = 0;
    long byNextBrake = 0;
    for (Assignment assignment : FrozenPlans.assignments().subList(0, Examples.of(1, 4))) {
      Plan plan = DemoPlans.plan(assignment);
      assertThat(plan.failures()).isEmpty();
      assertLeavesTheNextBrake(plan);
      byNextBrake +=
          applications(plan).stream()
              .filter(a -> a.setBy() == Application.SetBy.NEXT_BRAKE)
              .count();
      for (Approach approach : plan.approaches()) {
        boolean atBuffers = approach.target().stop().filter(Target.Stop::terminal).isPresent();
        if (atBuffers) {
          assertThat(approach.spread().orElseThrow().corrected().lateShare()).isZero();
          buffers++;
        }
      }
    }
    assertThat(buffers).isPositive();
    assertThat(byNextBrake).isPositive();
  }
}
