package gradepost.app.issue;

import gradepost.motion.NoEnd;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.Gradient;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Why a plan is not fit for issue, in words for whoever keeps the data. */
public final class Failures {
  private final Assignment assignment;
  private final List<PlanFailure> all;
  private final gradepost.route.Path path;
  private final UnitStyle units;

  /**
   * @param all the failures of one plan
   */
  Failures(Assignment assignment, List<PlanFailure> all) {
    this.assignment = assignment;
    this.all = List.copyOf(all);
    this.path = assignment.path();
    this.units = path.units();
  }

  /** Each failure as an error of the pack's file. */
  public static List<String> inWords(Path file, Task task, Plan plan) {
    return inWords(task, plan).stream().map(f -> "%s: error: %s".formatted(file, f)).toList();
  }

  /** Each failure with the paper that it is of. */
  public static List<String> inWords(Task task, Plan plan) {
    return new Failures(plan.assignment(), plan.failures())
        .inWords().stream().map(f -> task.title() + ": " + f).toList();
  }

  /** Why there is no plan at all. */
  public static String inWords(Task task, NoEnd e) {
    String why = String.valueOf(e.getMessage());
    return task.title() + ": " + FailureText.NO_END.with(Map.of("why", why));
  }

  /** Where the cause is known its many consequences are left out. */
  List<String> inWords() {
    boolean explained = all.stream().anyMatch(PlanFailure::isCause);
    return all.stream().filter(f -> !explained || !f.mayFollow()).map(this::words).toList();
  }

  private String words(PlanFailure failure) {
    return failure.match(
        this::outside,
        stalls -> FailureText.STALLS.with(at(stalls.atM())),
        this::over,
        forbidden -> FailureText.FORBIDDEN_MOVEMENT.with(at(forbidden.atM())),
        never -> FailureText.NEVER_COMES.with(at(never.atM())),
        this::cannotBrake,
        untold -> FailureText.RULE_UNTOLD.with(at(untold.atM())));
  }

  private Map<String, String> at(double metres) {
    return Map.of("place", path.text(metres));
  }

  private String outside(PlanFailure.StopOutsideTolerance stop) {
    FailureText text = stop.shortM() >= 0 ? FailureText.STOP_SHORT : FailureText.STOP_PAST;
    return text.with(
        Map.of(
            "off", units.length(Math.abs(stop.shortM()), Rounding.UP),
            "tolerance", units.length(stop.toleranceM(), Rounding.DOWN)));
  }

  private String over(PlanFailure.OverCeiling over) {
    return FailureText.OVER_CEILING.with(
        Map.of(
            "speed", units.speed(over.speedMps(), Rounding.UP),
            "place", path.text(over.atM()),
            "permissible", units.speed(over.ceilingMps(), Rounding.DOWN)));
  }

  /** Which target, why, and what would help. */
  private String cannotBrake(PlanFailure.CannotBrake why) {
    Map<String, String> values = new HashMap<>(at(why.atM()));
    values.put("target", target(why.target()));
    values.put("main", units.pressure(why.mainPa()));
    // If it is full service already, the policy cannot make it stronger.
    boolean full = why.mainPa() > assignment.stock().service().full().pascals() - 1;
    FailureText text =
        switch (why.cause()) {
          case FALL -> {
            values.put("gradient", units.gradient(new Gradient(why.permille())));
            yield full ? FailureText.CANNOT_BRAKE_FALL_FULL_SERVICE : FailureText.CANNOT_BRAKE_FALL;
          }
          case TOO_NEAR -> {
            values.put("speed", units.speed(why.entryMps(), Rounding.DOWN));
            yield full
                ? FailureText.CANNOT_BRAKE_TOO_NEAR_FULL_SERVICE
                : FailureText.CANNOT_BRAKE_TOO_NEAR;
          }
          case UNKNOWN -> {
            values.put("failure", consequence());
            yield FailureText.CANNOT_BRAKE_UNKNOWN;
          }
        };
    return text.with(values);
  }

  /** The first of those that follow from a target that cannot be braked for. */
  private String consequence() {
    return all.stream().filter(PlanFailure::mayFollow).findFirst().map(this::words).orElse("");
  }

  private String target(Target target) {
    return target.match(
        stop ->
            FailureText.TARGET_STOP.with(
                Map.of(
                    "name", stop.name(),
                    "platform", stop.call().platform().number(),
                    "place", path.text(stop.atM()))),
        lower -> lowerSpeed(FailureText.TARGET_LOWER_SPEED, lower, lower.name()),
        step -> lowerSpeed(FailureText.TARGET_TERMINAL, step, ""),
        signal ->
            FailureText.TARGET_SIGNAL.with(
                Map.of("name", signal.name(), "place", path.text(signal.atM()))));
  }

  private String lowerSpeed(FailureText text, Target target, String name) {
    return text.with(
        Map.of(
            "speed", units.speed(target.speedMps(), Rounding.DOWN),
            "place", path.text(target.atM()),
            "name", name));
  }
}
