package gradepost.told;

import gradepost.told.print.PrintedSpeed;
import gradepost.told.print.PrintedTime;
import java.util.Optional;

/** What the driver waits for, as printed. */
public sealed interface PrintedTrigger {

  /** One answer for each case. */
  interface Cases<T> {
    /** The place of the instruction. */
    T atPlace(AtPlace at);

    /** A speed that rises. */
    T speedUpTo(SpeedUpTo up);

    /** A speed that drops. */
    T speedDownTo(SpeedDownTo down);

    /** A time. */
    T after(After after);

    /** The right to start. */
    T start(Start start);

    /** A stand. */
    T standstill(Standstill stand);
  }

  /** Calls the answer for this case. */
  <T> T match(Cases<T> cases);

  /** Whether what it waits for comes at the place that is printed; else that is about right. */
  default boolean atItsPlace() {
    return this instanceof AtPlace || this instanceof Start || this instanceof Standstill;
  }

  /** The time, where one is waited for. */
  default Optional<PrintedTime> waited() {
    return this instanceof After after ? Optional.of(after.time()) : Optional.empty();
  }

  /** The speed, where one is waited for that drops. */
  default Optional<PrintedSpeed> dropped() {
    return this instanceof SpeedDownTo down ? Optional.of(down.speed()) : Optional.empty();
  }

  /** The front of the train is at the place that is printed with it. */
  record AtPlace() implements PrintedTrigger {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.atPlace(this);
    }
  }

  /** The speed has risen to this. */
  record SpeedUpTo(PrintedSpeed speed) implements PrintedTrigger {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.speedUpTo(this);
    }
  }

  /** The speed has dropped to this. */
  record SpeedDownTo(PrintedSpeed speed) implements PrintedTrigger {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.speedDownTo(this);
    }
  }

  /** This long after the instruction before. */
  record After(PrintedTime time) implements PrintedTrigger {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.after(this);
    }
  }

  /** The train is ready to start and has been given the right to. */
  record Start() implements PrintedTrigger {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.start(this);
    }
  }

  /** The train has come to a stand. */
  record Standstill() implements PrintedTrigger {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.standstill(this);
    }
  }
}
