package gradepost.ride;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** A driven run as it came in. */
public sealed interface Ride {

  /** One answer for each case. */
  <T> T match(Function<Typed, T> typed, Function<Recorded, T> recorded);

  /** What an assessor wrote down, an approach each. */
  record Typed(List<Observed> approaches) implements Ride {
    public Typed {
      approaches = List.copyOf(approaches);
    }

    @Override
    public <T> T match(Function<Typed, T> typed, Function<Recorded, T> recorded) {
      return typed.apply(this);
    }
  }

  /** What a recorder on the train exported, in order. */
  record Recorded(List<Sample> samples) implements Ride {
    public Recorded {
      samples = List.copyOf(samples);
      if (samples.size() < 2) {
        throw new IllegalArgumentException("a recorded run has two samples at least");
      }
    }

    @Override
    public <T> T match(Function<Typed, T> typed, Function<Recorded, T> recorded) {
      return recorded.apply(this);
    }

    /** Whether brake pressures were recorded. */
    public boolean pressures() {
      return samples.get(0).pressurePa().isPresent();
    }

    /** Whether the power handle was recorded. */
    public boolean notches() {
      return samples.get(0).notch().isPresent();
    }
  }

  /**
   * A line of an export.
   *
   * @param atM distance run of the front on the plan's path
   * @param notch index of the notch, −1 for off
   */
  record Sample(
      double atM, double speedMps, Optional<Double> pressurePa, Optional<Integer> notch) {}

  /**
   * What was observed of one approach; what was not is empty.
   *
   * @param stopErrorM how far short of its mark the train stood; negative past it
   * @param overMps the most by which any part of the train was over the permissible speed; 0 if not
   * @param forbidden how many handle movements were made that the stock forbids
   */
  record Observed(
      int approach,
      Optional<Double> brakedAtM,
      Optional<Double> brakedSpeedMps,
      Optional<Double> firstPressurePa,
      Optional<Double> stopErrorM,
      Optional<Double> overMps,
      Optional<Integer> forbidden) {

    /** Nothing was. */
    static Observed nothing(int approach) {
      return new Observed(
          approach,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
    }
  }
}
