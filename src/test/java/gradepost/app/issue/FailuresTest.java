package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.plan.Command;
import gradepost.plan.Finding;
import gradepost.plan.PlanFailure;
import gradepost.plan.PlanFailure.CannotBrake;
import gradepost.plan.PlanFailure.NotHeld.Why;
import gradepost.plan.Trigger;
import gradepost.source.Frozen;
import gradepost.source.pack.PackFile;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.text.Mistake;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Regression: the sentences by which a plan is refused. */
class FailuresTest {
  /** 1 mph in m/s, by definition. */
  private static final double MPH = 0.44704;

  /** 1 psi in Pa, to six figures (NIST SP 811). */
  private static final double PSI = 6894.76;

  /** 1 yd in m, by definition. */
  private static final double YARD = 0.9144;

  private static final Assignment ASSIGNMENT = assignment();
  private static final double AT = 2000;
  private static final String PLACE = ASSIGNMENT.path().text(AT);

  private static Assignment assignment() {
    PackFile pack = Frozen.valley();
    return pack.assignment(pack.directions().get(0), pack.formations().get(0));
  }

  private static List<String> words(PlanFailure... failures) {
    return new Failures(ASSIGNMENT, List.of(failures)).told().stream().map(Mistake::what).toList();
  }

  private static String cannot(Target target, CannotBrake.Cause cause, double psi) {
    return words(new CannotBrake(target, cause, AT, -1000.0 / 30, 25.1 * MPH, psi * PSI)).get(0);
  }

  @Test
  void whatGoesWrongFromThePrintedNumbers() {
    assertThat(
            words(
                new PlanFailure.OverCeiling(AT, 31.2 * MPH, 30 * MPH),
                new PlanFailure.StopOutsideTolerance(3.5 * YARD, 2 * YARD),
                new PlanFailure.StopOutsideTolerance(-3.5 * YARD, 2 * YARD),
                new PlanFailure.Stalls(AT),
                new PlanFailure.ForbiddenMovement(AT, new Command.ShutOff()),
                new PlanFailure.NeverComes(AT, new Trigger.Standstill())))
        .containsExactly(
            "following its own printed instructions, the train would be doing 32 mph at %s;"
                    .formatted(PLACE)
                + " permissible: 30 mph",
            "following its own printed instructions, the train stops 4 yd short of its mark; 2 yd is allowed",
            "following its own printed instructions, the train stops 4 yd past its mark; 2 yd is allowed",
            "the train stalls at " + PLACE,
            "the handle movement at %s is one that the stock forbids".formatted(PLACE),
            "after %s, the condition for the next action is never met".formatted(PLACE));
  }

  /** What is too fast is told no slower than it is, what is permitted no faster. */
  @Test
  void aSpeedThatIsNotHeldAsItIsTold() {
    assertThat(
            words(
                new PlanFailure.NotHeld(AT, Why.TOP, 26 * MPH, 24.6 * MPH),
                new PlanFailure.NotHeld(AT, Why.LEFT, 27.4 * MPH, 26 * MPH),
                new PlanFailure.NotHeld(AT, Why.FULL_RELEASE, 26 * MPH, 0),
                new PlanFailure.NotHeld(AT, Why.EDGE, 26.4 * MPH, 26 * MPH)))
        .containsExactly(
            "from %s the speed is held up to 26 mph. With the policy's margin and a reaction time, at most 24 mph is permitted"
                .formatted(PLACE),
            "at %s the train is at 28 mph; the speed to be held there is 26 mph".formatted(PLACE),
            "at %s a speed is held with a brake that can only be released in full".formatted(PLACE),
            "at the edge of its held speed the train reaches the braking point %s at 27 mph: too late"
                .formatted(PLACE));
  }

  @Test
  void whatIsNotToldAndWhatIsNotFullAgain() {
    assertThat(
            words(
                new PlanFailure.RuleUntold(AT, Finding.Rule.BRAKE_AGAIN),
                new PlanFailure.TestUntold(AT),
                new PlanFailure.NotRecharged(AT, 30 * PSI, 21.2 * PSI)))
        .containsExactly(
            "at %s the run breaks a driving rule of the policy, and its sheet does not say so"
                .formatted(PLACE),
            "the running brake test at %s is not made, and no sheet says why".formatted(PLACE),
            "the brake applied at %s for 30 psi gives only 21 psi: its reservoirs are still recharging"
                .formatted(PLACE));
  }

  @Test
  void whichTargetWhyAndWhatWouldHelp() {
    Target signal = new Target.Signal("EB 81", AT);
    Target step = new Target.TerminalStep("platform", AT, 15 * MPH, 30 * MPH);
    String brake = "a train with a stronger brake";
    String policy = ", or a stronger main application in the policy";
    String fall =
        "the train cannot be braked for the signal EB 81 (%1$s). Its main application (%2$d psi)"
            + " does not slow it on 1 in 30 falling at %1$s. What would help: ";
    assertThat(cannot(signal, CannotBrake.Cause.FALL, 30))
        .isEqualTo(fall.formatted(PLACE, 30) + brake + policy);
    assertThat(cannot(signal, CannotBrake.Cause.FALL, 50))
        .isEqualTo(fall.formatted(PLACE, 50) + brake);
    String near =
        "the train cannot be braked for 15 mph at %1$s (terminal platform). From %1$s, at 25 mph,"
            + " its main application (%2$d psi) needs more room. What would help: a lower"
            + " speed before it,";
    assertThat(cannot(step, CannotBrake.Cause.TOO_NEAR, 30))
        .isEqualTo(near.formatted(PLACE, 30) + " a stronger brake" + policy);
    assertThat(cannot(step, CannotBrake.Cause.TOO_NEAR, 50))
        .isEqualTo(near.formatted(PLACE, 50) + " or " + brake);
  }

  /** The consequence is told where the cause is not known; it is not told twice. */
  @Test
  void aCauseThatIsNotKnownIsToldByItsConsequence() {
    assertThat(
            words(
                new PlanFailure.NeverComes(AT, new Trigger.Standstill()),
                new CannotBrake(
                    new Target.Signal("EB 81", AT), CannotBrake.Cause.UNKNOWN, AT, 0, 0, 0)))
        .containsExactly(
            "the printed instructions do not bring the train to the signal EB 81 (%1$s): after %1$s,"
                    .formatted(PLACE)
                + " the condition for the next action is never met. What would help: another"
                + " technique in the policy, or a lower speed before it");
  }
}
