package gradepost.told;

import java.util.function.Function;

/** Where a braking comes to the speed of its target. */
public sealed interface PrintedEnd {

  /** One answer for each case. */
  <T> T match(Function<Short, T> before, Function<Past, T> past, Function<Nowhere, T> nowhere);

  /** Before the target, by this much. */
  record Short(PrintedLength by) implements PrintedEnd {
    @Override
    public <T> T match(
        Function<Short, T> before, Function<Past, T> past, Function<Nowhere, T> nowhere) {
      return before.apply(this);
    }
  }

  /** Past it. */
  record Past(PrintedLength by) implements PrintedEnd {
    @Override
    public <T> T match(
        Function<Short, T> before, Function<Past, T> past, Function<Nowhere, T> nowhere) {
      return past.apply(this);
    }
  }

  /** Nowhere on the known track. */
  record Nowhere(Reason why) implements PrintedEnd {
    @Override
    public <T> T match(
        Function<Short, T> before, Function<Past, T> past, Function<Nowhere, T> nowhere) {
      return nowhere.apply(this);
    }
  }
}
