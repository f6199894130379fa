package gradepost.told;

import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedPressure;
import gradepost.told.print.PrintedSpeed;
import java.util.Optional;
import java.util.function.Function;

/** What the driver does with a handle, as printed. */
public sealed interface PrintedCommand {

  /** One answer for each case. */
  interface Cases<T> {
    /** Takes power. */
    T power(Power power);

    /** Shuts off. */
    T shutOff(ShutOff shutOff);

    /** Applies the brake. */
    T brake(Brake brake);

    /** Releases it. */
    T release(Release release);

    /** Holds the train at a stand. */
    T stand(Stand stand);

    /** Holds a speed. */
    T hold(Hold hold);
  }

  /** Calls the answer for this case. */
  <T> T match(Cases<T> cases);

  /** The notch, where power is taken. */
  default Optional<Power> power() {
    return this instanceof Power power ? Optional.of(power) : Optional.empty();
  }

  /** The speeds, where one is held. */
  default Optional<Hold> hold() {
    return this instanceof Hold hold ? Optional.of(hold) : Optional.empty();
  }

  /** The application, where the brake is applied or changed. */
  default Optional<Brake> brake() {
    return this instanceof Brake brake ? Optional.of(brake) : Optional.empty();
  }

  /**
   * Take power.
   *
   * @param notch index into the notches of the stock
   */
  record Power(int notch) implements PrintedCommand {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.power(this);
    }
  }

  /** Power off. */
  record ShutOff() implements PrintedCommand {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.shutOff(this);
    }
  }

  /** Set the service brake to this cylinder pressure. */
  record Brake(PrintedPressure pressure, Stage stage) implements PrintedCommand {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.brake(this);
    }
  }

  /** Brake fully off. */
  record Release() implements PrintedCommand {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.release(this);
    }
  }

  /** The train stands: hold it. */
  record Stand() implements PrintedCommand {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.stand(this);
    }
  }

  /**
   * Keep the speed between two figures up to a place; all off there, unless power is told.
   *
   * @param lower power is taken, or the brake released, at this speed
   * @param upper power comes off, or the brake is applied, at this speed
   */
  record Hold(HeldBy by, PrintedSpeed lower, PrintedSpeed upper, PrintedPlace until)
      implements PrintedCommand {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.hold(this);
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
   * @param notch the highest that is taken, index into the notches of the stock
   */
  record InNotch(int notch) implements HeldBy {
    @Override
    public <T> T match(Function<InNotch, T> notch, Function<WithBrake, T> brake) {
      return notch.apply(this);
    }
  }

  /** A brake at this cylinder pressure, and release. */
  record WithBrake(PrintedPressure pressure) implements HeldBy {
    @Override
    public <T> T match(Function<InNotch, T> notch, Function<WithBrake, T> brake) {
      return brake.apply(this);
    }
  }

  /** What a brake command is for. */
  enum Stage {
    /** The first application. */
    FIRST,
    /** The one that does the work. */
    MAIN,
    /** Less brake towards the end. */
    EASE,
    /** Holds the speed on a falling gradient. */
    CHECK,
    /** A running brake test. */
    TEST
  }
}
