package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.drive.brake.PlannerSettings;
import gradepost.motion.NoEnd;
import gradepost.plan.Plan;
import gradepost.policy.Scatter;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: a plan is searched for with the settings that are handed in, and no others. Settings
 * that shape nothing on these lines are left out.
 */
@Tag("slow")
class SettingsReachPlanTest {
  private static final Scatter SCATTER =
      new Scatter(0.05, 0.05, 0.05, new Span(1), new Speed(0.5), 0.1, 50);

  private static final Map<Assignment, List<Object>> USUAL = new HashMap<>();

  private static final List<Assignment> LINES =
      Stream.of(Direction.values())
          .flatMap(d -> Stream.of("4-car", "8-car").map(f -> Mill.assignment(d, f)))
          .map(a -> Scattered.by(Optional.of(SCATTER), a))
          .toList();

  private static final PlannerSettings ALL = PlannerSettings.usual();

  /** In an ordinary run every other one. */
  static List<Arguments> changes() {
    List<Arguments> all = all().toList();
    return IntStream.range(0, all.size())
        .filter(i -> i % Examples.of(2, 1) == 0)
        .mapToObj(all::get)
        .toList();
  }

  private static Stream<Arguments> all() {
    return Stream.of(
        choice("seeds", 0),
        choice("rounds", 0),
        choice("timePricesW", List.of(3.0)),
        choice("halvings", 0),
        choice("movePricesJ", List.of(10.0)),
        choice("slowerS", 30.0),
        choice("longerCoastS", 15.0),
        choice("reachM", -1000.0),
        grid("stepM", 20.0),
        grid("stepMps", 1.0),
        grid("slackMps", 3.0),
        grid("sameAimM", -5000.0),
        grid("nearM", 200.0),
        way("lateM", -1000.0),
        grid("brakings", 0),
        way("notchUpSteps", 1),
        way("lowestChecked", 1.5),
        way("gainsMps", 20.0),
        way("gainsInM", 2000.0),
        way("behind", 1.0),
        leg("movements", 1),
        leg("looks", 1),
        leg("idleLooks", 0),
        leg("lookS", 60.0),
        leg("emptyingLookS", 60.0),
        leg("toleranceM", 20.0),
        leg("attempts", 1),
        brake("curveStepMps", 4.0),
        brake("curveRounds", 0),
        brake("curveNearM", 100.0),
        brake("easeSteps", 0),
        brake("fewPressures", 1000),
        brake("looksBack", 0),
        brake("leastPerM", 3.0),
        brake("greatestPerM", 0.3),
        fallback("toleranceM", 5.0),
        fallback("rounds", 0),
        fallback("places", 0),
        fallback("permittedStepM", 500.0),
        fallback("seed", 1L),
        fallback("draws", 0),
        check("speedSlackMps", -20.0));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("changes")
  void anotherSettingGivesAnotherPlan(String what, PlannerSettings other) {
    List<Assignment> different = new ArrayList<>();
    for (Assignment line : LINES) {
      if (different.isEmpty() && !planned(line, other).equals(usual(line))) {
        different.add(line);
      }
    }
    assertThat(different).as(what).isNotEmpty();
  }

  @Test
  void theSameSettingsGiveTheSamePlan() {
    Assignment line = LINES.get(0);
    assertThat(planned(line, PlannerSettings.usual())).isEqualTo(usual(line));
  }

  private static List<Object> usual(Assignment line) {
    return USUAL.computeIfAbsent(line, l -> planned(l, ALL));
  }

  private static List<Object> planned(Assignment line, PlannerSettings settings) {
    try {
      Plan plan = Planner.plan(line, settings);
      return List.of(
          plan.approaches(), plan.actions(), plan.fastest(), plan.failures(), plan.signals());
    } catch (NoEnd e) {
      return List.of(e.getMessage());
    }
  }

  private static Arguments choice(String what, Object value) {
    return Arguments.of(
        "choice " + what, Changed.in(ALL, "choice", Changed.in(ALL.choice(), what, value)));
  }

  private static Arguments grid(String what, Object value) {
    return Arguments.of(
        "grid " + what, Changed.in(ALL, "grid", Changed.in(ALL.grid(), what, value)));
  }

  private static Arguments way(String what, Object value) {
    return Arguments.of("way " + what, Changed.in(ALL, "way", Changed.in(ALL.way(), what, value)));
  }

  private static Arguments leg(String what, Object value) {
    return Arguments.of("leg " + what, Changed.in(ALL, "leg", Changed.in(ALL.leg(), what, value)));
  }

  private static Arguments brake(String what, Object value) {
    return Arguments.of(
        "brake " + what, Changed.in(ALL, "brake", Changed.in(ALL.brake(), what, value)));
  }

  private static Arguments fallback(String what, Object value) {
    return Arguments.of(
        "fallback " + what, Changed.in(ALL, "fallback", Changed.in(ALL.fallback(), what, value)));
  }

  private static Arguments check(String what, Object value) {
    return Arguments.of(
        "check " + what, Changed.in(ALL, "check", Changed.in(ALL.check(), what, value)));
  }
}
