package gradepost.source.notice;

import gradepost.pack.TemporaryRestriction;
import gradepost.route.Board;
import gradepost.route.Route;
import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.source.route.Moment;
import gradepost.source.route.RouteKeys;
import gradepost.source.route.RouteWord;
import gradepost.source.route.SpeedTables;
import gradepost.units.Mileage;
import gradepost.units.MomentStyle;
import gradepost.units.Parsed;
import gradepost.units.QuantityKind;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import gradepost.yaml.Key;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes notices as they would be typed; read again they are equal to the last bit. */
public final class NoticeText {
  private static final int MOST_DECIMALS = 9;
  private final Route route;

  public NoticeText(Route route) {
    this.route = route;
  }

  /** A whole file of restrictions. */
  public String yaml(List<TemporaryRestriction> notices, String none) {
    if (notices.isEmpty()) {
      return "gradepost: restrictions\nnotices: []\nnone: " + quoted(none) + "\n";
    }
    return notices.stream()
        .map(n -> yaml(n, "  "))
        .collect(Collectors.joining("", "gradepost: restrictions\nnotices:\n", ""));
  }

  /** One entry of the list, its hyphen after {@code indent}. */
  public String yaml(TemporaryRestriction notice, String indent) {
    StringBuilder out = new StringBuilder();
    String lead = indent + "- ";
    for (Map.Entry<String, String> cell : cells(notice, true).entrySet()) {
      out.append(lead).append(cell.getKey()).append(": ").append(cell.getValue()).append('\n');
      lead = indent + "  ";
    }
    return out.toString();
  }

  /** A table with a row for each notice, by the columns that {@link NoticeCsv} reads. */
  public String csv(List<TemporaryRestriction> notices) {
    List<String> keys = SpeedTables.NOTICE.keyNames();
    StringBuilder out = new StringBuilder();
    out.append(String.join(",", keys)).append("\r\n");
    for (TemporaryRestriction notice : notices) {
      Map<String, String> cells = cells(notice, false);
      out.append(
              keys.stream()
                  .map(k -> cell(cells.getOrDefault(k, "")))
                  .collect(Collectors.joining(",")))
          .append("\r\n");
    }
    return out.toString();
  }

  private static String cell(String text) {
    return text.matches("(?s).*[\",;\r\n].*|\\s.*|.*\\s")
        ? '"' + text.replace("\"", "\"\"") + '"'
        : text;
  }

  private Map<String, String> cells(TemporaryRestriction n, boolean yaml) {
    Map<String, String> out = new LinkedHashMap<>();
    text(out, SpeedTables.REFERENCE, n.reference(), yaml);
    out.put(SpeedTables.TYPE.name(), word(n.kind()));
    out.put(SpeedTables.STATUS.name(), word(n.status()));
    out.put(RouteKeys.FROM.name(), place(n.extent().from(), yaml));
    out.put(RouteKeys.TO.name(), place(n.extent().to(), yaml));
    out.put(RouteKeys.DIRECTIONS.name(), directions(n.applies().directions(), yaml));
    if (!n.applies().lines().isEmpty()) {
      out.put(
          RouteKeys.LINES.name(),
          list(n.applies().lines().stream().sorted().map(l -> plain(l, yaml)).toList(), yaml));
    }
    out.put(RouteKeys.SPEED.name(), speed(n.speed()));
    if (!n.differentials().isEmpty()) {
      out.put(
          SpeedTables.DIFFERENTIALS.name(),
          list(
              n.differentials().stream()
                  .map(
                      d ->
                          yaml
                              ? "{class: %s, speed: %s}"
                                  .formatted(quoted(d.trainClass()), speed(d.speed()))
                              : d.trainClass() + " " + speed(d.speed()))
                  .toList(),
              yaml));
    }
    n.normalSpeed().ifPresent(s -> out.put(SpeedTables.NORMAL_SPEED.name(), speed(s)));
    text(out, SpeedTables.REASON, n.reason(), yaml);
    out.put(SpeedTables.IMPOSED.name(), MomentStyle.MOMENT.format(n.imposed()));
    n.changedFrom()
        .ifPresent(c -> out.put(SpeedTables.CHANGED_FROM.name(), MomentStyle.MOMENT.format(c)));
    out.put(
        SpeedTables.UNTIL.name(),
        n.until().map(MomentStyle.MOMENT::format).orElse(Moment.OpenEnd.FURTHER_NOTICE));
    n.hours().ifPresent(h -> out.put(SpeedTables.HOURS.name(), h.from() + " to " + h.to()));
    if (!n.boards().isEmpty()) {
      List<String> boards = new ArrayList<>();
      n.boards().forEach(b -> boards.add(board(b, yaml)));
      out.put(SpeedTables.BOARDS.name(), list(boards, yaml));
    }
    text(out, SpeedTables.ISSUED_BY, n.issuedBy(), yaml);
    text(out, SpeedTables.NOTICE_ROUTE, n.particulars().route(), yaml);
    text(out, SpeedTables.BETWEEN, n.particulars().between(), yaml);
    text(out, SpeedTables.NEAR_FROM, n.particulars().nearFrom(), yaml);
    text(out, SpeedTables.NEAR_TO, n.particulars().nearTo(), yaml);
    text(out, SpeedTables.AWS, n.particulars().aws(), yaml);
    n.particulars()
        .issued()
        .ifPresent(
            (LocalDateTime i) ->
                out.put(SpeedTables.NOTICE_ISSUED.name(), MomentStyle.MOMENT.format(i)));
    text(out, SpeedTables.FIRST_APPEARANCE, n.particulars().firstAppearance(), yaml);
    text(out, SpeedTables.LAST_APPEARANCE, n.particulars().lastAppearance(), yaml);
    return out;
  }

  private String board(Board b, boolean yaml) {
    String kind = word(b.kind());
    String direction = route.nameOf(b.direction());
    return yaml
        ? "{kind: %s, at: %s, direction: %s}"
            .formatted(kind, place(b.location(), true), quoted(direction))
        : kind + " " + place(b.location(), false) + " " + direction;
  }

  private String directions(Set<Direction> directions, boolean yaml) {
    return directions.size() > 1
        ? RouteWord.Directions.BOTH
        : plain(route.nameOf(directions.iterator().next()), yaml);
  }

  private String place(Location location, boolean yaml) {
    String mileage = mileage(location.mileage());
    long holding = route.sections().stream().filter(s -> s.holds(location.mileage())).count();
    if (holding < 2) {
      return mileage;
    }
    return yaml
        ? "{section: %s, at: %s}".formatted(quoted(location.section()), mileage)
        : mileage + " (" + location.section() + ")";
  }

  /** The shortest text that is read as exactly this mileage. */
  private String mileage(Mileage mileage) {
    boolean miles = route.units() == UnitStyle.MILES;
    double chain = Mileage.ofMilesChains(0, 1).metres();
    for (int decimals = 0; ; decimals++) {
      String text;
      if (miles) {
        double scale = Math.pow(10, decimals);
        double chains = Math.rint(mileage.metres() / chain * scale) / scale;
        long whole = (long) Math.floor(chains / 80);
        text = "%dm %sch".formatted(whole, number(chains - 80 * whole, decimals));
      } else {
        text = number(mileage.metres() / 1000, decimals) + " km";
      }
      if (decimals == MOST_DECIMALS || same(QuantityKind.MILEAGE.parse(text), mileage)) {
        return text;
      }
    }
  }

  private String speed(Speed speed) {
    boolean miles = route.units() == UnitStyle.MILES;
    for (int decimals = 0; ; decimals++) {
      String text =
          number(speed.metresPerSecond() / route.units().speedUnitMps(), decimals)
              + (miles ? " mph" : " km/h");
      if (decimals == MOST_DECIMALS || same(QuantityKind.SPEED.parse(text), speed)) {
        return text;
      }
    }
  }

  private static String number(double value, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  private static <T> boolean same(Parsed<T> parsed, T value) {
    return parsed.ok().filter(ok -> ok.value().equals(value)).isPresent();
  }

  private static String list(List<String> items, boolean yaml) {
    return yaml ? "[" + String.join(", ", items) + "]" : String.join("; ", items);
  }

  private static void text(Map<String, String> out, Key<String> key, String text, boolean yaml) {
    if (!text.isEmpty()) {
      out.put(key.name(), plain(text, yaml));
    }
  }

  private static String plain(String text, boolean yaml) {
    return yaml ? quoted(text) : text;
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** A text in the quotation marks of YAML. */
  public static String quoted(String text) {
    return '"'
        + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n").replace("\r", "\\r")
        + '"';
  }
}
