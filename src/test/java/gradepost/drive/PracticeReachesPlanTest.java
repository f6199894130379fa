package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.drive.check.RuleBreaches;
import gradepost.plan.Action;
import gradepost.policy.BrakePractice;
import gradepost.policy.CoastPractice;
import gradepost.policy.HandlePractice;
import gradepost.policy.PowerPractice;
import gradepost.policy.Practice;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.units.Acceleration;
import gradepost.units.Length;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: a value of driving practice that the policy gives shapes what is driven. */
@Tag("slow")
class PracticeReachesPlanTest {
  private static final Map<String, List<Action>> USUAL = new HashMap<>();

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
        brake("eased", new Acceleration(0.4)),
        brake("lowestAim", 1.0),
        brake("lowestRelease", 1.0),
        brake("staysOnFrom", new Acceleration(0.01)),
        brake("firstHeldLeast", new Span(20)),
        power("gain", new Acceleration(0.4)),
        power("hold", new Acceleration(0.4)),
        power("check", new Acceleration(0.4)),
        power("gradientAhead", new Length(2000)),
        handles("notchAtLeast", new Span(120)),
        power("longestCoast", new Span(0)),
        power("coastKeeps", 1.0),
        coast("placeKeeps", 1.0),
        power("sparedKeeps", 1.0),
        power("offAtLeast", new Span(120)),
        power("movement", 0.5),
        power("creeping", new Speed(15)),
        brake("lastEaseAlone", 5.0),
        handles("movementSaves", new Span(500)));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("changes")
  void anotherValueGivesAnotherPlan(String what, Practice other) {
    List<String> different = new ArrayList<>();
    for (Direction direction : Direction.values()) {
      for (String formation : List.of("4-car", "8-car")) {
        if (different.isEmpty()
            && !driven(direction, formation, other)
                .equals(
                    USUAL.computeIfAbsent(
                        direction + formation,
                        k -> driven(direction, formation, Practice.USUAL)))) {
          different.add(direction + formation);
        }
      }
    }
    assertThat(different).as(what).isNotEmpty();
  }

  /** On lines that fall before a higher permissible speed, of which Mill's has none. */
  @Test
  void aHigherSpeedIsWaitedForAsThePolicySays() {
    Practice never =
        Practice.USUAL.with(Changed.in(HandlePractice.USUAL, "riseWaitedFor", new Span(0)));
    assertThat(
            IntStream.of(10, 21, 26)
                .mapToObj(seed -> RandomLines.of(seed).assignment())
                .anyMatch(
                    line ->
                        !Planner.plan(line)
                            .actions()
                            .equals(Planner.plan(line.with(line.policy().with(never))).actions())))
        .isTrue();
  }

  /** Where an eased brake is to slow the train so much that the first application must too. */
  @Test
  void aFirstApplicationIsFeltAboveTheAimAsThePolicySays() {
    BrakePractice strong = Changed.in(BrakePractice.USUAL, "eased", new Acceleration(0.45));
    Practice atAim = Practice.USUAL.with(Changed.in(strong, "feltAbove", new Speed(0)));
    Practice farAbove = Practice.USUAL.with(Changed.in(strong, "feltAbove", new Speed(60 / 3.6)));
    assertThat(driven(Direction.FORWARD, "4-car", farAbove))
        .isNotEqualTo(driven(Direction.FORWARD, "4-car", atAim));
  }

  @Test
  void whatADriverKeepsToAtLeastIsThePolicys() {
    BrakePractice brake = Changed.in(BrakePractice.USUAL, "offAtLeast", new Span(60));
    PowerPractice power = Changed.in(PowerPractice.USUAL, "offAtLeast", new Span(70));
    RuleBreaches.Limits least =
        RuleBreaches.Limits.of(
            Mill.policy().with(Practice.USUAL.with(brake).with(power)),
            Mill.assignment(Direction.FORWARD, "4-car").stock().traction());
    assertThat(least.brakeOffS()).isEqualTo(60);
    assertThat(least.powerOffS()).isEqualTo(70);
  }

  private static List<Action> driven(Direction direction, String formation, Practice practice) {
    Assignment mill = Mill.assignment(direction, formation);
    return Planner.plan(mill.with(mill.policy().with(practice))).approaches().stream()
        .flatMap(a -> a.actions().stream())
        .toList();
  }

  private static Arguments brake(String what, Object value) {
    return Arguments.of(what, Practice.USUAL.with(Changed.in(BrakePractice.USUAL, what, value)));
  }

  private static Arguments coast(String what, Object value) {
    return Arguments.of(what, Practice.USUAL.with(Changed.in(CoastPractice.USUAL, what, value)));
  }

  private static Arguments handles(String what, Object value) {
    return Arguments.of(what, Practice.USUAL.with(Changed.in(HandlePractice.USUAL, what, value)));
  }

  private static Arguments power(String what, Object value) {
    return Arguments.of(what, Practice.USUAL.with(Changed.in(PowerPractice.USUAL, what, value)));
  }
}
