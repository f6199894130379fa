package gradepost.source;

import gradepost.source.notice.NoticesTable;
import gradepost.source.route.LinesideTables;
import gradepost.source.route.RouteTable;
import gradepost.source.route.SpeedTables;
import gradepost.source.route.StationTables;
import gradepost.source.route.TrackTables;
import gradepost.yaml.Key;
import gradepost.yaml.ObjectSchema;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The lists that go out into tables and in again. */
public enum RouteList {
  GRADIENTS,
  CURVES,
  RESTRICTIONS,
  SIGNALS,
  PLATFORMS,
  LANDMARKS,
  STATIONS,
  JUNCTIONS,
  STRUCTURES,
  GAPS,
  NOTICES;

  private static final String STATION = "station";

  private Key<?> list() {
    return switch (this) {
      case GRADIENTS -> RouteTable.GRADIENTS;
      case CURVES -> RouteTable.CURVES;
      case RESTRICTIONS -> RouteTable.RESTRICTIONS;
      case SIGNALS -> RouteTable.SIGNALS;
      case PLATFORMS -> StationTables.PLATFORMS;
      case LANDMARKS -> RouteTable.LANDMARKS;
      case STATIONS -> StationTables.PLATFORMS;
      case JUNCTIONS -> RouteTable.JUNCTIONS;
      case STRUCTURES -> RouteTable.STRUCTURES;
      case GAPS -> RouteTable.RAIL_GAPS;
      case NOTICES -> NoticesTable.NOTICES;
    };
  }

  /** What an entry has. */
  ObjectSchema<?> entry() {
    return switch (this) {
      case GRADIENTS -> TrackTables.GRADIENT;
      case CURVES -> TrackTables.CURVE;
      case RESTRICTIONS -> SpeedTables.PERMANENT;
      case SIGNALS -> LinesideTables.SIGNAL;
      case PLATFORMS -> StationTables.PLATFORM;
      case LANDMARKS -> LinesideTables.LANDMARK;
      case STATIONS -> StationTables.PLATFORM;
      case JUNCTIONS -> SpeedTables.JUNCTION;
      case STRUCTURES -> LinesideTables.STRUCTURE;
      case GAPS -> LinesideTables.RAIL_GAP;
      case NOTICES -> SpeedTables.NOTICE;
    };
  }

  /** The key under which it stands. */
  String key() {
    return list().name();
  }

  /** What the command line calls it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The words of all, for a command line. */
  public static List<String> words() {
    return Arrays.stream(values()).map(RouteList::word).toList();
  }

  /** The list that a word or a file name means. */
  public static Optional<RouteList> of(String word) {
    return Arrays.stream(values()).filter(l -> l.word().equals(word)).findFirst();
  }

  /** Whether it stands in the file of restrictions, and not in the route. */
  public boolean ofNotices() {
    return this == NOTICES;
  }

  /** The columns before those of an entry: what its group is called. */
  List<String> heads() {
    if (this == STATIONS) {
      return List.of(STATION, StationTables.CODE.name());
    }
    return this == PLATFORMS ? List.of(STATION) : List.of();
  }

  List<String> columns() {
    List<String> columns = new ArrayList<>(heads());
    columns.addAll(entry().keyNames());
    return columns;
  }

  /** Whether a table must have this column, whatever stands in the file. */
  boolean requires(String column) {
    return heads().contains(column)
        || entry().keys().stream().anyMatch(k -> k.name().equals(column) && k.required());
  }

  /** Whether a cell of this column is one text. */
  boolean isText(String column) {
    return entry().keys().stream()
        .filter(k -> k.name().equals(column))
        .allMatch(k -> k.kind().isOneText());
  }
}
