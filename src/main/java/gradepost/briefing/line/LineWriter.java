package gradepost.briefing.line;

import gradepost.briefing.LineSheet;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.word.Standing;
import gradepost.briefing.word.Words;
import gradepost.pack.Pictures;
import gradepost.plan.Plan;
import gradepost.route.PermanentRestriction;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Stops;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The line, drawn and told: sheets of some two miles, read downwards. */
public final class LineWriter {
  /** So much room has a learner to write a name: seven millimetres. */
  private static final int WRITTEN_PX = 27;

  private final Assignment assignment;
  private final Lineside lineside;
  private final Words words;
  private final Plan plan;
  private final Standing standing;
  private final Views views;
  private final LineChartWriter charts;
  private final PlateRule rule;

  /** Without pictures. */
  public LineWriter(Plan plan, Lineside lineside, Standing standing) {
    this(plan, lineside, standing, new Views(lineside, Pictures.NONE));
  }

  /**
   * @param standing when its notices hold
   * @param views of what is not shown elsewhere
   */
  public LineWriter(Plan plan, Lineside lineside, Standing standing, Views views) {
    this.views = views;
    this.rule = new PlateRule(plan, lineside);
    this.plan = plan;
    this.assignment = plan.assignment();
    this.lineside = lineside;
    this.words = lineside.words();
    this.standing = standing;
    this.charts = new LineChartWriter(plan, lineside);
  }

  /**
   * A row and its height.
   *
   * @param place as it is printed below the row above
   */
  private record Row(LineRows.Row told, String place, int heightPx) {
    LineCuts.Weight weight() {
      return new LineCuts.Weight(told.atM(), told.starts(), heightPx);
    }
  }

  /** All of it, for the part of the briefing with this identity. */
  public List<LineSheet> sheets(String part) {
    return sheets(part, teller().rows(), 0, RowSetting.ROOM_PX);
  }

  /** What has a name of its own, with room to write; nothing that is driven. */
  public List<LineSheet> toFillIn(String part) {
    return sheets(part, teller().fixed(), WRITTEN_PX, RowSetting.ROOM_BELOW_WORDS_PX);
  }

  private LineTeller teller() {
    return new LineTeller(plan, lineside, standing, views);
  }

  private List<Row> rows(List<LineRows.Row> told, int leastPx) {
    return IntStream.range(0, told.size())
        .mapToObj(
            i -> {
              LineRows.Row row = told.get(i);
              return row(row, i == 0 ? row.place() : row.placeBelow(told.get(i - 1)), leastPx);
            })
        .toList();
  }

  /** As high as it is printed: the number of a braking point is told with it. */
  private Row row(LineRows.Row told, String place, int leastPx) {
    RowSetting.Lines lines = lines(told, place, todo(told, MOST_DIGITS));
    return new Row(told, place, Math.max(leastPx, lines.heightPx()));
  }

  private RowPictures.Bare shown(Row row) {
    int below = lines(row.told(), row.place(), todo(row.told(), MOST_DIGITS)).below().heightPx();
    return new RowPictures.Bare(
        row.heightPx(), Math.max(row.heightPx(), below), row.told().views());
  }

  private RowSetting.Lines lines(LineRows.Row told, String place, List<String> todo) {
    return RowSetting.lines(place, told.what(), todo, told.heading(), words.text("line.and"));
  }

  /** A number as wide as any of a sheet. */
  private static final int MOST_DIGITS = 88;

  private List<String> todo(LineRows.Row told, int number) {
    List<String> out = new ArrayList<>(told.todo());
    if (told.begun() >= 0) {
      out.set(told.begun(), words.text("line.begun", number, out.get(told.begun())));
    }
    return out;
  }

  private List<LineSheet> sheets(String part, List<LineRows.Row> told, int leastPx, int roomPx) {
    boolean driven = leastPx == 0;
    List<LineCuts.Leg> legs = legs();
    List<LineRows.Row> always = driven ? teller().always() : teller().fixed();
    List<LineCuts.Weight> fixed =
        Stream.concat(rows(always, 0).stream().map(Row::weight), driven ? lower() : Stream.empty())
            .sorted(Comparator.comparingDouble(LineCuts.Weight::atM))
            .toList();
    List<LineCuts.Weight> weights = rows(told, leastPx).stream().map(Row::weight).toList();
    // The first row of a sheet names its section, which may take a line more.
    int cutPx =
        told.stream().anyMatch(LineRows.Row::inSection) ? roomPx - RowSetting.LINE_PX : roomPx;
    List<LineCuts.Cut> cuts = new LineCuts(legs, weights, fixed, places(), cutPx).cuts();
    List<LineSheet> out = new ArrayList<>();
    for (LineCuts.Cut cut : cuts) {
      out.add(
          sheet(
              part,
              out.size() + 1,
              title(cut, legs),
              cut,
              rows(told.subList(cut.fromRow(), cut.toRow()), leastPx),
              driven,
              roomPx));
    }
    return out;
  }

  /** What is driven for a speed that is always lower than that before it. */
  private Stream<LineCuts.Weight> lower() {
    List<Lineside.Over<PermanentRestriction>> signed =
        assignment.route().restrictions().stream()
            .filter(r -> lineside.applies(r.applies()))
            .map(r -> lineside.over(r, r.extent()))
            .sorted(Comparator.comparingDouble(Lineside.Over::fromM))
            .toList();
    return IntStream.range(1, signed.size())
        .filter(i -> mps(signed.get(i)) < mps(signed.get(i - 1)))
        .mapToObj(i -> new LineCuts.Weight(signed.get(i).fromM(), false, LineCuts.LOWER_PX));
  }

  private static double mps(Lineside.Over<PermanentRestriction> signed) {
    return signed.what().speed().metresPerSecond();
  }

  /** From stop mark to stop mark; the first begins and the last ends with the path. */
  private List<LineCuts.Leg> legs() {
    List<Call> calls = assignment.calls();
    List<LineCuts.Leg> out = new ArrayList<>();
    double fromM = 0;
    for (int i = 1; i < calls.size(); i++) {
      double toM =
          i == calls.size() - 1 ? words.path().lengthM() : Stops.markM(assignment, calls.get(i));
      Call call = calls.get(i);
      boolean terminal =
          plan.approaches().stream()
              .flatMap(a -> a.target().stop().stream())
              .anyMatch(s -> s.call().equals(call) && s.buffersM().isPresent());
      out.add(new LineCuts.Leg(fromM, toM, terminal));
      fromM = toM;
    }
    return out;
  }

  /** Where a leg may be cut: signals, and posts where there is none. */
  private List<LineCuts.Place> places() {
    Stream<LineCuts.Place> signals =
        lineside.signals().stream().map(s -> new LineCuts.Place(s.fromM(), true));
    Stream<LineCuts.Place> posts = charts.posts().stream().map(at -> new LineCuts.Place(at, false));
    return Stream.concat(signals, posts).toList();
  }

  /** From where to where: a name that does not change when another sheet comes or goes. */
  private String title(LineCuts.Cut cut, List<LineCuts.Leg> legs) {
    return words.text("line.title", name(cut.fromM(), legs), name(cut.toM(), legs));
  }

  private String name(double atM, List<LineCuts.Leg> legs) {
    for (int i = 0; i < legs.size(); i++) {
      if (atM == legs.get(i).fromM()) {
        return assignment.calls().get(i).station().name();
      }
    }
    if (atM == legs.get(legs.size() - 1).toM()) {
      return assignment.calls().get(legs.size()).station().name();
    }
    return lineside.signals().stream()
        .filter(s -> s.fromM() == atM)
        .findFirst()
        .map(s -> words.text("line.cut-signal", s.what().id()))
        .orElseGet(() -> words.place(atM));
  }

  private LineSheet sheet(
      String part,
      int number,
      String title,
      LineCuts.Cut cut,
      List<Row> rows,
      boolean driven,
      int roomPx) {
    RowPictures pictures = RowPictures.of(rows.stream().map(this::shown).toList(), roomPx);
    List<LineChart.Level> levels =
        RowSetting.levels(
            rows.stream().map(r -> r.told().atM()).toList(),
            pictures.heightsPx(),
            cut.fromM(),
            cut.toM(),
            roomPx);
    List<LineSheet.Row> set = new ArrayList<>();
    List<LineRows.Row> begun = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      LineRows.Row told = rows.get(i).told();
      if (told.begun() >= 0) {
        begun.add(told);
      }
      List<String> todo = todo(told, begun.size());
      int below = i + 1 < levels.size() ? levels.get(i + 1).topPx() : roomPx;
      set.add(
          new LineSheet.Row(
              told.place(),
              driven ? told.speed() : "",
              told.what(),
              todo,
              told.heading(),
              told.approach() > 0 ? rule.anchor(part, told.approach()) : "",
              false,
              RowSetting.set(
                  pictures.lines(i, lines(told, rows.get(i).place(), todo)),
                  below - levels.get(i).topPx()),
              pictures.rows().get(i)));
    }
    String id = part + "-line" + number;
    return new LineSheet(
        id, title, charts.chart(id, cut.fromM(), cut.toM(), levels, begun, driven, roomPx), set);
  }
}
