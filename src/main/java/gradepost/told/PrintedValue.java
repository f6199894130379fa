package gradepost.told;

import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedPressure;
import gradepost.told.print.PrintedSpeed;
import gradepost.told.print.PrintedTime;

/** What stands in a hole of a sentence. */
public sealed interface PrintedValue {

  /** One answer for each case. */
  interface Cases<T> {
    /** A place. */
    T place(Place place);

    /** A speed. */
    T speed(Speed speed);

    /** A pressure. */
    T pressure(Pressure pressure);

    /** A length. */
    T length(Length length);

    /** A time. */
    T time(Time time);

    /** Why there is none. */
    T reason(Why why);

    /** A number. */
    T number(Count number);

    /** A name or a text of the data. */
    T name(Name name);
  }

  /** Calls the answer for this case. */
  <T> T match(Cases<T> cases);

  /** A place. */
  record Place(PrintedPlace at) implements PrintedValue {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.place(this);
    }
  }

  /** A speed. */
  record Speed(PrintedSpeed speed) implements PrintedValue {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.speed(this);
    }
  }

  /** A pressure. */
  record Pressure(PrintedPressure pressure) implements PrintedValue {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.pressure(this);
    }
  }

  /** A length. */
  record Length(PrintedLength length) implements PrintedValue {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.length(this);
    }
  }

  /** A time. */
  record Time(PrintedTime time) implements PrintedValue {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.time(this);
    }
  }

  /** Why there is none. */
  record Why(Reason reason) implements PrintedValue {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.reason(this);
    }
  }

  /** A number. */
  record Count(long number) implements PrintedValue {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.number(this);
    }
  }

  /** A name, or a text of the data. */
  record Name(String text) implements PrintedValue {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.name(this);
    }
  }
}
