package gradepost.source.route;

import gradepost.route.Accepted;
import gradepost.route.BrakeTestPlace;
import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.Junction;
import gradepost.route.Landmark;
import gradepost.route.LowAdhesionSite;
import gradepost.route.Observation;
import gradepost.route.PermanentRestriction;
import gradepost.route.RailGap;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.Signal;
import gradepost.route.SpotHeight;
import gradepost.route.Structure;
import gradepost.route.place.Section;
import gradepost.route.station.Station;
import gradepost.source.file.FileHeading;
import gradepost.source.file.FileKind;
import gradepost.source.route.TrackTables.DirectionNames;
import gradepost.units.UnitStyle;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Reader;
import gradepost.yaml.ValueType;
import gradepost.yaml.Values;
import java.util.List;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** The key table of a route file, and the order in which its parts come to be known. */
public final class RouteTable {
  static final Key<FileKind> KIND = FileHeading.key(FileKind.ROUTE);
  static final Key<String> NAME = Common.name("The route, as on the cover.");
  static final Key<String> DESCRIPTION =
      Key.preset("description", Common.prose("words"), "", "", "The route in a sentence or two.");
  static final Key<UnitStyle> UNITS =
      Key.required(
          "units",
          TrackTables.UNIT_STYLE,
          "Whether the lineside is in miles and mph or in kilometres and km/h; never mixed.");
  static final Key<DirectionNames> DIRECTIONS =
      Key.required(
          "directions", TrackTables.DIRECTION_NAMES, "What trains are called, either way.");
  static final Key<String> POSTS =
      Key.required(
          "posts",
          Common.prose("words, such as \"mile posts on the left, every quarter mile\""),
          "How distance is marked at the lineside.");
  static final Key<List<Section>> SECTIONS =
      Key.required(
          "sections",
          ListOf.some(TrackTables.SECTION).upTo(500).unique("name"),
          "Stretches of one mileage each, in forward order, joined end to end.");
  static final Key<List<RunningLine>> LINES =
      Key.required(
          "lines", ListOf.some(TrackTables.LINE).upTo(500).unique("name"), "The running lines.");
  public static final Key<List<GradientPiece>> GRADIENTS =
      Key.required(
          "gradients",
          ListOf.some(TrackTables.GRADIENT),
          "The gradients; they cover the route without gap or overlap.");
  public static final Key<List<Curve>> CURVES = list("curves", TrackTables.CURVE, "The curves.");
  public static final Key<List<PermanentRestriction>> RESTRICTIONS =
      Key.required(
          "restrictions",
          ListOf.some(SpeedTables.PERMANENT),
          "Permissible speeds; they cover every line once at least, and where they overlap the"
              + " lowest stands.");
  public static final Key<List<Junction>> JUNCTIONS =
      Key.preset(
          "junctions",
          ListOf.any(SpeedTables.JUNCTION).unique("name"),
          List.of(),
          "none",
          "Junctions and points that can be taken more than one way.");
  public static final Key<List<Station>> STATIONS =
      Key.required(
          "stations", ListOf.some(StationTables.STATION).unique("name", "code"), "The stations.");
  public static final Key<List<Signal>> SIGNALS =
      Key.preset(
          "signals",
          ListOf.any(LinesideTables.SIGNAL).unique("id"),
          List.of(),
          "none",
          "The signals.");
  public static final Key<List<Landmark>> LANDMARKS =
      list("landmarks", LinesideTables.LANDMARK, "Things that a driver can tell from all else.");
  public static final Key<List<Structure>> STRUCTURES =
      list("structures", LinesideTables.STRUCTURE, "Tunnels, bridges and crossings.");
  public static final Key<List<RailGap>> RAIL_GAPS =
      list("rail-gaps", LinesideTables.RAIL_GAP, "Gaps in the conductor rail, neutral sections.");
  static final Key<List<LowAdhesionSite>> LOW_ADHESION =
      list("low-adhesion", LinesideTables.LOW_ADHESION, "Stretches known for poor adhesion.");
  static final Key<List<BrakeTestPlace>> BRAKE_TESTS =
      list("brake-tests", LinesideTables.BRAKE_TEST, "Where running brake tests are made.");
  static final Key<List<Observation>> OBSERVATIONS =
      list(
          "observations",
          LinesideTables.OBSERVATION,
          "For what is empty because someone looked and found nothing.");

  static final Key<List<SpotHeight>> HEIGHTS =
      list(
          "heights",
          TrackTables.HEIGHT,
          "Surveyed heights of the rail; the gradients between them are checked against them.");
  static final Key<List<Accepted>> ACCEPTED =
      list("accepted", AcceptedTable.ACCEPTED, AcceptedTable.DESCRIPTION);

  private static final List<Key<?>> HEAD =
      List.of(
          KIND,
          NAME,
          DESCRIPTION,
          UNITS,
          TrackTables.GAUGE,
          TrackTables.RAIL_CENTRES,
          DIRECTIONS,
          POSTS);
  private static final List<Key<?>> BODY =
      List.of(
          GRADIENTS,
          CURVES,
          RESTRICTIONS,
          JUNCTIONS,
          STATIONS,
          SIGNALS,
          LANDMARKS,
          STRUCTURES,
          RAIL_GAPS,
          LOW_ADHESION,
          BRAKE_TESTS,
          OBSERVATIONS,
          HEIGHTS,
          ACCEPTED);

  public static final ObjectSchema<Route> ROUTE =
      ObjectSchema.of("a route file", allKeys(), RouteTable::build)
          .checked(TrackTables::centresOfGauge)
          .checked(RouteChecks::gradients)
          .checked(RouteChecks::curves)
          .checked(RouteChecks::permissibleSpeeds)
          .checked(RouteChecks::signals)
          .checked(RouteChecks::stations);

  /** Reads the head first, then sections, then lines: each gives sense to what comes after. */
  public static Optional<Route> read(Node root, Reader start) {
    int before = start.count();
    Optional<Values> opened = ROUTE.open(root, "the file", start);
    if (opened.isEmpty()) {
      return Optional.empty();
    }
    Values values = opened.get();
    boolean good = ROUTE.readAll(HEAD, values, start);
    RouteFrame frame =
        new RouteFrame(
            values.find(UNITS),
            values
                .find(DIRECTIONS)
                .map(names -> RouteFrame.names(names.forward(), names.backward()))
                .orElse(java.util.Map.of()),
            List.of(),
            List.of());
    good &= ROUTE.readAll(List.of(SECTIONS), values, start.within(frame));
    RouteFrame withSections =
        new RouteFrame(
            frame.units(), frame.names(), values.find(SECTIONS).orElse(List.of()), List.of());
    good &= ROUTE.readAll(List.of(LINES), values, start.within(withSections));
    Reader in = start.within(withSections.withLines(lineNames(values)));
    Values inside = values.within(in);
    good &= ROUTE.readAll(BODY, inside, in);
    return ROUTE.finish(inside, good, before);
  }

  /** The names of the lines, even where something else about a line was wrong. */
  private static List<String> lineNames(Values values) {
    return values.node(LINES).stream()
        .filter(SequenceNode.class::isInstance)
        .flatMap(list -> ((SequenceNode) list).getValue().stream())
        .filter(MappingNode.class::isInstance)
        .flatMap(line -> Reader.valueOf((MappingNode) line, TrackTables.LINE_NAME.name()).stream())
        .filter(ScalarNode.class::isInstance)
        .map(name -> ((ScalarNode) name).getValue().strip())
        .toList();
  }

  private static <T> Key<List<T>> list(String name, ValueType<T> element, String description) {
    return Key.preset(name, ListOf.any(element), List.of(), "none", description);
  }

  private static List<Key<?>> allKeys() {
    List<Key<?>> keys = new java.util.ArrayList<>(HEAD);
    keys.add(SECTIONS);
    keys.add(LINES);
    keys.addAll(BODY);
    return keys;
  }

  private static Route build(Values v) {
    return new Route(
        v.get(NAME),
        v.get(DESCRIPTION),
        v.get(UNITS),
        v.get(DIRECTIONS).forward(),
        v.get(DIRECTIONS).backward(),
        v.get(POSTS),
        v.get(SECTIONS),
        v.get(LINES),
        v.get(GRADIENTS),
        v.get(CURVES),
        v.get(RESTRICTIONS),
        v.get(JUNCTIONS),
        v.get(STATIONS),
        v.get(SIGNALS),
        v.get(LANDMARKS),
        v.get(STRUCTURES),
        v.get(RAIL_GAPS),
        v.get(LOW_ADHESION),
        v.get(BRAKE_TESTS),
        v.get(OBSERVATIONS),
        v.get(HEIGHTS),
        v.get(ACCEPTED),
        v.get(TrackTables.RAIL_CENTRES));
  }

  private RouteTable() {}
}
