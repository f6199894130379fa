package gradepost.briefing.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Messages;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.drive.DemoPlans;
import gradepost.plan.Plan;
import gradepost.policy.DegradedRules;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: what the key says of a degraded case is what the line and the plan say. */
@Tag("slow")
class DegradedCasesTest {
  /** The valley going down with 4 cars, as it is frozen; its values are read off its route file. */
  private static final int DOWN = 0;

  /** Going up with 8 cars. */
  private static final int UP = 3;

  private static List<DegradedCases.Case> cases(int index, Optional<DegradedRules> rules) {
    Plan plan = DemoPlans.plan(index);
    return new DegradedCases(new BriefingFacts(plan, Messages.english()), rules).all();
  }

  private static String key(List<DegradedCases.Case> cases, String asks) {
    return cases.stream()
        .filter(c -> c.asks().contains(asks))
        .map(c -> String.join("\n", c.key()))
        .collect(Collectors.joining("\n"));
  }

  @Test
  void tokenCrossingAndBridgeAreAnsweredWithTheSignalAndItsPlace() {
    List<DegradedCases.Case> down = cases(DOWN, Optional.empty());
    assertThat(key(down, "without its token"))
        .contains("Single begins at 5m 40ch")
        .contains("Stop at signal CH 32, 5m 32ch.");
    assertThat(key(down, "Weir Lane crossing."))
        .contains("It is at 2m 70ch. Signal WL 12, 2m 66ch, is the last that can stop you.")
        .contains("Signal HT 5 warns you of that one, at 2m 17ch.");
    assertThat(key(down, "Eddle swing bridge"))
        .contains("It is at 1m 33ch. Signal EB 80, 1m 24ch, is the last that can stop you.");
  }

  /** Signal WL 11 is printed at the place of the crossing: it does not protect it. */
  @Test
  void aSignalAtTheCrossingDoesNotProtectIt() {
    assertThat(key(cases(UP, Optional.empty()), "Weir Lane crossing."))
        .contains("Signal WL 13, 3m 18ch, is the last that can stop you.");
  }

  @Test
  void theOtherDirectionIsToldByLine() {
    assertThat(key(cases(DOWN, Optional.empty()), "wrong direction"))
        .contains("Down Main is signalled Down only. Level crossings on it: Weir Lane crossing.")
        .contains("Down Harbour is signalled Down only. No level crossing is on it.")
        .doesNotContain("Bridge Single");
  }

  @Test
  void theBrakeOutOfUseIsToldByTheRulesOrNotAtAll() {
    assertThat(key(cases(DOWN, Optional.empty()), "brake out of use"))
        .contains("The policy has no rule for this.");
    DegradedRules.Permit permit =
        new DegradedRules.Permit("the next depot", new Speed(40 * 0.44704), 1, Optional.empty());
    DegradedRules rules =
        new DegradedRules(
            Optional.of(new DegradedRules.Clause("rule 7.3", Optional.of(permit))),
            Optional.empty(),
            Optional.of(new DegradedRules.Clause("rule 7.4", Optional.empty())));
    List<DegradedCases.Case> ruled = cases(DOWN, Optional.of(rules));
    assertThat(key(ruled, "brake out of use"))
        .contains("rule 7.3: run to the next depot, at most 40 mph.");
    assertThat(key(ruled, "isolated")).contains("rule 7.4: such a run is not permitted.");
  }

  /** By hand: 132 yd of gap; the 4-car's two motored vehicles end 81 yd from each other. */
  @Test
  void aGapThatIsLongerThanTheMotoredVehiclesLeavesTheTrainDead() {
    List<DegradedCases.Case> down = cases(DOWN, Optional.empty());
    assertThat(key(down, "Swing bridge gap")).contains("132 yd long").contains("without current");
    assertThat(key(down, "Weir Lane crossing gap")).contains("22 yd long").contains("span it");
    assertThat(key(cases(UP, Optional.empty()), "Swing bridge gap")).contains("span it");
  }

  @Test
  void poorRailNamesTheBrakingThatMeetsIt() {
    assertThat(key(cases(DOWN, Optional.empty()), "Ferrow cutting"))
        .contains("From 12m 29ch to 12m 05ch.")
        .contains("on low rail: Ferrow Road, platform 1 at 12m");
  }

  /** The buffer stops behind a train that leaves them are no case. */
  @Test
  void onlyTheEndOfTheRunHasBufferStops() {
    assertThat(key(cases(DOWN, Optional.empty()), "Buffer stops")).contains("Buffer stops at 2m");
    assertThat(cases(UP, Optional.empty())).noneMatch(c -> c.asks().contains("Buffer stops"));
  }
}
