package gradepost.yaml;

import gradepost.text.Mistake;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Checks that a list runs the right way. */
public final class Order {

  /** A problem for each value that is not above the one before it. */
  public static <T> void rising(
      List<T> values,
      ToDoubleFunction<T> by,
      Function<T, SourcePosition> spot,
      Mistake mistake,
      Reader in) {
    for (int i = 1; i < values.size(); i++) {
      if (by.applyAsDouble(values.get(i)) <= by.applyAsDouble(values.get(i - 1))) {
        in.error(spot.apply(values.get(i)), mistake);
      }
    }
  }

  /** A problem for each value that is not below the one before it. */
  public static <T> void falling(
      List<T> values,
      ToDoubleFunction<T> by,
      Function<T, SourcePosition> spot,
      Mistake mistake,
      Reader in) {
    for (int i = 1; i < values.size(); i++) {
      if (by.applyAsDouble(values.get(i)) >= by.applyAsDouble(values.get(i - 1))) {
        in.error(spot.apply(values.get(i)), mistake);
      }
    }
  }

  private Order() {}
}
