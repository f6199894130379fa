package gradepost.render.chart;

import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import java.util.stream.Stream;

/** A sheet of the line: columns side by side, read downwards, and a leader to every row. */
final class LineSheetDrawing implements Drawing {
  private static final double PT = 72 / 96.0;
  private static final double WIDTH = 193;

  /** Where the columns begin and end. */
  private static final double SPEED = 32;

  private static final double SPEED_END = 73;
  private static final double SLOPES = 75;
  private static final double BENDS = 113;
  private static final double LINE = 141;
  private static final double LINE_END = 182;

  static final Canvas.Type SMALL = new Canvas.Type(7, false);
  private static final Canvas.Type HEAD = new Canvas.Type(7, true);

  private final LineChart chart;
  private final double head;
  private final Scale y;
  private final LineSpeeds speeds;
  private final LineColumns columns;

  LineSheetDrawing(LineChart chart, Fonts fonts) {
    this.chart = chart;
    this.head = chart.headPx() * PT;
    TrackStrip track = chart.track();
    this.y = new Scale(track.fromM(), track.toM(), head, head + chart.heightPx() * PT);
    this.speeds = new LineSpeeds(chart, new Scale(0, chart.topSpeed(), SPEED, SPEED_END), y, fonts);
    this.columns = new LineColumns(chart, y);
  }

  @Override
  public double width() {
    return WIDTH;
  }

  @Override
  public double height() {
    return y.end() + 1;
  }

  @Override
  public void draw(Canvas canvas) {
    posts(canvas);
    speeds.draw(canvas);
    columns.slopes(canvas, SLOPES, BENDS - 2);
    columns.bends(canvas, BENDS, LINE - 2);
    columns.line(canvas, LINE, LINE_END);
    leaders(canvas);
    heads(canvas);
  }

  /** Mileages at the left; a pale line through all columns at each. */
  private void posts(Canvas canvas) {
    LabelPlacer placer =
        new LabelPlacer(new LabelPlacer.Box(-8, head - 5, SPEED + 8, y.end() - head + 10));
    for (boolean major : new boolean[] {true, false}) {
      for (TrackStrip.Tick tick : chart.track().ticks()) {
        if (tick.major() == major) {
          double at = y.at(tick.atM());
          canvas.line(SPEED - 2, at, LINE_END, at, Pen.GRID);
          double base = Math.max(head + 5, Math.min(y.end() - 1, at + 2.4));
          if (placer
              .place(java.util.List.of(new LabelPlacer.Box(0, base - 5.5, SPEED - 3, 7)))
              .isPresent()) {
            canvas.text(SPEED - 3, base, tick.text(), new Canvas.Type(7, major), Anchor.END);
          }
        }
      }
    }
  }

  private void leaders(Canvas canvas) {
    for (LineChart.Level level : chart.levels()) {
      double at = y.at(level.atM());
      double row = head + level.topPx() * PT + 0.4;
      canvas.line(
          new double[] {LINE_END - 4, LINE_END, WIDTH - 1.5, WIDTH},
          new double[] {at, at, row, row},
          Pen.HAIR);
    }
  }

  private void heads(Canvas canvas) {
    double upper = head - 11;
    double lower = head - 3;
    LineChart.Heads heads = chart.heads();
    canvas.text(SPEED, upper, heads.speed(), HEAD, Anchor.START);
    canvas.text(SLOPES, upper, heads.slopes(), HEAD, Anchor.START);
    canvas.text(BENDS, upper, heads.bends(), HEAD, Anchor.START);
    canvas.text(LINE_END, upper, chart.track().names().line(), HEAD, Anchor.END);
    double centre = LineColumns.lineX(LINE, LINE_END);
    canvas.text(centre - 3, lower, heads.left(), SMALL, Anchor.END);
    canvas.text(centre + 1, lower, heads.right(), SMALL, Anchor.START);
    for (double v = 0; v <= chart.topSpeed() + 1e-9; v += chart.speedStep()) {
      long whole = Math.round(v);
      boolean shown = whole % Math.round(2 * chart.speedStep()) == 0;
      if (shown) {
        canvas.text(speeds.x(v), lower, Long.toString(whole), SMALL, Anchor.MIDDLE);
      }
    }
    canvas.line(SPEED - 2, head, WIDTH, head, new Pen(0.75, Ink.BLACK));
    Stream.of(SPEED, SPEED_END).forEach(x -> canvas.line(x, head, x, y.end(), Pen.GRID));
    canvas.line(SPEED, head, SPEED, y.end(), new Pen(0.8, Ink.BLACK));
  }
}
