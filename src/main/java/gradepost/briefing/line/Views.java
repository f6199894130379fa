package gradepost.briefing.line;

import gradepost.pack.Picture;
import gradepost.pack.Pictures;
import gradepost.route.Landmark;
import gradepost.route.Signal;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.station.Station;
import gradepost.task.Stops;
import gradepost.told.Seen;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The pictures of what stands by the line, as the driver of one run sees it. */
public final class Views {
  /** A ramp this little past a place is at it, metres. */
  private static final double AT_M = 5;

  /**
   * One thing with its picture.
   *
   * @param name as the paper names it
   * @param atM where it is met, metres run of the front
   */
  public record View(String name, double atM, Picture picture) {}

  private final Lineside lineside;
  private final Pictures pictures;
  private final Set<String> elsewhere;

  public Views(Lineside lineside, Pictures pictures) {
    this(lineside, pictures, Set.of());
  }

  private Views(Lineside lineside, Pictures pictures, Set<String> elsewhere) {
    this.lineside = lineside;
    this.pictures = pictures;
    this.elsewhere = Set.copyOf(elsewhere);
  }

  /** The same without those of these names. */
  public Views without(Set<String> names) {
    return new Views(lineside, pictures, names);
  }

  /** All of them, in the order of travel: of each thing one. */
  public List<View> all() {
    Stream<View> landmarks =
        lineside.landmarks().stream()
            .filter(l -> lineside.signalOf(l).isEmpty())
            .flatMap(l -> landmark(l).stream());
    Stream<View> signals = lineside.signals().stream().flatMap(s -> signal(s).stream());
    Stream<View> stations =
        lineside.platforms().stream()
            .map(o -> o.what().station())
            .distinct()
            .flatMap(s -> station(s).stream());
    return Stream.of(landmarks, signals, stations)
        .flatMap(s -> s)
        .filter(v -> !elsewhere.contains(v.name()))
        .sorted(Comparator.comparingDouble(View::atM))
        .toList();
  }

  /**
   * Of what a driver goes by.
   *
   * @param atM the place that it tells, metres run
   */
  public Optional<View> cue(Seen.Thing thing, double atM) {
    return switch (thing.kind()) {
      case LANDMARK -> onlyOne(thing.name()).flatMap(this::cue);
      case SIGNAL ->
          lineside.signals().stream()
              .filter(s -> s.what().id().equals(thing.name()))
              .findFirst()
              .flatMap(this::signal);
      case RAMP -> station(thing.name(), atM).flatMap(this::station);
      // A magnet is heard, a bridge that is no landmark has no picture.
      case MAGNET, BRIDGE, STAND -> Optional.empty();
    };
  }

  private Optional<View> cue(Lineside.Over<Landmark> landmark) {
    return lineside.signalOf(landmark).map(this::signal).orElseGet(() -> landmark(landmark));
  }

  /** One that no other is called like. */
  private Optional<Lineside.Over<Landmark>> onlyOne(String name) {
    List<Lineside.Over<Landmark>> called =
        lineside.landmarks().stream().filter(l -> l.what().name().equals(name)).toList();
    return called.size() == 1 ? Optional.of(called.get(0)) : Optional.empty();
  }

  private Optional<View> landmark(Lineside.Over<Landmark> l) {
    return view(l.what().name(), l.fromM(), picture(l.what()));
  }

  private Optional<String> picture(Landmark landmark) {
    return landmark.picture().filter(file -> asSeen(landmark.applies()));
  }

  /** Of its own, or of the landmark that stands for it. */
  private Optional<View> signal(Lineside.Over<Signal> s) {
    Optional<String> own = s.what().picture();
    Optional<String> file =
        own.isPresent()
            ? own
            : lineside.landmarks().stream()
                .filter(l -> lineside.signalOf(l).filter(s::equals).isPresent())
                .flatMap(l -> picture(l.what()).stream())
                .findFirst();
    return view(lineside.words().text("signal.called", s.what().id()), s.fromM(), file);
  }

  private Optional<View> station(Station station) {
    boolean shown =
        lineside.assignment().direction() == Direction.FORWARD
            || station.platforms().stream()
                .noneMatch(p -> p.applies().directions().contains(Direction.FORWARD));
    double atM =
        lineside.platforms().stream()
            .filter(o -> o.what().station().equals(station))
            .mapToDouble(Lineside.Over::fromM)
            .min()
            .orElse(0);
    return view(station.name(), atM, station.picture().filter(file -> shown));
  }

  /** Whose ramp it is: the last one before the place. */
  private Optional<Station> station(String platform, double atM) {
    return lineside.platforms().stream()
        .filter(o -> o.what().platform().number().equals(platform))
        .filter(
            o -> Stops.platformStartM(lineside.words().path(), o.what().platform()) <= atM + AT_M)
        .reduce((a, b) -> b)
        .map(o -> o.what().station());
  }

  private Optional<View> view(String name, double atM, Optional<String> file) {
    return file.flatMap(pictures::find).map(p -> new View(name, atM, p));
  }

  /** A picture shows the view forward, but of what stands for the other direction alone. */
  private boolean asSeen(Applies applies) {
    return lineside.assignment().direction() == Direction.FORWARD
        || !applies.directions().contains(Direction.FORWARD);
  }
}
