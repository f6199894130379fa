package gradepost.plan;

import java.util.Optional;
import java.util.function.Function;

/** What the driver waits for; every value is one that is printed. */
public sealed interface Trigger {

  /** One answer for each case. */
  <T> T match(
      Function<AtPlace, T> place,
      Function<SpeedUpTo, T> up,
      Function<SpeedDownTo, T> down,
      Function<After, T> after,
      Function<Start, T> start,
      Function<Standstill, T> standstill);

  /** Whether the driver is told where; else he waits for a speed or a time. */
  default boolean atItsPlace() {
    return match(
        place -> true, up -> false, down -> false, after -> false, start -> true, stands -> true);
  }

  /** Whether it is the start from a stand. */
  default boolean isStart() {
    return match(
        place -> false, up -> false, down -> false, after -> false, start -> true, stands -> false);
  }

  /** Whether a speed is waited for that drops. */
  default boolean isDropping() {
    return match(
        place -> false, up -> false, down -> true, after -> false, start -> false, stands -> false);
  }

  /** The place, where one is waited for. */
  default Optional<AtPlace> place() {
    return match(
        Optional::of,
        up -> Optional.empty(),
        down -> Optional.empty(),
        after -> Optional.empty(),
        start -> Optional.empty(),
        stands -> Optional.empty());
  }

  /** The time, where one is waited for. */
  default Optional<After> after() {
    return match(
        place -> Optional.empty(),
        up -> Optional.empty(),
        down -> Optional.empty(),
        Optional::of,
        start -> Optional.empty(),
        stands -> Optional.empty());
  }

  /** The front of the train is at this distance run. */
  record AtPlace(double atM) implements Trigger {
    @Override
    public <T> T match(
        Function<AtPlace, T> place,
        Function<SpeedUpTo, T> up,
        Function<SpeedDownTo, T> down,
        Function<After, T> after,
        Function<Start, T> start,
        Function<Standstill, T> standstill) {
      return place.apply(this);
    }
  }

  /** The speed has risen to this. */
  record SpeedUpTo(double speedMps) implements Trigger {
    @Override
    public <T> T match(
        Function<AtPlace, T> place,
        Function<SpeedUpTo, T> up,
        Function<SpeedDownTo, T> down,
        Function<After, T> after,
        Function<Start, T> start,
        Function<Standstill, T> standstill) {
      return up.apply(this);
    }
  }

  /** The speed has dropped to this. */
  record SpeedDownTo(double speedMps) implements Trigger {
    @Override
    public <T> T match(
        Function<AtPlace, T> place,
        Function<SpeedUpTo, T> up,
        Function<SpeedDownTo, T> down,
        Function<After, T> after,
        Function<Start, T> start,
        Function<Standstill, T> standstill) {
      return down.apply(this);
    }
  }

  /** So long after the action before. */
  record After(double seconds) implements Trigger {
    @Override
    public <T> T match(
        Function<AtPlace, T> place,
        Function<SpeedUpTo, T> up,
        Function<SpeedDownTo, T> down,
        Function<After, T> after,
        Function<Start, T> start,
        Function<Standstill, T> standstill) {
      return after.apply(this);
    }
  }

  /** The train is ready to start and has been given the right to. */
  record Start() implements Trigger {
    @Override
    public <T> T match(
        Function<AtPlace, T> place,
        Function<SpeedUpTo, T> up,
        Function<SpeedDownTo, T> down,
        Function<After, T> after,
        Function<Start, T> start,
        Function<Standstill, T> standstill) {
      return start.apply(this);
    }
  }

  /** The train has come to a stand. */
  record Standstill() implements Trigger {
    @Override
    public <T> T match(
        Function<AtPlace, T> place,
        Function<SpeedUpTo, T> up,
        Function<SpeedDownTo, T> down,
        Function<After, T> after,
        Function<Start, T> start,
        Function<Standstill, T> standstill) {
      return standstill.apply(this);
    }
  }
}
