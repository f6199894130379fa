package gradepost.told;

import gradepost.told.print.PrintedPlace;
import java.util.function.Function;

/** The last place for a brake, or why there is none. */
public sealed interface PrintedLatest {

  /** One answer for each case. */
  <T> T match(Function<At, T> at, Function<Nowhere, T> nowhere);

  /**
   * There is one.
   *
   * @param secondsAfter the braking point; negative before it
   * @param seen what tells the place, where that is printed
   */
  record At(PrintedPlace place, long secondsAfter, Seen seen) implements PrintedLatest {
    @Override
    public <T> T match(Function<At, T> at, Function<Nowhere, T> nowhere) {
      return at.apply(this);
    }
  }

  /** No place on the run will do. */
  record Nowhere(Reason why) implements PrintedLatest {
    @Override
    public <T> T match(Function<At, T> at, Function<Nowhere, T> nowhere) {
      return nowhere.apply(this);
    }
  }
}
