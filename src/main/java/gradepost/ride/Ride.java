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
      return samples.stream().anyMatch(s -> s.pressurePa().isPresent());
    }

    /** Whether the power handle was recorded. */
    public boolean notches() {
      return samples.stream().anyMatch(s -> s.notch().isPresent());
    }
  }

  /**
   * A line of an export.
   *
   * @param timeS by the recorder's clock, seconds since its first line
   * @param countedM what the recorder has counted since its first line, metres: by a wheel, so that
   *     it grows too fast with a worn one, or one that slips, and too slowly with one that slides
   * @param speedMps by the same wheel
   * @param passedM where the train was, by a place that was noted as it passed it: distance run of
   *     the front on the plan's path
   * @param magnet whether the train was told of a track magnet of a signal by then
   * @param current whether the train had current from the line; empty where that was not recorded
   */
  record Sample(
      Optional<Double> timeS,
      double countedM,
      double speedMps,
      Optional<Double> pressurePa,
      Optional<Integer> notch,
      Optional<Double> passedM,
      boolean magnet,
      Optional<Boolean> current) {

    /** A line of a recorder that does not see the current. */
    public Sample(
        Optional<Double> timeS,
        double countedM,
        double speedMps,
        Optional<Double> pressurePa,
        Optional<Integer> notch,
        Optional<Double> passedM,
        boolean magnet) {
      this(timeS, countedM, speedMps, pressurePa, notch, passedM, magnet, Optional.empty());
    }
  }

  /**
   * What was observed of one approach; what was not is empty.
   *
   * @param stopErrorM how far short of its mark the train stood; negative past it
   * @param over the most by which any part of the train was over the permissible speed, m/s, for as
   *     long as counts; 0 if not
   * @param forbidden how many handle movements were made that the stock forbids
   * @param excesses each time that it was over the permissible speed, however little
   * @param movements each of the forbidden movements whose place is known
   */
  record Observed(
      int approach,
      Optional<Measured> brakedAtM,
      Optional<Measured> brakedSpeedMps,
      Optional<Double> firstPressurePa,
      Optional<Measured> stopErrorM,
      Optional<Double> over,
      Optional<Integer> forbidden,
      List<Excess> excesses,
      List<ForbiddenMovement> movements) {
    public Observed {
      excesses = List.copyOf(excesses);
      movements = List.copyOf(movements);
    }

    /** What somebody saw and wrote down, without places of what went wrong. */
    public Observed(
        int approach,
        Optional<Double> brakedAtM,
        Optional<Double> brakedSpeedMps,
        Optional<Double> firstPressurePa,
        Optional<Double> stopErrorM,
        Optional<Double> over,
        Optional<Integer> forbidden) {
      this(
          approach,
          brakedAtM.map(Measured::exactly),
          brakedSpeedMps.map(Measured::exactly),
          firstPressurePa,
          stopErrorM.map(Measured::exactly),
          over,
          forbidden,
          List.of(),
          List.of());
    }

    /** The same, stopped as somebody saw it. */
    Observed stopped(Measured errorM) {
      return new Observed(
          approach,
          brakedAtM,
          brakedSpeedMps,
          firstPressurePa,
          Optional.of(errorM),
          over,
          forbidden,
          excesses,
          movements);
    }

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
