package gradepost.stock;

import gradepost.units.Pressure;
import java.util.List;

/** Which cylinder pressures the handle can ask for. */
public sealed interface BrakeControl {

  /** Any pressure up to full. */
  record Continuous() implements BrakeControl {}

  /** Only these, in rising order; the last one is full service. */
  record Steps(List<Pressure> pressures) implements BrakeControl {
    public Steps {
      pressures = List.copyOf(pressures);
    }
  }
}
