package gradepost.told;

import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedTime;
import java.util.Optional;
import java.util.function.Function;

/** The point that still leaves the next brake enough, if the first one fails there. */
public sealed interface PrintedProtection {

  /** One answer for each case. */
  <T> T match(Function<Nowhere, T> nowhere, Function<Same, T> same, Function<At, T> at);

  /** There is none. */
  record Nowhere() implements PrintedProtection {
    @Override
    public <T> T match(Function<Nowhere, T> nowhere, Function<Same, T> same, Function<At, T> at) {
      return nowhere.apply(this);
    }
  }

  /** The planned one. */
  record Same() implements PrintedProtection {
    @Override
    public <T> T match(Function<Nowhere, T> nowhere, Function<Same, T> same, Function<At, T> at) {
      return same.apply(this);
    }
  }

  /**
   * An earlier one.
   *
   * @param costs running time; empty where the technique, begun there, does not end at its aim
   */
  record At(PrintedPlace place, Optional<PrintedTime> costs) implements PrintedProtection {
    @Override
    public <T> T match(Function<Nowhere, T> nowhere, Function<Same, T> same, Function<At, T> at) {
      return at.apply(this);
    }
  }
}
