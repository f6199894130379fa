package gradepost.stock;

import gradepost.units.Span;
import gradepost.units.Speed;

/** How a demand reaches the vehicles. */
public sealed interface BrakeAction {

  /** Time from the demand until a cylinder first answers. */
  Span deadTime();

  /** By wire: every vehicle answers at once. */
  record Simultaneous(Span deadTime) implements BrakeAction {}

  /** Along the pipe: a vehicle answers after its distance from the front over {@code speed}. */
  record Propagated(Span deadTime, Speed speed) implements BrakeAction {
    public Propagated {
      if (speed.metresPerSecond() <= 0) {
        throw new IllegalArgumentException("a propagation has a speed");
      }
    }
  }
}
