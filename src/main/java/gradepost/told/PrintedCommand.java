package gradepost.told;

import gradepost.told.print.PrintedPressure;
import java.util.Optional;

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
  }

  /** Calls the answer for this case. */
  <T> T match(Cases<T> cases);

  /** The notch, where power is taken. */
  default Optional<Power> power() {
    return this instanceof Power power ? Optional.of(power) : Optional.empty();
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
