package gradepost.app.issue;

import gradepost.motion.NoEnd;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.task.Target;
import gradepost.units.Gradient;
import gradepost.units.Rounding;
import java.nio.file.Path;
import java.util.List;

/** Why a plan is not fit for issue, in words for whoever keeps the data. */
public final class Failures {

  public static List<String> inWords(Path file, Task task, Plan plan) {
    return inWords(task, plan).stream().map(f -> "%s: error: %s".formatted(file, f)).toList();
  }

  public static List<String> inWords(Task task, Plan plan) {
    boolean explained = plan.failures().stream().anyMatch(PlanFailure::isCause);
    return plan.failures().stream()
        .filter(f -> !explained || !f.mayFollow())
        .map(f -> task.title() + ": " + words(plan, f))
        .toList();
  }

  /** Which target, why, and what would help; its many consequences are left out. */
  private static String cannotBrake(Plan plan, PlanFailure.CannotBrake why) {
    var path = plan.assignment().path();
    var units = path.units();
    Target target = why.target();
    String what =
        target.match(
            stop ->
                "the stop at %s, platform %s (%s)"
                    .formatted(stop.name(), stop.call().platform().number(), path.text(stop.atM())),
            lower -> lowerSpeed(path, lower, lower.name()),
            step -> lowerSpeed(path, step, "terminal platform"),
            signal -> "the signal %s (%s)".formatted(signal.name(), path.text(signal.atM())));
    String main = units.pressure(why.mainPa());
    // If it is full service already, the policy cannot make it stronger.
    boolean full = why.mainPa() > plan.assignment().stock().service().full().pascals() - 1;
    String brake =
        full
            ? "a train with a stronger brake"
            : "a train with a stronger brake, or a stronger main application in the policy";
    return switch (why.cause()) {
      case FALL ->
          "the train cannot be braked for %s: its main application (%s) does not slow it on %s at %s; what would help: %s"
              .formatted(
                  what,
                  main,
                  units.gradient(new Gradient(why.permille())),
                  path.text(why.atM()),
                  brake);
      case TOO_NEAR ->
          "the train cannot be braked for %s: from %s, where it is at %s, its main application (%s) needs more room; what would help: a lower speed before it%s %s"
              .formatted(
                  what,
                  path.text(why.atM()),
                  units.speed(why.entryMps(), Rounding.DOWN),
                  main,
                  full ? ", or" : ",",
                  brake);
      case UNKNOWN ->
          "the printed instructions do not bring the train to %s: %s; what would help: another technique in the policy, or a lower speed before it"
              .formatted(
                  what,
                  plan.failures().stream()
                      .filter(PlanFailure::mayFollow)
                      .findFirst()
                      .map(f -> words(plan, f))
                      .orElse(""));
    };
  }

  private static String lowerSpeed(gradepost.route.Path path, Target target, String set) {
    return "%s at %s (%s)"
        .formatted(
            path.units().speed(target.speedMps(), Rounding.DOWN), path.text(target.atM()), set);
  }

  /** Why there is no plan at all. */
  public static String inWords(Task task, NoEnd e) {
    return "%s: the run cannot be worked out with these data: %s"
        .formatted(task.title(), e.getMessage());
  }

  private static String words(Plan plan, PlanFailure failure) {
    var path = plan.assignment().path();
    var units = path.units();
    return failure.match(
        stop ->
            "run from its own printed instructions the train stops %s %s its mark, %s are allowed"
                .formatted(
                    units.length(Math.abs(stop.shortM()), Rounding.UP),
                    stop.shortM() >= 0 ? "short of" : "past",
                    units.length(stop.toleranceM(), Rounding.DOWN)),
        stalls -> "the train stalls at " + path.text(stalls.atM()),
        over ->
            "run from its own printed instructions the train is at %s at %s, where %s is permissible"
                .formatted(
                    units.speed(over.speedMps(), Rounding.UP),
                    path.text(over.atM()),
                    units.speed(over.ceilingMps(), Rounding.DOWN)),
        forbidden ->
            "the handle movement at %s is one that the stock forbids"
                .formatted(path.text(forbidden.atM())),
        never -> "what the action after %s waits for never comes".formatted(path.text(never.atM())),
        why -> cannotBrake(plan, why));
  }

  private Failures() {}
}
