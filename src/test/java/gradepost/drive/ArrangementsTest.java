package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import gradepost.Examples;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.Trigger;
import gradepost.policy.Policy;
import gradepost.route.place.Direction;
import gradepost.stock.BrakePreset;
import gradepost.stock.Stock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: every usual arrangement of brakes and power is planned from end to end, by data. */
@Tag("slow")
class ArrangementsTest {

  static Stream<Arguments> arrangements() {
    return Stream.of(
        arguments("EP and automatic air", preset(BrakePreset.EP_AND_AUTOMATIC_AIR), Mill.policy()),
        arguments("two-pipe air", preset(BrakePreset.TWO_PIPE_AIR), Mill.policy()),
        arguments("three-step EP", preset(BrakePreset.THREE_STEP_EP), Arrangements.threeSteps()),
        arguments("one pipe", Arrangements.onePipe(), Arrangements.fullRelease()),
        arguments("brake percentage 110", Arrangements.percentage(110), Mill.policy()),
        arguments("brake percentage 150", Arrangements.percentage(150), Mill.policy()),
        arguments("series motors", Arrangements.seriesMotors(), Mill.policy()));
  }

  private static Stock preset(BrakePreset preset) {
    return Arrangements.preset(preset);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("arrangements")
  void isPlannedBothWaysWithBothTrains(String name, Stock stock, Policy policy) {
    for (Direction direction : Direction.values()) {
      // In an ordinary run each way with one of them.
      int step = Examples.of(2, 1);
      int first = direction == Direction.FORWARD ? 0 : step - 1;
      for (int formation = first; formation < stock.formations().size(); formation += step) {
        Plan plan = Planner.plan(Arrangements.assignment(direction, formation, stock, policy));
        assertThat(plan.failures()).as("%s %s %d", name, direction, formation).isEmpty();
        assertThat(plan.approaches()).isNotEmpty();
        assertThat(plan.approaches().get(plan.approaches().size() - 1).endM())
            .isCloseTo(
                plan.approaches().get(plan.approaches().size() - 1).target().atM(),
                org.assertj.core.api.Assertions.within(5.0));
        assertThat(plan.approaches())
            .allSatisfy(
                a ->
                    assertThat(a.applications())
                        .as(a.target().name())
                        .flatExtracting(Application::told)
                        .allMatch(c -> c.ladder().size() == stock.brakes().size()));
      }
    }
  }

  @Test
  void aServiceBrakeThatOnlyReleasesFullyIsNeverEased() {
    // Even where the policy's technique has eases.
    for (Policy policy : List.of(Arrangements.fullRelease(), Mill.policy())) {
      for (Direction direction : Direction.values()) {
        Plan plan =
            Planner.plan(Arrangements.assignment(direction, 0, Arrangements.onePipe(), policy));
        assertThat(plan.failures()).isEmpty();
        assertThat(eases(plan)).isEmpty();
        assertThat(plan.actions())
            .anyMatch(
                a -> a.command() instanceof Command.Brake b && b.stage() == Command.Stage.MAIN);
      }
    }
  }

  /** Brake commands below the one before without a release between. */
  private static List<Action> eases(Plan plan) {
    List<Action> eases = new ArrayList<>();
    double present = 0;
    for (Action action : plan.actions()) {
      if (action.command() instanceof Command.Brake brake) {
        if (brake.pressurePa() < present - 1) {
          eases.add(action);
        }
        present = brake.pressurePa();
      } else if (action.command() instanceof Command.Release
          || action.trigger() instanceof Trigger.Start) {
        present = 0;
      }
    }
    return eases;
  }
}
