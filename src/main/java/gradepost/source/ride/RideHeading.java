package gradepost.source.ride;

import gradepost.source.ride.RideReader.Cell;
import java.util.List;
import java.util.Optional;

/** What the lines above the headings of a ride's file say: name and value, a line each. */
public final class RideHeading {
  private final List<List<Cell>> lines;

  RideHeading(List<List<Cell>> lines) {
    this.lines = lines;
  }

  /** The value behind a name. */
  public Optional<String> value(String name) {
    return lines.stream()
        .filter(l -> l.size() > 1 && RideReader.plain(l.get(0).text()).equals(name))
        .map(l -> l.get(1).text())
        .filter(v -> !v.isBlank())
        .findFirst();
  }
}
