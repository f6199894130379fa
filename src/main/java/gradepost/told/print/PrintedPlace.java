package gradepost.told.print;

import java.util.function.Function;

/** A place as it is printed: its mileage, a landmark, or close to a target so far before it. */
public sealed interface PrintedPlace {

  /** One answer for each case. */
  <T> T match(
      Function<Mileage, T> mileage, Function<Landmark, T> landmark, Function<Before, T> before);

  /**
   * By the posts.
   *
   * @param section in which it lies
   * @param steps of the print grid, from mileage 0: chains, or tens of metres
   * @param named whether the section is printed with it, since another has that mileage too
   */
  record Mileage(String section, long steps, boolean named) implements PrintedPlace {
    @Override
    public <T> T match(
        Function<Mileage, T> mileage, Function<Landmark, T> landmark, Function<Before, T> before) {
      return mileage.apply(this);
    }
  }

  /**
   * At a landmark.
   *
   * @param at the mileage that is printed beside it, at or before it
   */
  record Landmark(String name, Mileage at) implements PrintedPlace {
    @Override
    public <T> T match(
        Function<Mileage, T> mileage, Function<Landmark, T> landmark, Function<Before, T> before) {
      return landmark.apply(this);
    }
  }

  /** So far before the stop mark or the board of the target that the sheet is for. */
  record Before(PrintedLength ahead) implements PrintedPlace {
    @Override
    public <T> T match(
        Function<Mileage, T> mileage, Function<Landmark, T> landmark, Function<Before, T> before) {
      return before.apply(this);
    }
  }
}
