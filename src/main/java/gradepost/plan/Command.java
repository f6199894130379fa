package gradepost.plan;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/** What the driver does with a handle. */
public sealed interface Command {

  /** One answer for each case. */
  <T> T match(
      Function<Power, T> power,
      Function<ShutOff, T> shutOff,
      Function<Brake, T> brake,
      Function<Release, T> release,
      Function<Stand, T> stand,
      Function<Hold, T> hold);

  /** One deed for each case. */
  default void act(
      Consumer<Power> power,
      Consumer<ShutOff> shutOff,
      Consumer<Brake> brake,
      Consumer<Release> release,
      Consumer<Stand> stand,
      Consumer<Hold> hold) {
    Runnable deed =
        match(
            p -> () -> power.accept(p),
            s -> () -> shutOff.accept(s),
            b -> () -> brake.accept(b),
            r -> () -> release.accept(r),
            s -> () -> stand.accept(s),
            h -> () -> hold.accept(h));
    deed.run();
  }

  /** The notch, where power is taken. */
  default Optional<Power> power() {
    return match(
        Optional::of,
        off -> Optional.empty(),
        brake -> Optional.empty(),
        release -> Optional.empty(),
        stand -> Optional.empty(),
        hold -> Optional.empty());
  }

  /** The application, where the brake is put on or changed. */
  default Optional<Brake> brake() {
    return match(
        power -> Optional.empty(),
        off -> Optional.empty(),
        Optional::of,
        release -> Optional.empty(),
        stand -> Optional.empty(),
        hold -> Optional.empty());
  }

  /** The speeds, where one is held. */
  default Optional<Hold> hold() {
    return match(
        power -> Optional.empty(),
        off -> Optional.empty(),
        brake -> Optional.empty(),
        release -> Optional.empty(),
        stand -> Optional.empty(),
        Optional::of);
  }

  /** Whether it takes power. */
  default boolean isPower() {
    return power().isPresent();
  }

  /** Whether power goes on: the first notch is taken. */
  default boolean takesPower() {
    return power().filter(p -> p.notch() == 0).isPresent();
  }

  /** Whether it applies the brake, or eases it. */
  default boolean isBrake() {
    return brake().isPresent();
  }

  /** Whether the brake holds the speed on a falling gradient, and is for no target. */
  default boolean checksSpeed() {
    return brake().filter(Brake::checks).isPresent();
  }

  /** Whether the brake is put on or changed for the target ahead. */
  default boolean brakesForTarget() {
    return brake().filter(b -> !b.checks() && !b.tests()).isPresent();
  }

  /** Whether it applies the brake for a running brake test, and for no target. */
  default boolean testsBrake() {
    return brake().filter(Brake::tests).isPresent();
  }

  /** Whether it takes power off. */
  default boolean isShutOff() {
    return match(
        power -> false,
        off -> true,
        brake -> false,
        release -> false,
        stand -> false,
        hold -> false);
  }

  /** Whether it releases the brake. */
  default boolean isRelease() {
    return match(
        power -> false,
        off -> false,
        brake -> false,
        release -> true,
        stand -> false,
        hold -> false);
  }

  /** Whether no handle is moved: the train has come to a stand. */
  default boolean isStand() {
    return match(
        power -> false,
        off -> false,
        brake -> false,
        release -> false,
        stand -> true,
        hold -> false);
  }

  /** Take power: move to this notch, index into the stock's notches. */
  record Power(int notch) implements Command {
    @Override
    public <T> T match(
        Function<Power, T> power,
        Function<ShutOff, T> shutOff,
        Function<Brake, T> brake,
        Function<Release, T> release,
        Function<Stand, T> stand,
        Function<Hold, T> hold) {
      return power.apply(this);
    }
  }

  /** Power off. */
  record ShutOff() implements Command {
    @Override
    public <T> T match(
        Function<Power, T> power,
        Function<ShutOff, T> shutOff,
        Function<Brake, T> brake,
        Function<Release, T> release,
        Function<Stand, T> stand,
        Function<Hold, T> hold) {
      return shutOff.apply(this);
    }
  }

  /** Ask the service brake for this cylinder pressure. */
  record Brake(double pressurePa, Stage stage) implements Command {

    /** Whether it holds the speed on a falling gradient, and is for no target. */
    public boolean checks() {
      return stage == Stage.CHECK;
    }

    /** Whether it is a running brake test, and for no target. */
    public boolean tests() {
      return stage == Stage.TEST;
    }

    @Override
    public <T> T match(
        Function<Power, T> power,
        Function<ShutOff, T> shutOff,
        Function<Brake, T> brake,
        Function<Release, T> release,
        Function<Stand, T> stand,
        Function<Hold, T> hold) {
      return brake.apply(this);
    }
  }

  /** Brake fully off. */
  record Release() implements Command {
    @Override
    public <T> T match(
        Function<Power, T> power,
        Function<ShutOff, T> shutOff,
        Function<Brake, T> brake,
        Function<Release, T> release,
        Function<Stand, T> stand,
        Function<Hold, T> hold) {
      return release.apply(this);
    }
  }

  /** The train stands: hold it. */
  record Stand() implements Command {
    @Override
    public <T> T match(
        Function<Power, T> power,
        Function<ShutOff, T> shutOff,
        Function<Brake, T> brake,
        Function<Release, T> release,
        Function<Stand, T> stand,
        Function<Hold, T> hold) {
      return stand.apply(this);
    }
  }

  /**
   * Keep the speed between two figures up to a place, with power and off or with the brake and
   * release, as often as it needs. At that place all is off, unless power is told there.
   *
   * @param lowerMps power is taken, or the brake released, when the speed has dropped to this
   * @param upperMps power comes off, or the brake is applied, when the speed has risen to this
   * @param untilM distance run of the front where it ends, a printed place
   */
  record Hold(HeldBy by, double lowerMps, double upperMps, double untilM) implements Command {
    public Hold {
      if (!(lowerMps > 0 && upperMps > lowerMps)) {
        throw new IllegalArgumentException("no band: " + lowerMps + " to " + upperMps);
      }
    }

    /** The same up to another place. */
    public Hold until(double otherM) {
      return new Hold(by, lowerMps, upperMps, otherM);
    }

    @Override
    public <T> T match(
        Function<Power, T> power,
        Function<ShutOff, T> shutOff,
        Function<Brake, T> brake,
        Function<Release, T> release,
        Function<Stand, T> stand,
        Function<Hold, T> hold) {
      return hold.apply(this);
    }
  }

  /** What a speed is held with. */
  sealed interface HeldBy {
    /** One answer for each case. */
    <T> T match(Function<InNotch, T> notch, Function<WithBrake, T> brake);
  }

  /**
   * Power up to a notch, and off.
   *
   * @param notch the highest that is taken, index into the stock's notches
   */
  record InNotch(int notch) implements HeldBy {
    @Override
    public <T> T match(Function<InNotch, T> notch, Function<WithBrake, T> brake) {
      return notch.apply(this);
    }
  }

  /** A brake at this cylinder pressure, and release. */
  record WithBrake(double pressurePa) implements HeldBy {
    @Override
    public <T> T match(Function<InNotch, T> notch, Function<WithBrake, T> brake) {
      return brake.apply(this);
    }
  }

  /** What a brake command is for. */
  enum Stage {
    FIRST,
    MAIN,
    EASE,
    /** Holds the speed on a falling grade. */
    CHECK,
    /** A running brake test. */
    TEST
  }
}
