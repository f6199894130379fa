package gradepost.stock;

import gradepost.units.Pressure;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Which cylinder pressures the handle can ask for. */
public sealed interface BrakeControl {

  /** One answer for each case. */
  <T> T match(Function<Continuous, T> continuous, Function<Steps, T> steps);

  /** The steps, where there are only these. */
  default Optional<Steps> steps() {
    return match(continuous -> Optional.empty(), Optional::of);
  }

  /** Any pressure up to full. */
  record Continuous() implements BrakeControl {
    @Override
    public <T> T match(Function<Continuous, T> continuous, Function<Steps, T> steps) {
      return continuous.apply(this);
    }
  }

  /** Only these, in rising order; the last one is full service. */
  record Steps(List<Pressure> pressures) implements BrakeControl {
    public Steps {
      pressures = List.copyOf(pressures);
    }

    @Override
    public <T> T match(Function<Continuous, T> continuous, Function<Steps, T> steps) {
      return steps.apply(this);
    }
  }
}
