package gradepost.source.ride;

import gradepost.source.file.SourceFiles;
import gradepost.source.ride.RideReader.Cell;
import gradepost.source.route.RouteFrame;
import gradepost.yaml.Reader;
import java.util.List;
import java.util.Optional;

/** What the lines above the headings of a ride's file say: name and value, a line each. */
public final class RideHeading {
  private final List<List<Cell>> lines;

  private RideHeading(List<List<Cell>> lines) {
    this.lines = lines;
  }

  /** Of a file; nothing where it cannot be read, which its reader tells. */
  public static RideHeading of(SourceFiles files, String name) {
    Reader in = new Reader(name, RouteFrame.UNKNOWN);
    return new RideHeading(
        files
            .recorded(name)
            .match(held -> new RideText(held.bytes(), in).before(), bad -> List.of()));
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
