package gradepost.task;

import gradepost.policy.Margins;
import gradepost.route.place.Location;
import java.util.Optional;
import java.util.function.Function;

/** What an approach is driven to: a place, and the speed that may not be exceeded there. */
public sealed interface Target {

  /** Distance run of the front of the train when it meets the target, in metres. */
  double atM();

  /** Permissible speed there; 0 where the train comes to a stand. */
  double speedMps();

  /**
   * From where the places close to it are told by their distance, distance run in metres: the stop
   * mark for a step up a terminal platform, else its own place.
   */
  default double toldFromM() {
    return match(Target::atM, Target::atM, TerminalStep::markM, Target::atM);
  }

  /** What the driver knows it by. */
  String name();

  /** One answer for each case. */
  <T> T match(
      Function<Stop, T> stop,
      Function<Reduction, T> reduction,
      Function<TerminalStep, T> step,
      Function<Signal, T> signal);

  /** Whether the train comes to a stand there; else its speed is only brought down. */
  default boolean standsThere() {
    return match(stop -> true, lower -> false, step -> false, signal -> true);
  }

  /**
   * Where a planned braking for it is to be over, distance run in metres: at the place of a stand,
   * and before the board of a lower speed.
   */
  default double aimM(Margins margins) {
    return standsThere() ? atM() : atM() - margins.beforeBoard().metres();
  }

  /** The booked stop, if it is one. */
  default Optional<Stop> stop() {
    return match(
        Optional::of, lower -> Optional.empty(), step -> Optional.empty(), s -> Optional.empty());
  }

  /** Whether it is a booked stop. */
  default boolean isStop() {
    return stop().isPresent();
  }

  /** Whether it is a lower permissible speed on the way: no step up a terminal platform. */
  default boolean isLowerSpeed() {
    return match(stop -> false, lower -> true, step -> false, signal -> false);
  }

  /** Whether it is a step up a terminal platform. */
  default boolean isTerminalStep() {
    return match(stop -> false, lower -> false, step -> true, signal -> false);
  }

  /** The target as that of an approach of its own, if it has one. */
  default Optional<OfApproach> ofApproach() {
    return match(Optional::of, Optional::of, step -> Optional.empty(), signal -> Optional.empty());
  }

  /** A target that an approach of its own leads to. */
  sealed interface OfApproach extends Target {
    /** One answer for each case. */
    <T> T match(Function<Stop, T> stop, Function<Reduction, T> reduction);
  }

  /**
   * A booked stop.
   *
   * @param markText the stop mark ("4-car mark", or "platform end" where there is no mark)
   * @param buffersM distance run of the buffer stops, where the platform road ends in them
   * @param platformStartM where the platform begins for this train
   */
  record Stop(
      String name,
      Call call,
      String markText,
      double atM,
      double platformStartM,
      double platformEndM,
      Optional<Double> buffersM)
      implements OfApproach {
    @Override
    public double speedMps() {
      return 0;
    }

    @Override
    public <T> T match(
        Function<Stop, T> stop,
        Function<Reduction, T> reduction,
        Function<TerminalStep, T> step,
        Function<Signal, T> signal) {
      return stop.apply(this);
    }

    @Override
    public <T> T match(Function<Stop, T> stop, Function<Reduction, T> reduction) {
      return stop.apply(this);
    }

    /** Whether the track ends behind the platform. */
    public boolean terminal() {
      return buffersM.isPresent();
    }
  }

  /**
   * A fall of the permissible speed.
   *
   * @param kind what makes it
   * @param reference of the notice, for a temporary one; else the restriction's name
   * @param fromMps permissible speed before it
   * @param warningM distance run of the first board that warns of it
   */
  record Reduction(
      String name,
      Kind kind,
      String reference,
      double atM,
      double speedMps,
      double fromMps,
      Optional<Location> warning,
      Optional<Double> warningM)
      implements OfApproach {

    public Reduction {
      positive(speedMps);
    }

    @Override
    public <T> T match(
        Function<Stop, T> stop,
        Function<Reduction, T> reduction,
        Function<TerminalStep, T> step,
        Function<Signal, T> signal) {
      return reduction.apply(this);
    }

    @Override
    public <T> T match(Function<Stop, T> stop, Function<Reduction, T> reduction) {
      return reduction.apply(this);
    }

    /** What makes the permissible speed fall. */
    public enum Kind {
      /** A speed of the line. */
      PERMANENT,
      /** A restriction with a notice. */
      TEMPORARY,
      /** A route through pointwork. */
      JUNCTION
    }
  }

  /**
   * A step of the speed up a terminal platform, by the policy; it belongs to the approach of the
   * stop behind it.
   *
   * @param name what sets it
   * @param fromMps permissible speed before it
   * @param markM distance run of the stop mark behind it
   */
  record TerminalStep(String name, double atM, double speedMps, double fromMps, double markM)
      implements Target {
    public TerminalStep {
      positive(speedMps);
    }

    /** A lower speed that no stop mark goes with. */
    public TerminalStep(String name, double atM, double speedMps, double fromMps) {
      this(name, atM, speedMps, fromMps, atM);
    }

    @Override
    public <T> T match(
        Function<Stop, T> stop,
        Function<Reduction, T> reduction,
        Function<TerminalStep, T> step,
        Function<Signal, T> signal) {
      return step.apply(this);
    }
  }

  /**
   * The stand before a signal at danger.
   *
   * @param name of the signal
   */
  record Signal(String name, double atM) implements Target {
    @Override
    public double speedMps() {
      return 0;
    }

    @Override
    public <T> T match(
        Function<Stop, T> stop,
        Function<Reduction, T> reduction,
        Function<TerminalStep, T> step,
        Function<Signal, T> signal) {
      return signal.apply(this);
    }
  }

  private static void positive(double speedMps) {
    if (!(speedMps > 0)) {
      throw new IllegalArgumentException("a lower speed is above 0: " + speedMps);
    }
  }
}
