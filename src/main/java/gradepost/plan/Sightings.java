package gradepost.plan;

import gradepost.route.Path;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Stops;
import gradepost.told.Seen;
import gradepost.told.print.PrintGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What a driver can tell a place by: the nearest thing to see at or before it. */
public final class Sightings {
  /** A thing this little past the place is at it. */
  private static final double AT_M = 0.5;

  /** Nearer than this many yards or metres a distance past it is not told. */
  private static final double NEXT_TO_UNITS = 5;

  private record Sighting(double atM, Seen.Kind kind, String name, boolean night) {}

  private final List<Sighting> all = new ArrayList<>();
  private final PrintGrid grid;
  private final double reachM;

  public Sightings(Assignment assignment, PrintGrid grid) {
    this.grid = grid;
    this.reachM = assignment.policy().run().landmarkReach().metres();
    Path path = assignment.path();
    assignment.route().landmarks().stream()
        .filter(l -> l.applies().to(assignment.direction(), assignment.lines()))
        .forEach(
            l ->
                all.add(
                    new Sighting(
                        path.metresAt(l.location()), Seen.Kind.LANDMARK, l.name(), l.night())));
    assignment.route().signals().stream()
        .filter(s -> s.direction() == assignment.direction())
        .filter(s -> s.line().isEmpty() || assignment.lines().contains(s.line()))
        .forEach(
            s ->
                all.add(new Sighting(path.metresAt(s.location()), Seen.Kind.SIGNAL, s.id(), true)));
    assignment.route().stations().forEach(s -> ramps(assignment, s));
    all.sort(Comparator.comparingDouble(Sighting::atM));
  }

  /** That a ramp is seen by night is for the data to say: a landmark that serves at night. */
  private void ramps(Assignment assignment, Station station) {
    List<Platform> called =
        assignment.calls().stream()
            .filter(c -> c.station().equals(station))
            .map(Call::platform)
            .distinct()
            .toList();
    station.platforms().stream()
        .filter(
            p ->
                called.isEmpty()
                    ? p.applies().to(assignment.direction(), assignment.lines())
                    : called.contains(p))
        .forEach(
            p ->
                all.add(
                    new Sighting(
                        Stops.platformStartM(assignment.path(), p),
                        Seen.Kind.RAMP,
                        p.number(),
                        false)));
  }

  /** What tells a place, distance run in metres. */
  public Seen at(double atM) {
    Optional<Sighting> day = last(atM, false);
    Optional<Sighting> night = day.filter(s -> !s.night()).flatMap(s -> last(atM, true));
    return new Seen(day.map(s -> thing(s, atM)), night.map(s -> thing(s, atM)));
  }

  /** The last thing of any kind at or before a place. */
  Optional<Seen.Thing> day(double atM) {
    return last(atM, false).map(s -> thing(s, atM));
  }

  /** The last one that serves at night or in fog. */
  Optional<Seen.Thing> night(double atM) {
    return last(atM, true).map(s -> thing(s, atM));
  }

  /** A landmark that stands this far before the place. */
  Seen.Thing landmark(String name, double beforeM) {
    return thing(Seen.Kind.LANDMARK, name, beforeM);
  }

  /** Whether anything tells a place on this stretch, distances run in metres. */
  public boolean between(double fromM, double toM, boolean night) {
    return all.stream()
        .filter(s -> s.night() || !night)
        .anyMatch(s -> s.atM() >= fromM && s.atM() <= toM + AT_M);
  }

  /** Whether there is anything on the line beside its platforms. */
  public boolean surveyed(boolean night) {
    return all.stream().anyMatch(s -> s.kind() != Seen.Kind.RAMP && (s.night() || !night));
  }

  /** Of things at one place, one that serves at night too. */
  private Optional<Sighting> last(double atM, boolean night) {
    List<Sighting> near =
        all.stream()
            .filter(s -> s.atM() <= atM + AT_M && s.atM() >= atM - reachM)
            .filter(s -> s.night() || !night)
            .toList();
    return near.stream()
        .reduce((a, b) -> b)
        .map(
            last ->
                near.stream()
                    .filter(s -> s.night() && Math.abs(s.atM() - last.atM()) < AT_M)
                    .findFirst()
                    .orElse(last));
  }

  private Seen.Thing thing(Sighting sighting, double atM) {
    return thing(sighting.kind(), sighting.name(), atM - sighting.atM());
  }

  private Seen.Thing thing(Seen.Kind kind, String name, double byM) {
    return new Seen.Thing(
        kind,
        name,
        byM < grid.units().lengthUnitM() * NEXT_TO_UNITS
            ? Optional.empty()
            : Optional.of(grid.room(byM)));
  }
}
