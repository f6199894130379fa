package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.policy.LinePractice;
import gradepost.policy.Policy;
import gradepost.policy.Practice;
import gradepost.route.Landmark;
import gradepost.route.Route;
import gradepost.route.Signal;
import gradepost.route.audit.AuditFinding;
import gradepost.route.audit.AuditRule;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.units.Length;
import gradepost.units.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Property: a cue counts up to the policy's time before a braking point, and not a moment longer.
 * The run is made even: 20 m/s all the way, braking at 1 000 m, so that 15 s are 300 m.
 */
class MissingCueTest {
  private static final Plan EVEN = even();

  private static Plan even() {
    Plan plan = Planner.plan(LineOfOwn.of(0, 20, List.of()));
    assertThat(plan.failures()).isEmpty();
    Approach to = plan.approaches().get(plan.approaches().size() - 1);
    Application braking = Changed.in(to.applications().get(0), "brakingPointM", 1000.0);
    Trace trace =
        new Trace(List.of(new Trace.Point(0, 0, 20, 0, -1), new Trace.Point(70, 1400, 20, 0, -1)));
    return Changed.in(
        Changed.in(plan, "approaches", List.of(Changed.in(to, "applications", List.of(braking)))),
        "trace",
        trace);
  }

  private static Location at(double metres) {
    return EVEN.assignment().path().locationAt(metres);
  }

  private static Landmark landmark(double metres, boolean night) {
    return new Landmark("hut", at(metres), Applies.EVERYWHERE, Hand.LEFT, night, new Length(200));
  }

  private static Signal signal(double metres, double magnetM) {
    return new Signal(
        "M 7",
        Signal.Kind.STOP,
        at(metres),
        Direction.FORWARD,
        "Single",
        Optional.of(at(magnetM)),
        List.of(),
        "");
  }

  private static List<String> found(List<Landmark> landmarks, List<Signal> signals, Policy policy) {
    Route route = EVEN.assignment().route();
    route = Changed.in(Changed.in(route, "landmarks", landmarks), "signals", signals);
    Plan plan =
        Changed.in(
            EVEN,
            "assignment",
            Changed.in(Changed.in(EVEN.assignment(), "route", route), "policy", policy));
    return TrainAudit.of(plan).stream()
        .filter(f -> f.rule() == AuditRule.CUE_MISSING)
        .map(AuditFinding::what)
        .toList();
  }

  private static List<String> found(Landmark... landmarks) {
    List<Landmark> all = new ArrayList<>(List.of(landmarks));
    // Behind the braking point: it tells no place before it, but shows that there was a survey.
    all.add(landmark(1300, true));
    return found(all, List.of(), Mill.policy());
  }

  @Test
  void aCueCountsUpToFifteenSecondsBefore() {
    assertThat(found(landmark(700, true))).isEmpty();
    assertThat(found(landmark(1000, true))).isEmpty();
    assertThat(found(landmark(699.9, true)))
        .containsExactly(
            "4-car, Down: no cue for Halt 1 within 15 s before braking at 4.21 km. Look for one from 3.92 km on");
    assertThat(found(landmark(1001, true))).hasSize(1);
  }

  @Test
  void whatServesByDayAloneIsNoneAtNight() {
    assertThat(found(landmark(700, false)))
        .containsExactly(
            "4-car, Down: no cue at night or in fog for Halt 1 within 15 s before braking at 4.21"
                + " km. Look for one from 3.92 km on");
  }

  @Test
  void theTimeIsThePolicys() {
    LinePractice twenty = Changed.in(LinePractice.USUAL, "cueWithin", new Span(20));
    Policy policy = Mill.policy().with(Practice.USUAL.with(twenty));
    assertThat(found(List.of(landmark(600, true)), List.of(), policy)).isEmpty();
    assertThat(found(List.of(landmark(599.9, true)), List.of(), policy))
        .singleElement()
        .asString()
        .contains(" within 20 s ");
  }

  /** A signal is lit, and a magnet is heard. */
  @Test
  void aSignalIsACueAndSoIsItsMagnet() {
    assertThat(found(List.of(), List.of(signal(700, 500)), Mill.policy())).isEmpty();
    assertThat(found(List.of(landmark(700, false)), List.of(signal(1200, 700)), Mill.policy()))
        .isEmpty();
    assertThat(found(List.of(landmark(700, false)), List.of(signal(1200, 699.9)), Mill.policy()))
        .singleElement()
        .asString()
        .endsWith(". Look for one from 3.92 km on");
  }

  @Test
  void whereNothingIsSurveyedItIsSaidOnce() {
    assertThat(found(List.of(), List.of(), Mill.policy()))
        .containsExactly(
            "4-car, Down: no landmark or signal is surveyed. At night or in fog 1 of 1 braking points have no cue. Look first for one from 3.92 km to 4.21 km, for Halt 1");
    assertThat(found(List.of(landmark(700, false)), List.of(), Mill.policy()))
        .containsExactly(
            "4-car, Down: nothing lit or heard is surveyed. At night or in fog 1 of 1 braking points have no cue. Look first for one from 3.92 km to 4.21 km, for Halt 1");
  }
}
