package gradepost.app.issue;

import gradepost.app.issue.FailureText.Aim;
import gradepost.motion.NoEnd;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.route.LineHoles.InUnits;
import gradepost.route.LineHoles.Place;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.text.Mistake;
import gradepost.units.Gradient;
import gradepost.units.Pressure;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

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
    return of(task, plan).stream().map(f -> "%s: error: %s".formatted(file, f.what())).toList();
  }

  /** Each failure with the paper that it is of. */
  public static List<Mistake> of(Task task, Plan plan) {
    return new Failures(plan.assignment(), plan.failures())
        .told().stream().map(f -> FailureText.PAPER.with(task.title(), f)).toList();
  }

  /** Why there is no plan at all. */
  public static Mistake of(Task task, NoEnd e) {
    return FailureText.PAPER.with(task.title(), FailureText.NO_END.with(e));
  }

  /** Where the cause is known its many consequences are left out. */
  List<Mistake> told() {
    boolean explained = all.stream().anyMatch(PlanFailure::isCause);
    return all.stream().filter(f -> !explained || !f.mayFollow()).map(this::told).toList();
  }

  private Mistake told(PlanFailure failure) {
    return failure.match(
        this::outside,
        stalls -> FailureText.STALLS.with(place(stalls.atM())),
        this::over,
        forbidden -> FailureText.FORBIDDEN_MOVEMENT.with(place(forbidden.atM())),
        never -> FailureText.NEVER_COMES.with(place(never.atM())),
        this::cannotBrake,
        untold -> FailureText.RULE_UNTOLD.with(place(untold.atM())),
        test -> FailureText.TEST_UNTOLD.with(place(test.atM())),
        this::notRecharged,
        this::notHeld);
  }

  private Place place(double metres) {
    return Place.of(path, metres);
  }

  private InUnits<Speed> speed(double mps) {
    return InUnits.metresPerSecond(units, mps);
  }

  private Mistake notRecharged(PlanFailure.NotRecharged not) {
    return FailureText.NOT_RECHARGED.with(
        place(not.atM()),
        new InUnits<>(units, new Pressure(not.askedPa())),
        new InUnits<>(units, new Pressure(not.givesPa())));
  }

  private Mistake notHeld(PlanFailure.NotHeld not) {
    Place at = place(not.atM());
    return switch (not.why()) {
      case TOP -> FailureText.HELD_TOO_FAST.with(at, speed(not.isMps()), speed(not.mayMps()));
      case LEFT -> FailureText.HELD_LEFT.with(at, speed(not.isMps()), speed(not.mayMps()));
      case FULL_RELEASE -> FailureText.HELD_FULL_RELEASE.with(at);
      case EDGE -> FailureText.HELD_EDGE.with(at, speed(not.isMps()));
    };
  }

  private Mistake outside(PlanFailure.StopOutsideTolerance stop) {
    return (stop.shortM() >= 0 ? FailureText.STOP_SHORT : FailureText.STOP_PAST)
        .with(
            InUnits.metres(units, Math.abs(stop.shortM())),
            InUnits.metres(units, stop.toleranceM()));
  }

  private Mistake over(PlanFailure.OverCeiling over) {
    return FailureText.OVER_CEILING.with(
        speed(over.speedMps()), place(over.atM()), speed(over.ceilingMps()));
  }

  /** Which target, why, and what would help. */
  private Mistake cannotBrake(PlanFailure.CannotBrake why) {
    Target target = why.target();
    Aim aim = new Aim(target, place(target.atM()), speed(target.speedMps()));
    InUnits<Pressure> main = new InUnits<>(units, new Pressure(why.mainPa()));
    // If it is full service already, the policy cannot make it stronger.
    boolean full = why.mainPa() > assignment.stock().service().full().pascals() - 1;
    return switch (why.cause()) {
      case FALL ->
          (full ? FailureText.CANNOT_BRAKE_FALL_FULL_SERVICE : FailureText.CANNOT_BRAKE_FALL)
              .with(
                  aim, main, new InUnits<>(units, new Gradient(why.permille())), place(why.atM()));
      case TOO_NEAR ->
          (full
                  ? FailureText.CANNOT_BRAKE_TOO_NEAR_FULL_SERVICE
                  : FailureText.CANNOT_BRAKE_TOO_NEAR)
              .with(aim, place(why.atM()), speed(why.entryMps()), main);
      case UNKNOWN -> FailureText.CANNOT_BRAKE_UNKNOWN.with(aim, consequence());
    };
  }

  /** The first of those that follow from a target that cannot be braked for. */
  private Optional<Mistake> consequence() {
    return all.stream().filter(PlanFailure::mayFollow).findFirst().map(this::told);
  }
}
