package gradepost.told;

import gradepost.told.print.PrintedLength;
import java.util.function.Function;

/** Where a braking comes to the speed of its target. */
public sealed interface PrintedEnd {

  /** One answer for each case. */
  <T> T match(Function<ShortBy, T> before, Function<PastBy, T> past, Function<Nowhere, T> nowhere);

  /** Before the target, by this much. */
  record ShortBy(PrintedLength by) implements PrintedEnd {
    @Override
    public <T> T match(
        Function<ShortBy, T> before, Function<PastBy, T> past, Function<Nowhere, T> nowhere) {
      return before.apply(this);
    }
  }

  /** PastBy it. */
  record PastBy(PrintedLength by) implements PrintedEnd {
    @Override
    public <T> T match(
        Function<ShortBy, T> before, Function<PastBy, T> past, Function<Nowhere, T> nowhere) {
      return past.apply(this);
    }
  }

  /** Nowhere on the known track. */
  record Nowhere(Reason why) implements PrintedEnd {
    @Override
    public <T> T match(
        Function<ShortBy, T> before, Function<PastBy, T> past, Function<Nowhere, T> nowhere) {
      return nowhere.apply(this);
    }
  }
}
