package gradepost.briefing.line;

import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.chart.TrackStrip.Kind;
import gradepost.briefing.chart.TrackStrip.Sign;
import gradepost.briefing.word.Words;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.Path;
import gradepost.route.place.Direction;
import gradepost.route.place.Hand;
import gradepost.route.place.Section;
import gradepost.task.Assignment;
import gradepost.units.Exact;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The track and what stands beside it, from one place to another. */
public final class TrackStripWriter {
  private final Assignment assignment;
  private final Lineside lineside;
  private final Words words;
  private final Path path;
  private final List<Sign> signs;

  public TrackStripWriter(Assignment assignment, Lineside lineside) {
    this.assignment = assignment;
    this.lineside = lineside;
    this.words = lineside.words();
    this.path = words.path();
    this.signs = signs();
  }

  /** The same, with one thing more that the chart is about. */
  public TrackStrip strip(double from, double to, Sign target) {
    TrackStrip s = strip(from, to);
    List<Sign> with = new ArrayList<>(s.signs());
    with.add(target);
    return new TrackStrip(
        from, to, s.names(), s.ticks(), s.slopes(), s.bends(), s.platforms(), with);
  }

  /** The strip between two places, metres run. */
  public TrackStrip strip(double from, double to) {
    return new TrackStrip(
        from,
        to,
        new TrackStrip.Names(
            words.text("track.slopes"), words.text("track.bends"), words.text("track.line")),
        ticks(from, to),
        lineside.slopes().stream()
            .filter(s -> s.toM() > from && s.fromM() < to)
            .map(
                s ->
                    new TrackStrip.Slope(
                        Math.max(from, s.fromM()), Math.min(to, s.toM()), s.permille(), s.text()))
            .toList(),
        lineside.bends().stream()
            .filter(b -> b.toM() > from && b.fromM() < to)
            .map(
                b ->
                    new TrackStrip.Bend(
                        Math.max(from, b.fromM()),
                        Math.min(to, b.toM()),
                        b.left(),
                        b.radiusM(),
                        b.checkLeft(),
                        b.checkRight(),
                        b.text()))
            .toList(),
        platforms(from, to),
        signs.stream().filter(s -> s.atM() >= from && s.atM() <= to).toList());
  }

  private List<TrackStrip.Stretch> platforms(double from, double to) {
    return lineside.platforms().stream()
        .filter(o -> o.toM() > from && o.fromM() < to)
        .map(
            o ->
                new TrackStrip.Stretch(
                    Math.max(from, o.fromM()),
                    Math.min(to, o.toM()),
                    words.text(
                        "platform.called", o.what().station().name(), o.what().platform().number()),
                    lineside.seen(o.what().platform().side()) == Hand.LEFT))
        .toList();
  }

  private List<Sign> signs() {
    List<Sign> out = new ArrayList<>();
    lineside.landmarks().stream()
        .filter(lineside::tellsMore)
        .forEach(l -> out.add(sign(l.fromM(), l.what().name(), Kind.LANDMARK)));
    lineside
        .signals()
        .forEach(
            s ->
                out.add(
                    new Sign(s.fromM(), s.what().id(), Kind.SIGNAL, s.what().side() == Hand.LEFT)));
    Stream<Board> permanent =
        assignment.route().restrictions().stream()
            .filter(r -> lineside.applies(r.applies()))
            .flatMap(r -> r.boards().stream());
    Stream<Board> temporary =
        assignment.restrictions().stream()
            .filter(r -> lineside.applies(r.applies()))
            .flatMap(r -> r.boards().stream());
    lineside
        .boards(Stream.concat(permanent, temporary).filter(b -> tells(b.kind())).toList())
        .forEach(
            b ->
                out.add(
                    sign(b.fromM(), words.text("board." + lower(b.what().kind())), Kind.BOARD)));
    assignment.route().structures().stream()
        .map(s -> lineside.over(s, s.extent()))
        .forEach(
            o ->
                out.add(
                    sign(
                        o.fromM(),
                        o.what().name().isBlank()
                            ? words.text("structure." + lower(o.what().kind()))
                            : o.what().name(),
                        Kind.STRUCTURE)));
    assignment.route().railGaps().stream()
        .filter(g -> lineside.applies(g.applies()))
        .map(g -> lineside.over(g, g.extent()))
        .forEach(
            o -> out.add(sign(o.fromM(), words.text("gap.called", o.what().name()), Kind.GAP)));
    out.sort(Comparator.comparingDouble(Sign::atM).thenComparing(Sign::text));
    List<Sign> once = new ArrayList<>();
    for (Sign s : out) {
      if (once.stream()
          .noneMatch(o -> o.text().equals(s.text()) && Math.abs(o.atM() - s.atM()) < 5)) {
        once.add(s);
      }
    }
    return List.copyOf(once);
  }

  private static Sign sign(double at, String text, Kind kind) {
    return new Sign(at, text, kind);
  }

  private static boolean tells(BoardKind kind) {
    return kind == BoardKind.WARNING || kind == BoardKind.REPEATING;
  }

  /** A constant as the keys of texts have it: lower case, with hyphens. */
  public static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Posts a quarter mile or 250 m apart, closer where the stretch is short. */
  private List<TrackStrip.Tick> ticks(double from, double to) {
    double length = to - from;
    boolean miles = words.units() == UnitStyle.MILES;
    double minor = miles ? chains(length, 20) : metres(length);
    double major = miles ? Exact.MILE_M : 1000;
    List<TrackStrip.Tick> out = new ArrayList<>();
    double start = 0;
    for (Section section : path.sections()) {
      double entry =
          assignment.direction() == Direction.FORWARD
              ? section.from().metres()
              : section.to().metres();
      double exit =
          assignment.direction() == Direction.FORWARD
              ? section.to().metres()
              : section.from().metres();
      double low = Math.min(entry, exit);
      double high = Math.max(entry, exit);
      for (long k = (long) Math.ceil(low / minor - 1e-9); k * minor <= high + 1e-6; k++) {
        double mileage = k * minor;
        double at = start + Math.abs(mileage - entry);
        if (at >= from - 1e-6 && at <= to + 1e-6) {
          boolean whole = Math.abs(mileage / major - Math.rint(mileage / major)) < 1e-6;
          out.add(
              new TrackStrip.Tick(
                  at, words.units().mileage(new gradepost.units.Mileage(mileage)), whole));
        }
      }
      start += section.lengthM();
    }
    out.sort(Comparator.comparingDouble(TrackStrip.Tick::atM));
    return out;
  }

  private static double chains(double length, double most) {
    for (double step : new double[] {2, 5, 10, 20}) {
      if (length / (step * Exact.CHAIN_M) <= 12 || step == most) {
        return step * Exact.CHAIN_M;
      }
    }
    return most * Exact.CHAIN_M;
  }

  private static double metres(double length) {
    for (double step : new double[] {50, 100, 200, 250}) {
      if (length / step <= 12) {
        return step;
      }
    }
    return 500;
  }
}
