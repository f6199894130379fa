package gradepost.render.chart;

import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.RoadChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.List;

/** The whole road at one glance, across a sheet that lies on its side. */
final class RoadDrawing implements Drawing {
  /** Width of the text on such a sheet, in points: A4 on its side less both margins. */
  private static final double WIDE = 772;

  private static final double LEFT = 29;
  private static final double RIGHT = 8;

  private static final double NAME = 10.5;

  /** The more rows the table below has, the less height is left for the plot. */
  private static final double LEAST_PLOT = 78;

  private static final double MOST_PLOT = 150;
  private static final double FOR_ROW = 14;
  private static final int MOST_ROWS = 12;
  private static final double TEMPORARY = 11;

  private static final double PLATFORM = 4;

  /** What stands below the plot. */
  private static final double BANDS =
      TrackBands.AXIS + TEMPORARY + TrackBands.PROFILE + TrackBands.CURVES;

  private static final Canvas.Type SMALL = new Canvas.Type(7, false);
  private static final Canvas.Type BOLD = new Canvas.Type(9, true);
  private static final Canvas.Type FIGURE = new Canvas.Type(9, true);

  private final RoadChart chart;
  private final Fonts fonts;
  private final Scale x;
  private final Scale y;
  private final TrackBands bands;
  private final List<Name> names;

  /** Where the plot begins, and its height. */
  private final double top;

  private final double plot;

  /** A station's name, the row that it stands in from the plot upwards, and where it begins. */
  private record Name(RoadChart.Station station, double start, double nameWidth, int row) {}

  RoadDrawing(RoadChart chart, Fonts fonts) {
    this.chart = chart;
    this.fonts = fonts;
    this.x = new Scale(chart.track().fromM(), chart.track().toM(), LEFT, WIDE - RIGHT);
    this.names = names(chart, x, fonts);
    this.top = names.stream().mapToInt(n -> n.row() + 1).max().orElse(0) * NAME + 3;
    double byRows = LEAST_PLOT + FOR_ROW * (MOST_ROWS - chart.points().size());
    this.plot =
        Math.min(Math.max(LEAST_PLOT, Math.min(MOST_PLOT, byRows)), chart.roomPt() - top - BANDS);
    this.y = new Scale(0, chart.topSpeed(), top + plot, top);
    this.bands = new TrackBands(chart.track(), x, fonts, WIDE - 1);
  }

  private double bottom() {
    return top + plot;
  }

  @Override
  public double width() {
    return WIDE;
  }

  @Override
  public double height() {
    return bottom() + BANDS;
  }

  @Override
  public void draw(Canvas canvas) {
    grid(canvas);
    LabelPlacer placer = new LabelPlacer(new Box(LEFT, top, x.end() - LEFT, plot));
    canvas.clip(LEFT, top, x.end() - LEFT, plot + 1);
    for (Curve c : chart.curves()) {
      if (c.kind() == Curve.Kind.PERMISSIBLE) {
        Hatch.above(canvas, c, x, y, top);
      }
    }
    HeldDrawing held = new HeldDrawing(chart.held(), x, y, fonts);
    held.bands(canvas);
    for (Curve c : chart.curves()) {
      canvas.line(x.at(c.x()), y.at(c.y()), ApproachDrawing.pen(c.kind()));
    }
    canvas.unclip();
    stations(canvas);
    chart.curves().stream()
        .filter(c -> c.kind() == Curve.Kind.PERMISSIBLE)
        .forEach(c -> speeds(canvas, c, placer));
    chart.curves().stream()
        .filter(c -> c.kind() == Curve.Kind.PERMISSIBLE)
        .forEach(c -> taken(c, placer));
    held.take(placer);
    held.texts(canvas, placer);
    new NumberedPoints(x, y, placer).draw(canvas, chart.points(), false);
    double under = bottom();
    bands.axis(canvas, under);
    under += TrackBands.AXIS;
    temporary(canvas, under);
    under += TEMPORARY;
    bands.profile(canvas, under);
    under += TrackBands.PROFILE;
    bands.curves(canvas, under);
    platforms(canvas);
  }

  /** On the axis, each on its side of the line. */
  private void platforms(Canvas canvas) {
    for (TrackStrip.Stretch p : chart.track().platforms()) {
      double from = x.at(p.fromM());
      double y = p.left() ? bottom() - PLATFORM : bottom();
      canvas.box(from, y, x.at(p.toM()) - from, PLATFORM, Ink.PALE);
      canvas.frame(from, y, x.at(p.toM()) - from, PLATFORM, new Pen(0.8, Ink.BLACK));
    }
  }

  private void grid(Canvas canvas) {
    double most = chart.topSpeed();
    SpeedAxis.draw(canvas, LEFT, top, x.end(), y, most, chart.speedStep(), chart.speedUnit());
    canvas.line(LEFT, top, LEFT, bottom(), new Pen(0.8, Ink.BLACK));
  }

  /** Each name over its mark, in the lowest row that is free there; the last has room for all. */
  private static List<Name> names(RoadChart chart, Scale x, Fonts fonts) {
    List<LabelPlacer> rows = new ArrayList<>();
    List<Name> out = new ArrayList<>();
    for (RoadChart.Station s : chart.stations()) {
      double nameWidth = fonts.width(s.name(), BOLD) + 3;
      double width = nameWidth + fonts.width(s.side(), SMALL);
      double start = Math.max(1, Math.min(x.at(s.atM()) - width / 2, WIDE - width - 1));
      Box box = new Box(start - 1, 0, width + 2, NAME);
      int row = 0;
      while (row < rows.size() && !rows.get(row).free(box)) {
        row++;
      }
      if (row == rows.size()) {
        rows.add(new LabelPlacer(new Box(0, 0, WIDE, NAME)));
      }
      rows.get(row).take(box);
      out.add(new Name(s, start, nameWidth, row));
    }
    return out;
  }

  private void stations(Canvas canvas) {
    for (Name name : names) {
      double at = x.at(name.station().atM());
      double bottom = top - 3 - name.row() * NAME;
      canvas.line(at, top, at, bottom(), new Pen(0.7, Ink.BLACK, 2, 2));
      canvas.line(at, bottom, at, top, Pen.HAIR);
      canvas.text(name.start(), bottom - 2, name.station().name(), BOLD, Anchor.START);
      canvas.text(
          name.start() + name.nameWidth(), bottom - 2, name.station().side(), SMALL, Anchor.START);
    }
  }

  /** The permissible speed beside each of its steps, above it where there is room. */
  private void speeds(Canvas canvas, Curve steps, LabelPlacer placer) {
    double[] at = steps.x();
    double[] speed = steps.y();
    for (int i = 0; i + 1 < at.length; i += 2) {
      String text = Long.toString(Math.round(speed[i]));
      double width = fonts.width(text, FIGURE);
      double middle = (x.at(at[i]) + x.at(at[i + 1])) / 2;
      double level = y.at(speed[i]);
      placer
          .place(
              List.of(
                  new Box(middle - width / 2 - 1, level - 11, width + 2, 9),
                  new Box(middle - width / 2 - 1, level + 2, width + 2, 9)))
          .ifPresent(
              box -> {
                canvas.box(box.x(), box.y(), box.width(), box.height(), Ink.PAPER);
                canvas.text(middle, box.y() + 8, text, FIGURE, Anchor.MIDDLE);
              });
    }
  }

  /** No number hides a step of the permissible speed. */
  private void taken(Curve steps, LabelPlacer placer) {
    double[] at = steps.x();
    double[] speed = steps.y();
    for (int i = 0; i + 1 < at.length; i += 2) {
      double level = y.at(speed[i]);
      placer.take(new Box(x.at(at[i]), level - 1.5, x.at(at[i + 1]) - x.at(at[i]), 3));
      if (i > 0) {
        double before = y.at(speed[i - 1]);
        double top = Math.min(level, before);
        placer.take(new Box(x.at(at[i]) - 1.5, top, 3, Math.abs(level - before)));
      }
    }
  }

  private void temporary(Canvas canvas, double above) {
    double base = above + TEMPORARY - 3;
    if (chart.temporary().isEmpty()) {
      canvas.text(LEFT, base, chart.noTemporary(), SMALL, Anchor.START);
      return;
    }
    LabelPlacer labels = new LabelPlacer(new Box(0, above, WIDE, TEMPORARY));
    for (RoadChart.Restricted r : chart.temporary()) {
      double a = x.at(r.fromM());
      double e = x.at(r.toM());
      canvas.line(a, above + 5, e, above + 5, new Pen(3.2, Ink.BLACK));
      labels.take(new Box(a, above, e - a, TEMPORARY));
    }
    for (RoadChart.Restricted r : chart.temporary()) {
      double width = fonts.width(r.text(), SMALL);
      labels
          .place(
              List.of(
                  new Box(x.at(r.toM()) + 3, above, width, TEMPORARY),
                  new Box(x.at(r.fromM()) - width - 3, above, width, TEMPORARY)))
          .ifPresent(box -> canvas.text(box.x(), base, r.text(), SMALL, Anchor.START));
    }
  }
}
