package gradepost.plan;

import gradepost.task.Target;
import java.util.Optional;
import java.util.function.Function;

/**
 * Why a plan is not fit for issue: what goes wrong when it is run again from its printed numbers.
 * No sheet tells it; it is said to the person who keeps the data.
 */
public sealed interface PlanFailure {

  /** One answer for each case. */
  <T> T match(
      Function<StopOutsideTolerance, T> stop,
      Function<Stalls, T> stalls,
      Function<OverCeiling, T> over,
      Function<ForbiddenMovement, T> forbidden,
      Function<NeverComes, T> never,
      Function<CannotBrake, T> cannotBrake,
      Function<RuleUntold, T> untold,
      Function<TestUntold, T> testUntold,
      Function<NotRecharged, T> notRecharged,
      Function<NotHeld, T> notHeld);

  /** Whether it may be the consequence of a target that cannot be braked for. */
  default boolean mayFollow() {
    return match(
        s -> true,
        s -> false,
        o -> true,
        f -> false,
        n -> true,
        c -> false,
        u -> false,
        t -> false,
        r -> false,
        h -> false);
  }

  /** Whether it is the cause that others follow from. */
  default boolean isCause() {
    return match(
        s -> false,
        s -> false,
        o -> false,
        f -> false,
        n -> false,
        c -> true,
        u -> false,
        t -> false,
        r -> false,
        h -> false);
  }

  /** The speed that is too high, if it is one. */
  default Optional<OverCeiling> over() {
    return match(
        s -> Optional.empty(),
        s -> Optional.empty(),
        Optional::of,
        f -> Optional.empty(),
        n -> Optional.empty(),
        c -> Optional.empty(),
        u -> Optional.empty(),
        t -> Optional.empty(),
        r -> Optional.empty(),
        h -> Optional.empty());
  }

  /** The planned stop from its printed instructions ends outside the tolerance. */
  record StopOutsideTolerance(double shortM, double toleranceM) implements PlanFailure {
    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return stop.apply(this);
    }
  }

  /** The train cannot reach or hold a useful speed: stalls on the gradient. */
  record Stalls(double atM) implements PlanFailure {
    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return stalls.apply(this);
    }
  }

  /** Run again from its printed numbers, the plan breaks the permissible speed. */
  record OverCeiling(double atM, double speedMps, double ceilingMps) implements PlanFailure {
    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return over.apply(this);
    }
  }

  /** Run again, the plan asks for a handle movement that the stock forbids. */
  record ForbiddenMovement(double atM, Command command) implements PlanFailure {
    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return forbidden.apply(this);
    }
  }

  /** Run again, what an action waits for never comes. */
  record NeverComes(double atM, Trigger trigger) implements PlanFailure {
    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return never.apply(this);
    }
  }

  /** A rule of driving is broken, and the sheet does not say so. */
  record RuleUntold(double atM, Finding.Rule rule) implements PlanFailure {
    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return untold.apply(this);
    }
  }

  /** A running brake test is not made, and no sheet says why. */
  record TestUntold(double atM) implements PlanFailure {
    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return testUntold.apply(this);
    }
  }

  /**
   * An application asks for more than the reservoirs, which are still filling, can give.
   *
   * @param askedPa cylinder pressure that is asked for
   * @param givesPa the most that there is
   */
  record NotRecharged(double atM, double askedPa, double givesPa) implements PlanFailure {
    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return notRecharged.apply(this);
    }
  }

  /**
   * A speed is not held as it is told.
   *
   * @param atM where the instruction is carried out, or where it shows
   * @param why what is wrong
   * @param isMps the speed of the band, or of the train
   * @param mayMps the highest, or for the lower edge the lowest, that it may be
   */
  record NotHeld(double atM, Why why, double isMps, double mayMps) implements PlanFailure {
    /** What is wrong with a speed that is held. */
    public enum Why {
      /** The upper speed leaves too little under the permissible one. */
      TOP,
      /** The train leaves the band. */
      LEFT,
      /** The brake can only be released in full. */
      FULL_RELEASE,
      /** A train at an edge of the band is too late at the next braking point. */
      EDGE
    }

    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return notHeld.apply(this);
    }
  }

  /**
   * The train cannot be braked for a target: the cause of a failure whose consequences are other
   * findings.
   *
   * @param atM where the cause lies: the fall, or where the room begins
   * @param permille the gradient there, falling negative
   * @param entryMps the speed that the train has at the target before
   * @param mainPa the main application that it is planned with
   */
  record CannotBrake(
      Target target, Cause cause, double atM, double permille, double entryMps, double mainPa)
      implements PlanFailure {

    @Override
    public <T> T match(
        Function<StopOutsideTolerance, T> stop,
        Function<Stalls, T> stalls,
        Function<OverCeiling, T> over,
        Function<ForbiddenMovement, T> forbidden,
        Function<NeverComes, T> never,
        Function<CannotBrake, T> cannotBrake,
        Function<RuleUntold, T> untold,
        Function<TestUntold, T> testUntold,
        Function<NotRecharged, T> notRecharged,
        Function<NotHeld, T> notHeld) {
      return cannotBrake.apply(this);
    }

    /** What keeps it from being braked for. */
    public enum Cause {
      /** The main application does not slow the train on the fall there. */
      FALL,
      /** From the target before there is too little room. */
      TOO_NEAR,
      /** Neither: the brake is enough, but the printed instructions do not meet the target. */
      UNKNOWN
    }
  }
}
