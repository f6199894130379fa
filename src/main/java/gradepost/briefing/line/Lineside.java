package gradepost.briefing.line;

import gradepost.briefing.chart.TrackStrip.Bend;
import gradepost.briefing.chart.TrackStrip.Slope;
import gradepost.briefing.word.Words;
import gradepost.route.Board;
import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.Landmark;
import gradepost.route.LowAdhesionSite;
import gradepost.route.Path;
import gradepost.route.Signal;
import gradepost.route.Stretch;
import gradepost.route.Structure;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What stands beside one train's line, in the order and by the hand in which it is met. */
public final class Lineside {
  /** A thing over a stretch of the path, nearer end first. */
  public record Over<T>(T what, double fromM, double toM) {}

  /** A platform with its station. */
  public record Face(Station station, Platform platform) {}

  private final Assignment assignment;
  private final Path path;
  private final Words words;
  private final List<Over<Signal>> signals;
  private final List<Over<Landmark>> landmarks;

  public Lineside(Assignment assignment, Words words) {
    this.assignment = assignment;
    this.path = words.path();
    this.words = words;
    this.signals = signalsRead();
    this.landmarks = landmarksPassed();
  }

  /**
   * What the route says of a list that is empty, "NONE: …"; empty where nobody looked.
   *
   * @param word in the subject of the observation, as the check of the route has it
   */
  public Optional<String> observed(String word) {
    return assignment.route().observations().stream()
        .filter(o -> o.subject().toLowerCase(Locale.ROOT).contains(word))
        .map(o -> words.text("table.observed", o.statement()))
        .findFirst();
  }

  /** Whether something stands for this train on its lines. */
  public boolean applies(Applies applies) {
    return applies.to(assignment.direction(), assignment.lines());
  }

  /** A hand as it lies in the direction of travel. */
  public Hand seen(Hand forward) {
    return assignment.direction() == Direction.FORWARD ? forward : forward.opposite();
  }

  /** A thing with the stretch of the run that it lies on. */
  public <T> Over<T> over(T what, Extent extent) {
    Stretch span = path.span(extent);
    return new Over<>(what, span.fromM(), span.toM());
  }

  private static <T> List<Over<T>> sorted(List<Over<T>> list) {
    List<Over<T>> out = new ArrayList<>(list);
    out.sort(Comparator.comparingDouble(Over::fromM));
    return List.copyOf(out);
  }

  /** The gradients in the order of travel, rising positive in that direction. */
  public List<Slope> slopes() {
    List<Slope> out = new ArrayList<>();
    assignment
        .route()
        .gradients()
        .forEach(
            g -> {
              Over<Extent> o = over(g.extent(), g.extent());
              double permille =
                  assignment.direction() == Direction.FORWARD
                      ? g.gradient().permille()
                      : g.gradient().reversed().permille();
              out.add(new Slope(o.fromM(), o.toM(), permille, words.slope(permille)));
            });
    out.sort(Comparator.comparingDouble(Slope::fromM));
    return List.copyOf(out);
  }

  List<Over<Curve>> curves() {
    return sorted(assignment.route().curves().stream().map(c -> over(c, c.extent())).toList());
  }

  /** The curves in the order of travel, by the hand to which they turn in that direction. */
  public List<Bend> bends() {
    return curves().stream().map(this::bend).toList();
  }

  Bend bend(Over<Curve> o) {
    Curve curve = o.what();
    boolean left = seen(curve.hand()) == Hand.LEFT;
    CheckRail check = curve.checkRail();
    boolean inner = check == CheckRail.LOW_RAIL || check == CheckRail.BOTH;
    boolean outer = check == CheckRail.HIGH_RAIL || check == CheckRail.BOTH;
    return new Bend(
        o.fromM(),
        o.toM(),
        left,
        curve.radius().metres(),
        left ? inner : outer,
        left ? outer : inner,
        words.radius(curve.radius().metres()));
  }

  /** Stretches known for poor adhesion, in order of travel. */
  public List<Over<LowAdhesionSite>> lowAdhesion() {
    return sorted(
        assignment.route().lowAdhesion().stream()
            .filter(g -> applies(g.applies()))
            .map(g -> over(g, g.extent()))
            .toList());
  }

  /** The signals that this train reads, in the order of travel. */
  public List<Over<Signal>> signals() {
    return signals;
  }

  private List<Over<Signal>> signalsRead() {
    return sorted(
        assignment.route().signals().stream()
            .filter(s -> s.direction() == assignment.direction())
            .filter(s -> s.line().isEmpty() || assignment.lines().contains(s.line()))
            .map(s -> at(s, path.metresAt(s.location())))
            .toList());
  }

  /** The landmarks of this train, in the order of travel. */
  public List<Over<Landmark>> landmarks() {
    return landmarks;
  }

  private List<Over<Landmark>> landmarksPassed() {
    return sorted(
        assignment.route().landmarks().stream()
            .filter(l -> applies(l.applies()))
            .map(l -> at(l, path.metresAt(l.location())))
            .toList());
  }

  /** Whether a landmark is more than a signal or structure that stands there anyhow. */
  public boolean tellsMore(Over<Landmark> landmark) {
    String name = landmark.what().name().toLowerCase(Locale.ROOT);
    boolean structure =
        assignment.route().structures().stream()
            .map(s -> over(s, s.extent()))
            .anyMatch(
                s -> near(s, landmark) && name.equals(s.what().name().toLowerCase(Locale.ROOT)));
    return signalOf(landmark).isEmpty() && !structure;
  }

  /** The signal that a landmark is, where it is one. */
  Optional<Over<Signal>> signalOf(Over<Landmark> landmark) {
    String name = landmark.what().name().toLowerCase(Locale.ROOT);
    return signals().stream()
        .filter(s -> near(s, landmark) && name.endsWith(s.what().id().toLowerCase(Locale.ROOT)))
        .findFirst();
  }

  /** Whether a landmark beside a structure names it, as its parapet does. */
  boolean namedByLandmark(Over<Structure> structure) {
    String name = structure.what().name().toLowerCase(Locale.ROOT);
    return !name.isBlank()
        && landmarks.stream()
            .filter(l -> near(l, structure))
            .filter(l -> l.what().name().toLowerCase(Locale.ROOT).contains(name))
            .anyMatch(this::tellsMore);
  }

  /** What a structure is, its name and what there is to know of it. */
  String said(Structure structure) {
    String kind = words.text("structure." + TrackStripWriter.lower(structure.kind()));
    String name = structure.name();
    String text = name.isBlank() ? kind : words.text("line.structure", kind, name);
    String note = structure.note();
    return note.isBlank() ? text : words.text("line.noted", text, note);
  }

  private static boolean near(Over<?> a, Over<?> b) {
    return Math.abs(a.fromM() - b.fromM()) < 25;
  }

  /** Platforms of this line, and those where the train calls. */
  public List<Over<Face>> platforms() {
    List<Over<Face>> out = new ArrayList<>();
    for (Station station : assignment.route().stations()) {
      List<Platform> called =
          assignment.calls().stream()
              .filter(c -> c.station().equals(station))
              .map(c -> c.platform())
              .distinct()
              .toList();
      station.platforms().stream()
          .filter(p -> called.isEmpty() ? applies(p.applies()) : called.contains(p))
          .forEach(p -> out.add(over(new Face(station, p), p.extent())));
    }
    return sorted(out);
  }

  /** Boards that this direction reads, of permanent and of temporary restrictions. */
  public List<Over<Board>> boards(List<Board> boards) {
    return sorted(
        boards.stream()
            .filter(b -> b.direction() == assignment.direction())
            .map(b -> at(b, path.metresAt(b.location())))
            .toList());
  }

  static <T> Over<T> at(T what, double metres) {
    return new Over<>(what, metres, metres);
  }

  /** The run that the line is looked at for. */
  public Assignment assignment() {
    return assignment;
  }

  /** What puts its quantities into words. */
  public Words words() {
    return words;
  }
}
