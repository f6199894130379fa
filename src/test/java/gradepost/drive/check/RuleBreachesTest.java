package gradepost.drive.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Finding.Rule;
import gradepost.plan.Finding.RuleBroken;
import gradepost.plan.Trace;
import gradepost.plan.Trigger;
import gradepost.policy.TaughtRules;
import gradepost.units.Acceleration;
import gradepost.units.Span;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** By hand: what counts as a movement for a moment is told from the actions alone. */
class RuleBreachesTest {
  private static final RuleBreaches.Effort USEFUL = (notch, mps) -> 1;

  private static final TaughtRules NONE =
      new TaughtRules(new Span(0), new Acceleration(0), new Span(500), 12);

  @Test
  void countsFromTheFirstNotchToTheShutOff() {
    List<Action> actions =
        List.of(
            at(0, new Command.Power(0)),
            at(2, new Command.Power(1)),
            at(8, new Command.ShutOff()),
            at(20, new Command.Power(0)),
            at(26, new Command.Power(1)),
            at(27.9, new Command.ShutOff()),
            at(30, new Command.Power(0)),
            at(30, new Command.ShutOff()),
            at(40, new Command.Brake(1e5, Command.Stage.FIRST)));
    // 7.9 s and none of power, and power again after 2.1 s.
    assertThat(RuleBreaches.count(actions, List.of(), least(8), USEFUL)).isEqualTo(3);
    assertThat(RuleBreaches.count(actions, List.of(), least(7), USEFUL)).isEqualTo(2);
    assertThat(RuleBreaches.count(List.of(), List.of(), least(8), USEFUL)).isZero();
  }

  @Test
  void countsABrakeThatIsPutOnAgainAtOnce() {
    List<Action> actions =
        List.of(
            at(0, new Command.Brake(1e5, Command.Stage.CHECK)),
            at(10, new Command.Release()),
            at(10.5, new Command.Brake(1e5, Command.Stage.FIRST)),
            at(13.5, new Command.Brake(2e5, Command.Stage.MAIN)),
            at(20, new Command.Release()),
            at(26, new Command.Brake(1e5, Command.Stage.CHECK)),
            at(36, new Command.Brake(1e5, Command.Stage.FIRST)),
            at(39, new Command.Brake(2e5, Command.Stage.MAIN)));
    // After 0.5 s and after 6 s, each for two, and one that is still on.
    assertThat(RuleBreaches.count(actions, List.of(), least(8), USEFUL)).isEqualTo(5);
  }

  /** It is no application again, and held as long as the policy has for it; what follows is one. */
  @Test
  void aRunningBrakeTestIsNoApplicationAgainButWhatFollowsIs() {
    Command test = new Command.Brake(1e5, Command.Stage.TEST);
    Command check = new Command.Brake(1e5, Command.Stage.CHECK);
    List<Action> tested =
        List.of(
            at(0, check),
            at(10, new Command.Release()),
            at(11, test),
            at(12, new Command.Release()),
            at(42, check));
    assertThat(RuleBreaches.count(tested, List.of(), least(8), USEFUL)).isZero();
    List<Action> again = List.of(at(0, test), at(5, new Command.Release()), at(5.5, check));
    assertThat(RuleBreaches.count(again, List.of(), least(8), USEFUL)).isEqualTo(2);
  }

  @Test
  void countsABrakeThatComesOffBeforeItIsFelt() {
    List<Action> actions =
        List.of(
            at(0, new Command.Brake(1e5, Command.Stage.FIRST)),
            at(2.9, new Command.Release()),
            at(20, new Command.Brake(1e5, Command.Stage.FIRST)),
            at(23, new Command.Brake(2e5, Command.Stage.MAIN)),
            at(24, new Command.Release()));
    assertThat(RuleBreaches.count(actions, List.of(), least(8), USEFUL)).isEqualTo(1);
  }

  /** Each rule by the hundredth of a second: what keeps it, and what just does not. */
  @ParameterizedTest
  @CsvSource({"0, ", "-0.01, POWER_SHORT"})
  void powerIsOnAsLongAsThePolicySays(double moreS, @Nullable Rule broken) {
    found(broken, at(0, new Command.Power(0)), at(8 + moreS, new Command.ShutOff()));
  }

  @ParameterizedTest
  @CsvSource({"0, ", "-0.01, POWER_AGAIN"})
  void powerIsOffAsLongAsThePolicySays(double moreS, @Nullable Rule broken) {
    found(
        broken,
        at(0, new Command.Power(0)),
        at(10, new Command.ShutOff()),
        at(15 + moreS, new Command.Power(0)));
  }

  @ParameterizedTest
  @CsvSource({"0, ", "-0.01, BRAKE_AT_ONCE"})
  void theTrainCoastsBeforeTheBrakeAsLongAsThePolicySays(double moreS, @Nullable Rule broken) {
    found(
        broken,
        at(0, new Command.Power(0)),
        at(10, new Command.ShutOff()),
        at(16 + moreS, new Command.Brake(1e5, Command.Stage.FIRST)));
  }

  /** It is for no target, and nobody knows before when it is needed. */
  @Test
  void aCheckingApplicationMayFollowPowerAtOnce() {
    found(
        null,
        at(0, new Command.Power(0)),
        at(10, new Command.ShutOff()),
        at(10, new Command.Brake(1e5, Command.Stage.CHECK)));
  }

  @ParameterizedTest
  @CsvSource({"0, ", "-0.01, BRAKE_AGAIN"})
  void aBrakeThatCameOffStaysOffAsLongAsThePolicySays(double moreS, @Nullable Rule broken) {
    found(
        broken,
        at(0, new Command.Brake(1e5, Command.Stage.FIRST)),
        at(10, new Command.Release()),
        at(30 + moreS, new Command.Brake(1e5, Command.Stage.FIRST)));
  }

  /** Behind a stand the next leg begins anew. */
  @Test
  void behindAStandTheBrakeMayGoOnAtOnce() {
    found(
        null,
        at(0, new Command.Brake(1e5, Command.Stage.CHECK)),
        at(10, new Command.Release()),
        at(31, new Command.Brake(1e5, Command.Stage.FIRST)),
        at(40, new Command.Stand()),
        at(40, new Command.Brake(1e5, Command.Stage.CHECK)));
  }

  @ParameterizedTest
  @CsvSource({"0, ", "-0.01, BRAKE_SHORT"})
  void aFirstApplicationIsHeldAsLongAsThePolicySays(double moreS, @Nullable Rule broken) {
    found(
        broken,
        at(0, new Command.Brake(1e5, Command.Stage.FIRST)),
        at(3 + moreS, new Command.Release()));
  }

  /** Notch 1 gives nothing from 12 m/s; the train gains 1 m/s each second from 8 m/s at 0 s. */
  @ParameterizedTest
  @CsvSource({"9, ", "9.01, DEAD_NOTCH"})
  void powerStaysInADeadNotchForNoLongerThanThePolicySays(double offS, @Nullable Rule broken) {
    List<Trace.Point> points = new ArrayList<>();
    for (int i = 0; i <= 1000; i++) {
      points.add(new Trace.Point(i / 100.0, i, 8 + i / 100.0, 0, 0));
    }
    List<RuleBroken> found =
        RuleBreaches.of(
                List.of(at(0, new Command.Power(0)), at(offS, new Command.ShutOff())),
                points,
                new RuleBreaches.Limits(0, 3, 8, 5, 6, TaughtRules.USUAL),
                (notch, mps) -> mps < 12 - 1e-9 ? 0.5 : 0.009)
            .stream()
            .map(RuleBreaches.Breach::what)
            .toList();
    assertThat(found.stream().map(RuleBroken::broken))
        .isEqualTo(broken == null ? List.of() : List.of(broken));
    found.forEach(f -> assertThat(f.is()).isCloseTo(5.01, within(1e-6)));
  }

  /** Notch 1 is no running notch: twenty seconds at most. */
  @ParameterizedTest
  @CsvSource({"20, ", "20.01, NOTCH_KEPT"})
  void aNotchIsKeptForNoLongerThanTheTrainBears(double upS, @Nullable Rule broken) {
    RuleBreaches.Limits limits =
        new RuleBreaches.Limits(0, 0, 0, 0, 0, NONE, List.of(20.0, Double.POSITIVE_INFINITY));
    List<RuleBroken> found =
        RuleBreaches.of(
                List.of(
                    at(0, new Command.Power(0)),
                    at(upS, new Command.Power(1)),
                    at(500, new Command.ShutOff())),
                List.of(point(0, 10), point(500, 10)),
                limits,
                USEFUL)
            .stream()
            .map(RuleBreaches.Breach::what)
            .toList();
    assertThat(found.stream().map(RuleBroken::broken))
        .isEqualTo(broken == null ? List.of() : List.of(broken));
    found.forEach(f -> assertThat(f.rule()).isEqualTo(20));
  }

  /** What power does in a notch that gives nothing is no power. */
  @Test
  void timeInADeadNotchDoesNotCountAsPower() {
    List<Trace.Point> points = List.of(point(0, 10), point(1, 12), point(30, 12));
    assertThat(
            RuleBreaches.of(
                    List.of(at(0, new Command.Power(0)), at(30, new Command.ShutOff())),
                    points,
                    least(8),
                    (notch, mps) -> mps < 12 ? 0.5 : 0)
                .stream()
                .map(b -> b.what().broken()))
        .containsExactly(Rule.DEAD_NOTCH, Rule.POWER_SHORT);
  }

  /** Thirteen in a mile are one too many; what comes by itself after some seconds is none. */
  @Test
  void aMileHasNoMoreMovementsThanThePolicySays() {
    List<Action> actions = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      actions.add(moved(100 + 268.3 * i, new Command.Power(0)));
      actions.add(
          new Action(
              1, new Trigger.After(2), new Command.Power(1), 120 + 268.3 * i, 10, 26.83 * i + 2));
      actions.add(moved(200 + 268.3 * i, new Command.ShutOff()));
    }
    assertThat(miles(actions)).isEmpty();
    // The seventh is taken 1,609 m behind the first.
    actions.set(18, moved(100 + 1609, new Command.Power(0)));
    assertThat(miles(actions)).containsExactly(new RuleBroken(Rule.MOVEMENTS, 100, 13, 12));
  }

  /** To hold a speed is one, however often the handle is moved for it. */
  @Test
  void aSpeedThatIsHeldIsOneMovementInAMile() {
    Command.Hold hold = new Command.Hold(new Command.InNotch(1), 5, 7, 1700);
    List<Action> actions = new ArrayList<>(List.of(moved(100, hold)));
    for (int i = 0; i < 12; i++) {
      actions.add(moved(110 + 130 * i, new Command.Power(0)));
      actions.add(moved(170 + 130 * i, new Command.ShutOff()));
    }
    assertThat(miles(actions)).isEmpty();
    // Up to 500 m only: 9 times on and 9 times off come behind it, each for itself.
    actions.set(0, moved(100, hold.until(500)));
    assertThat(miles(actions)).containsExactly(new RuleBroken(Rule.MOVEMENTS, 100, 19, 12));
  }

  /** The sheet tells it, so the longer time does not count; the shorter one does. */
  @ParameterizedTest
  @CsvSource({"0, ", "-0.01, BRAKE_AGAIN"})
  void aBrakeThatHoldsASpeedStaysOffForAsLongAsAnyBrake(double moreS, @Nullable Rule broken) {
    Command.Brake check = new Command.Brake(1e5, Command.Stage.CHECK);
    Command.Hold hold = new Command.Hold(new Command.WithBrake(1e5), 5, 7, 5000);
    found(
        broken,
        at(0, hold),
        at(1, check),
        at(10, new Command.Release()),
        at(18 + moreS, check),
        at(30, new Command.Release()));
  }

  private static List<RuleBroken> miles(List<Action> actions) {
    return RuleBreaches.of(actions, List.of(), new RuleBreaches.Limits(0, 0, 0, 0, 0, NONE), USEFUL)
        .stream()
        .map(RuleBreaches.Breach::what)
        .toList();
  }

  private static Action moved(double atM, Command command) {
    return new Action(1, new Trigger.AtPlace(atM), command, atM, 10, atM / 10);
  }

  private static Trace.Point point(double timeS, double speedMps) {
    return new Trace.Point(timeS, 10 * timeS, speedMps, 0, 0);
  }

  private static void found(@Nullable Rule broken, Action... actions) {
    assertThat(
            RuleBreaches.of(
                    List.of(actions),
                    List.of(),
                    new RuleBreaches.Limits(8, 3, 8, 5, 6, TaughtRules.USUAL),
                    USEFUL)
                .stream()
                .map(b -> b.what().broken())
                .toList())
        .isEqualTo(broken == null ? List.of() : List.of(broken));
  }

  private static Action at(double timeS, Command command) {
    return new Action(1, new Trigger.AtPlace(100 * timeS), command, 100 * timeS, 10, timeS);
  }

  /** A brake let go for 8 s and power off for 5 s at least. */
  private static RuleBreaches.Limits least(double powerS) {
    return new RuleBreaches.Limits(
        powerS, 3, 8, 5, 0, new TaughtRules(new Span(8), new Acceleration(0.01), new Span(5), 12));
  }
}
