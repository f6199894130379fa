package gradepost.plan;

import gradepost.route.Path;
import gradepost.route.Signal;
import gradepost.route.Structure;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Stops;
import gradepost.told.Seen;
import gradepost.told.print.PrintGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** What a driver can tell a place by: the nearest thing to see at or before it. */
public final class Sightings {
  /** A thing this little past the place is at it. */
  private static final double AT_M = 0.5;

  /** A bridge is a cue by night, unless a landmark of its name says otherwise: common practice. */
  private static final Set<Structure.Kind> OVER_THE_LINE =
      EnumSet.of(Structure.Kind.OVERBRIDGE, Structure.Kind.FOOTBRIDGE);

  /** Nearer than this many yards or metres a distance past it is not told. */
  private static final double NEXT_TO_UNITS = 5;

  /**
   * One thing.
   *
   * @param atM distance run of the front where it is met, metres
   * @param seen whether a driver sees it by day; what is only heard is not
   * @param lit whether it serves at night and in fog: lit, heard, or over the line
   * @param signal what kind of signal it is, where it is one
   */
  public record Sighting(
      double atM,
      Seen.Kind kind,
      String name,
      boolean seen,
      boolean lit,
      Optional<Signal.Kind> signal) {
    private Sighting(double atM, Seen.Kind kind, String name, boolean seen, boolean lit) {
      this(atM, kind, name, seen, lit, Optional.empty());
    }
  }

  private final List<Sighting> all = new ArrayList<>();
  private final PrintGrid grid;
  private final double reachM;
  private final double alikeM;

  public Sightings(Assignment assignment, PrintGrid grid) {
    this.grid = grid;
    this.reachM = assignment.policy().run().landmarkReach().metres();
    this.alikeM = assignment.policy().practice().line().alikeWithin().metres();
    Path path = assignment.path();
    assignment.route().landmarks().stream()
        .filter(l -> l.applies().to(assignment.direction(), assignment.lines()))
        .forEach(
            l ->
                all.add(
                    new Sighting(
                        path.metresAt(l.location()),
                        Seen.Kind.LANDMARK,
                        l.name(),
                        true,
                        l.night())));
    assignment.route().signals().stream()
        .filter(s -> s.direction() == assignment.direction())
        .filter(s -> s.line().isEmpty() || assignment.lines().contains(s.line()))
        .forEach(s -> signal(path, s));
    assignment.route().structures().stream()
        .filter(s -> OVER_THE_LINE.contains(s.kind()))
        .filter(s -> !s.name().isBlank())
        .filter(s -> all.stream().noneMatch(known -> known.name().equals(s.name())))
        .forEach(
            s ->
                all.add(
                    new Sighting(
                        path.span(s.extent()).fromM(), Seen.Kind.BRIDGE, s.name(), true, true)));
    assignment.route().stations().forEach(s -> ramps(assignment, s));
    // What lies behind the front of a train that has not started yet is never come to.
    double startM = Stops.markM(assignment, assignment.calls().get(0));
    all.removeIf(s -> s.atM() < startM - AT_M);
    all.sort(Comparator.comparingDouble(Sighting::atM));
  }

  private void signal(Path path, Signal signal) {
    all.add(
        new Sighting(
            path.metresAt(signal.location()),
            Seen.Kind.SIGNAL,
            signal.id(),
            true,
            true,
            Optional.of(signal.kind())));
    signal
        .aws()
        .ifPresent(
            m ->
                all.add(
                    new Sighting(path.metresAt(m), Seen.Kind.MAGNET, signal.id(), false, true)));
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
                        true,
                        false)));
  }

  /** All of them, in order of travel. */
  public List<Sighting> all() {
    return List.copyOf(all);
  }

  /** What tells a place, distance run in metres. */
  public Seen at(double atM) {
    Optional<Sighting> day = last(atM - reachM, atM, Sighting::seen);
    Optional<Sighting> night =
        day.filter(s -> !s.lit()).flatMap(s -> last(atM - reachM, atM, Sighting::lit));
    return new Seen(day.map(s -> thing(s, atM)), night.map(s -> thing(s, atM)));
  }

  /** The nearest thing of any kind, and the nearest that serves at night, each for itself. */
  Seen near(double atM) {
    return new Seen(
        last(atM - reachM, atM, Sighting::seen).map(s -> thing(s, atM)),
        last(atM - reachM, atM, Sighting::lit).map(s -> thing(s, atM)));
  }

  /**
   * What a driver counts from on a run: the last thing at or before a place that is seen or heard,
   * and the last that serves at night and in fog; distances run in metres.
   *
   * @param fromM nothing before this is a cue
   */
  Seen toCountFrom(double fromM, double atM, Run run) {
    return new Seen(
        cue(fromM, atM, s -> true).map(s -> counted(s, atM, run)),
        cue(fromM, atM, Sighting::lit).map(s -> counted(s, atM, run)));
  }

  /** The last one that is not easily mistaken for another, if there is one. */
  private Optional<Sighting> cue(double fromM, double atM, Predicate<Sighting> which) {
    return last(fromM, atM, which.and(this::alone)).or(() -> last(fromM, atM, which));
  }

  private boolean alone(Sighting sighting) {
    return all.stream()
        .filter(s -> s.name().equals(sighting.name()) && s.kind() == sighting.kind())
        .allMatch(s -> s.equals(sighting) || Math.abs(s.atM() - sighting.atM()) >= alikeM);
  }

  /** Counted for too short rather than too long: the brake is then on before the point. */
  private Seen.Thing counted(Sighting sighting, double atM, Run run) {
    double seconds = run.timeAt(atM) - run.timeAt(sighting.atM());
    Seen.Thing thing = thing(sighting, atM);
    return seconds < 1
        ? thing
        : new Seen.Thing(
            thing.kind(), thing.name(), Optional.empty(), Optional.of(grid.timeLeft(seconds)));
  }

  /** Whether anything tells a place on this stretch, distances run in metres. */
  public boolean between(double fromM, double toM, boolean night) {
    return all.stream()
        .filter(s -> s.lit() || !night)
        .anyMatch(s -> s.atM() >= fromM && s.atM() <= toM + AT_M);
  }

  /** Whether there is anything on the line beside its platforms. */
  public boolean surveyed(boolean night) {
    return all.stream().anyMatch(s -> s.kind() != Seen.Kind.RAMP && (s.lit() || !night));
  }

  /** Of things at one place, one that serves at night too. */
  private Optional<Sighting> last(double fromM, double atM, Predicate<Sighting> which) {
    List<Sighting> near =
        all.stream().filter(s -> s.atM() <= atM + AT_M && s.atM() >= fromM).filter(which).toList();
    return near.stream()
        .reduce((a, b) -> b)
        .map(
            last ->
                near.stream()
                    .filter(s -> s.lit() && Math.abs(s.atM() - last.atM()) < AT_M)
                    .findFirst()
                    .orElse(last));
  }

  private Seen.Thing thing(Sighting sighting, double atM) {
    double byM = atM - sighting.atM();
    return new Seen.Thing(
        sighting.kind(),
        sighting.name(),
        byM < grid.units().lengthUnitM() * NEXT_TO_UNITS
            ? Optional.empty()
            : Optional.of(grid.room(byM)),
        Optional.empty());
  }
}
