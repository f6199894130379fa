package gradepost.briefing.page;

import gradepost.briefing.RoadSheet;
import gradepost.briefing.Table;
import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.RoadChart;
import gradepost.briefing.chart.RunChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.line.HeldBands;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.PlateRule;
import gradepost.briefing.line.SpeedCurves;
import gradepost.briefing.line.TrackStripWriter;
import gradepost.briefing.word.Words;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.task.Call;
import gradepost.task.Stops;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The whole road on one sheet; past twelve rows, on more, each cut where a leg ends. */
public final class RoadWriter {
  /** As many rows as can be taken in at one glance. */
  static final int MOST_ROWS = 12;

  /** Of the run on one sheet. */
  private static final int MOST_POINTS = 1500;

  private final Plan plan;
  private final Lineside lineside;
  private final Words words;
  private final TrackStripWriter strips;
  private final SpeedCurves speeds;
  private final RoadRows rows;
  private final RoadNotes notes;

  /** For one plan. */
  public RoadWriter(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.lineside = lineside;
    this.words = lineside.words();
    this.strips = new TrackStripWriter(plan.assignment(), lineside);
    this.speeds = new SpeedCurves(plan, words);
    this.rows = new RoadRows(plan, words);
    this.notes = new RoadNotes(plan, words, new PlateRule(plan, lineside));
  }

  /** An approach with a braking point of its own. */
  record Braked(Approach approach, InstructionSheet sheet, double pointM) {
    PrintedApplication application() {
      return sheet.begun().get(0);
    }

    double targetM() {
      return approach.target().atM();
    }
  }

  /** A stretch of the run, and what is braked for in it. */
  private record Stretch(double fromM, double toM, List<Braked> braked) {}

  /**
   * The sheets for the part of the briefing with this identity, in order of travel.
   *
   * @param heading the title of that part, which stands on each
   * @param lower the lower speeds that are met without a brake, and {@code seldom} the other
   *     routes: at the foot of the last sheet if there is room
   */
  public List<RoadSheet> sheets(String part, String heading, Optional<Table> lower, Table seldom) {
    List<InstructionSheet> told = plan.told().sheets();
    List<Braked> braked = new ArrayList<>();
    for (int i = 0; i < told.size(); i++) {
      Approach approach = plan.approaches().get(i);
      InstructionSheet sheet = told.get(i);
      sheet.begun().stream()
          .findFirst()
          .map(a -> words.grid().metres(a.point(), approach.target().atM()))
          .ifPresent(at -> braked.add(new Braked(approach, sheet, at)));
    }
    List<RoadSheet> out = new ArrayList<>();
    String rails = notes.rails();
    RoadRoom room = new RoadRoom(heading, rails);
    List<Stretch> stretches = stretches(braked);
    for (Stretch stretch : stretches) {
      String id = part + "-road" + (out.isEmpty() ? "" : out.size() + 1);
      String title =
          stretches.size() == 1
              ? words.text("road.title")
              : words.text("road.title-of", out.size() + 1, stretches.size());
      Table table = table(part, id, stretch);
      boolean grave = table.rows().stream().anyMatch(Table.Row::grave);
      List<String> below = notes.below(stretch.fromM(), stretch.toM(), grave);
      Optional<Double> beside =
          out.size() + 1 == stretches.size()
              ? room.above(table, below, lower, seldom)
              : Optional.empty();
      double roomPt = beside.orElse(room.above(table, below));
      RoadChart chart = chart(id, title, stretch, roomPt);
      out.add(
          new RoadSheet(
              id, title, rails, room.railsBeside(), chart, table, below, beside.isPresent()));
    }
    return out;
  }

  private List<Stretch> stretches(List<Braked> braked) {
    List<Stretch> out = new ArrayList<>();
    double fromM =
        Math.max(0, plan.trace().points().get(0).atM() - plan.assignment().formation().lengthM());
    List<Braked> left = braked;
    while (left.size() > MOST_ROWS) {
      int sheets = (left.size() + MOST_ROWS - 1) / MOST_ROWS;
      int rows = rows(left, sheets);
      double toM = endM(left, rows);
      out.add(new Stretch(fromM, toM, left.subList(0, rows)));
      fromM = toM;
      left = left.subList(rows, left.size());
    }
    out.add(new Stretch(fromM, words.path().lengthM(), left));
    return out;
  }

  /** How many rows the next sheet has: up to a stop if one will do, of alike many if several do. */
  private static int rows(List<Braked> left, int sheets) {
    double even = (double) left.size() / sheets;
    int best = MOST_ROWS;
    double off = Double.POSITIVE_INFINITY;
    for (int n = 1; n <= MOST_ROWS; n++) {
      boolean fits = left.size() - n <= (sheets - 1) * MOST_ROWS;
      boolean endsLeg = left.get(n - 1).approach().target().isStop();
      if (fits && endsLeg && Math.abs(n - even) < off) {
        best = n;
        off = Math.abs(n - even);
      }
    }
    return best;
  }

  /** The stop, or the last post at which nothing of the next sheet has begun. */
  private double endM(List<Braked> left, int rows) {
    Braked last = left.get(rows - 1);
    double at = Math.min(last.targetM(), left.get(rows).pointM());
    return last.approach().target().isStop()
        ? last.targetM()
        : words.grid().metres(words.grid().place(at), last.targetM());
  }

  private RoadChart chart(String id, String title, Stretch stretch, double roomPt) {
    double from = stretch.fromM();
    double to = stretch.toM();
    SpeedCurves.Axis axis = speeds.axis(0, words.path().lengthM());
    List<Curve> curves =
        List.of(
            speeds.permissible(from, to),
            speeds.run(
                Curve.Kind.PLANNED,
                words.text("curve.planned"),
                speeds.thinned(to - from, MOST_POINTS),
                from,
                to));
    return new RoadChart(
        id + "-chart",
        title,
        words.text(
            "road.says",
            words.place(from),
            words.place(to),
            Integer.toString(stretch.braked().size())),
        words.units().speedUnit(),
        axis.top(),
        axis.step(),
        curves,
        HeldBands.of(plan, words, from, to),
        stations(from, to),
        stretch.braked().stream().map(this::point).toList(),
        temporary(from, to),
        words.text("road.no-temporary"),
        bare(strips.strip(from, to)),
        roomPt);
  }

  private RunChart.Point point(Braked b) {
    return new RunChart.Point(
        Integer.toString(b.approach().number()),
        b.pointM(),
        b.sheet().steps().get(b.application().line() - 1).speed().number());
  }

  private List<RoadChart.Station> stations(double from, double to) {
    List<RoadChart.Station> out = new ArrayList<>();
    for (Call call : plan.assignment().calls()) {
      double at = Stops.markM(plan.assignment(), call);
      if (at >= from && at <= to) {
        out.add(
            new RoadChart.Station(
                at,
                call.station().name(),
                words.text("road.side", words.hand(lineside.seen(call.platform().side())))));
      }
    }
    return out;
  }

  private List<RoadChart.Restricted> temporary(double from, double to) {
    return plan.assignment().restrictions().stream()
        .filter(r -> lineside.applies(r.applies()))
        .map(r -> lineside.over(r, r.extent()))
        .filter(o -> o.toM() > from && o.fromM() < to)
        .map(
            o ->
                new RoadChart.Restricted(
                    Math.max(from, o.fromM()),
                    Math.min(to, o.toM()),
                    words.text(
                        "road.temporary",
                        o.what().reference(),
                        words.speed(o.what().speed().metresPerSecond()))))
        .toList();
  }

  /** Posts, slopes, curves and platforms: what else stands there is on the strip. */
  private TrackStrip bare(TrackStrip s) {
    List<TrackStrip.Tick> whole = s.ticks().stream().filter(TrackStrip.Tick::major).toList();
    return new TrackStrip(
        s.fromM(),
        s.toM(),
        new TrackStrip.Names(
            words.units() == UnitStyle.MILES ? words.text("road.slopes") : s.names().slopes(),
            s.names().bends(),
            s.names().line()),
        whole.size() > 1 ? whole : s.ticks(),
        s.slopes().stream().map(this::inShort).toList(),
        s.bends(),
        s.platforms().stream()
            .map(p -> new TrackStrip.Stretch(p.fromM(), p.toM(), "", p.left()))
            .toList(),
        List.of());
  }

  /** Of one in so many, only how many: the band is called so. */
  private TrackStrip.Slope inShort(TrackStrip.Slope s) {
    String text =
        words.units() == UnitStyle.MILES
            ? s.text().substring(s.text().lastIndexOf(' ') + 1)
            : s.text();
    return new TrackStrip.Slope(s.fromM(), s.toM(), s.permille(), text);
  }

  private Table table(String part, String id, Stretch stretch) {
    List<Table.Row> out = new ArrayList<>();
    for (Braked b : stretch.braked()) {
      out.addAll(rows.rows(b, part + "-a" + b.approach().number()));
    }
    return new Table(
        id + "-points",
        "road",
        words.text("road.points"),
        "",
        rows.columns(),
        out,
        words.text("road.no-brake"));
  }
}
