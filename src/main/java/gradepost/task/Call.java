package gradepost.task;

import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.units.Span;
import java.util.Optional;

/**
 * A booked stop of this train.
 *
 * @param dwell booked to stand
 * @param booked running time from the call before, from start to stand; empty where none is booked
 */
public record Call(Station station, Platform platform, Span dwell, Optional<Span> booked) {

  /** A stop that no running time is booked to. */
  public Call(Station station, Platform platform, Span dwell) {
    this(station, platform, dwell, Optional.empty());
  }
}
