package gradepost.cli.terminal;

import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.Signal;
import gradepost.route.Structure;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.units.Exact;
import gradepost.units.Rounding;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * A route as a strip of plain text, read downwards in the forward direction: what was typed, in the
 * order in which it is met, so that a typist sees a wrong mile at once.
 */
public final class TextStrip {
  /** The narrowest strip that can be read, in characters. */
  public static final int LEAST_WIDTH = 60;

  /** And with more of them, nothing in it is broken that was whole. */
  public static final int MOST_WIDTH = 1000;

  private static final String ROW = "%-11s %-10s %-9s %5s %5s  ";
  private static final int INDENT = String.format(ROW, "", "", "", "", "").length();

  private final Route route;
  private final Path path;

  /** What begins, ends or stands at each place; places a centimetre apart are one. */
  private final Map<Long, List<String>> events = new TreeMap<>();

  /** Of a whole route. */
  public TextStrip(Route route) {
    this.route = route;
    this.path = new Path(route, Direction.FORWARD);
    collect();
  }

  /** The lines of the strip from one distance to another, none longer than the width. */
  public List<String> lines(double fromM, double toM, int width) {
    List<String> lines = new ArrayList<>();
    lines.add(
        cut(route.name() + ", " + route.nameOf(Direction.FORWARD) + " reads downwards", width));
    lines.add(
        cut(
            "/ rising  \\ falling  - level    ( left  ) right  # check rail    "
                + route.units().speedUnit()
                + ", the lowest",
            width));
    lines.add(
        cut(
            String.format(
                    Locale.ROOT,
                    ROW,
                    "",
                    "gradient",
                    "curve",
                    head(Direction.FORWARD),
                    head(Direction.BACKWARD))
                .stripTrailing(),
            width));
    String[] before = {"", "", "", ""};
    for (Map.Entry<Long, List<String>> event : events.entrySet()) {
      double at = event.getKey() / 100.0;
      if (at >= fromM - 0.01 && at <= toM + 0.01) {
        lines.addAll(row(at, event.getValue(), before, width));
      }
    }
    return lines;
  }

  private String head(Direction direction) {
    String name = route.nameOf(direction);
    return name.length() > 5 ? name.substring(0, 5) : name;
  }

  private List<String> row(double at, List<String> words, String[] before, int width) {
    String[] now = {
      gradient(at), curve(at), speed(at, Direction.FORWARD), speed(at, Direction.BACKWARD)
    };
    String[] shown = new String[now.length];
    for (int i = 0; i < now.length; i++) {
      shown[i] = now[i].equals(before[i]) ? (now[i].isEmpty() ? "" : i < 2 ? "|" : "") : now[i];
      before[i] = now[i];
    }
    String left =
        String.format(Locale.ROOT, ROW, mileage(at), shown[0], shown[1], shown[2], shown[3]);
    List<String> text = wrapped(String.join("; ", words), width - INDENT);
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < text.size(); i++) {
      lines.add(((i == 0 ? left : " ".repeat(INDENT)) + text.get(i)).stripTrailing());
    }
    return lines;
  }

  /** As typed, to the half chain or the metre: a printed mileage would hide what is between. */
  private String mileage(double at) {
    double metres = path.locationAt(Math.min(at, path.lengthM())).mileage().metres();
    if (route.units() == UnitStyle.METRIC) {
      return String.format(Locale.ROOT, "%.3f km", metres / 1000);
    }
    double chains = Math.round(metres / Exact.CHAIN_M * 10) / 10.0;
    int miles = (int) Math.floor(chains / 80);
    double rest = chains - 80 * miles;
    return rest == Math.rint(rest)
        ? String.format(Locale.ROOT, "%dm %02.0fch", miles, rest)
        : String.format(Locale.ROOT, "%dm %04.1fch", miles, rest);
  }

  private String gradient(double at) {
    Optional<GradientPiece> piece = on(route.gradients(), GradientPiece::extent, at);
    return piece
        .map(
            p -> {
              double slope = p.gradient().permille();
              if (slope == 0) {
                return "- level";
              }
              String steep =
                  route.units() == UnitStyle.MILES
                      ? Math.round(1000 / Math.abs(slope)) + ""
                      : String.format(Locale.ROOT, "%.1f o/oo", Math.abs(slope));
              return (slope > 0 ? "/ " : "\\ ") + steep;
            })
        .orElse("");
  }

  private String curve(double at) {
    return on(route.curves(), Curve::extent, at)
        .map(
            c ->
                (c.hand() == Hand.LEFT ? "( " : ") ")
                    + radius(c)
                    + (c.checkRail() == CheckRail.NONE ? "" : " #"))
        .orElse("");
  }

  private String radius(Curve curve) {
    double metres = curve.radius().metres();
    return route.units() == UnitStyle.MILES
        ? String.format(Locale.ROOT, "%.1f", metres / Exact.CHAIN_M).replace(".0", "") + "ch"
        : Math.round(metres) + "m";
  }

  private String speed(double at, Direction direction) {
    return route.restrictions().stream()
        .filter(r -> r.applies().directions().contains(direction) && holds(r.extent(), at))
        .map(r -> r.speed())
        .min(Speed::compareTo)
        .map(s -> "" + route.units().speedNumber(s.metresPerSecond(), Rounding.NEAREST))
        .orElse("");
  }

  private <T> Optional<T> on(
      List<T> all, java.util.function.Function<T, Extent> extent, double at) {
    return all.stream().filter(e -> holds(extent.apply(e), at)).findFirst();
  }

  private boolean holds(Extent extent, double at) {
    return path.metresAt(extent.from()) <= at + 0.01 && path.metresAt(extent.to()) > at + 0.01;
  }

  private void collect() {
    double end = 0;
    for (Section section : route.sections()) {
      put(end, "== section " + section.name());
      end += section.lengthM();
    }
    put(end, "== end");
    route.gradients().forEach(g -> put(at(g.extent().from()), ""));
    stretches(route.curves(), Curve::extent, c -> "");
    route
        .restrictions()
        .forEach(
            r -> {
              put(at(r.extent().from()), "");
              put(at(r.extent().to()), "");
            });
    route.junctions().forEach(j -> put(at(j.extent().from()), "junction " + j.name()));
    route.stations().forEach(this::station);
    route.signals().forEach(this::signal);
    for (Structure s : route.structures()) {
      boolean stretch = !s.extent().from().equals(s.extent().to());
      String words = s.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " " + s.name();
      put(at(s.extent().from()), words);
      if (stretch) {
        put(at(s.extent().to()), s.name() + " ends");
      }
    }
    stretches(route.railGaps(), g -> g.extent(), g -> "rail gap " + g.name());
    stretches(route.lowAdhesion(), s -> s.extent(), s -> "low adhesion " + s.name());
    route.landmarks().forEach(m -> put(at(m.location()), "* " + m.name()));
    route
        .brakeTests()
        .forEach(t -> put(at(t.location()), "brake test, " + route.nameOf(t.direction())));
    route
        .spotHeights()
        .forEach(
            h -> put(at(h.location()), String.format(Locale.ROOT, "height %.1f m", h.heightM())));
  }

  private <T> void stretches(
      List<T> all,
      java.util.function.Function<T, Extent> extent,
      java.util.function.Function<T, String> words) {
    for (T each : all) {
      String name = words.apply(each);
      put(at(extent.apply(each).from()), name);
      put(at(extent.apply(each).to()), name.isEmpty() ? "" : name + " ends");
    }
  }

  private void station(Station station) {
    for (Platform platform : station.platforms()) {
      String name = station.code() + " " + platform.number();
      put(at(platform.extent().from()), "[ " + name + " " + station.name());
      platform
          .stopMarks()
          .forEach(
              m ->
                  put(
                      at(m.location()),
                      name + ": " + m.cars() + "-car mark, " + route.nameOf(m.direction())));
      platform.bufferStops().ifPresent(b -> put(at(b), name + ": buffer stops"));
      put(at(platform.extent().to()), "] " + name);
    }
  }

  private void signal(Signal signal) {
    put(
        at(signal.location()),
        (signal.direction() == Direction.FORWARD ? "v " : "^ ")
            + signal.id()
            + " "
            + signal.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '));
  }

  private double at(Location location) {
    return path.metresAt(location);
  }

  private void put(double at, String words) {
    List<String> here = events.computeIfAbsent(Math.round(at * 100), a -> new ArrayList<>());
    Optional.of(words).filter(Predicate.not(String::isEmpty)).ifPresent(here::add);
  }

  private static String cut(String text, int width) {
    return text.length() <= width ? text : text.substring(0, width - 1) + "~";
  }

  private static List<String> wrapped(String text, int width) {
    List<String> lines = new ArrayList<>();
    String rest = text;
    while (rest.length() > width) {
      int space = rest.lastIndexOf(' ', width);
      int end = space > 0 ? space : width;
      lines.add(rest.substring(0, end));
      rest = rest.substring(end).strip();
    }
    lines.add(rest);
    return lines;
  }
}
