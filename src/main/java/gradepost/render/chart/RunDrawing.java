package gradepost.render.chart;

import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.RunChart;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;

/** A driven run over the planned one, and where the brake went on in each. */
final class RunDrawing implements Drawing {
  private static final double LEFT = 29;
  private static final double RIGHT = 6;
  private static final double LEGEND = 12;
  private static final double PLOT = 104;
  private final RunChart chart;
  private final Fonts fonts;
  private final Scale x;
  private final Scale y;
  private final TrackBands bands;

  RunDrawing(RunChart chart, Fonts fonts) {
    this.chart = chart;
    this.fonts = fonts;
    this.x = new Scale(chart.track().fromM(), chart.track().toM(), LEFT, FULL_WIDTH - RIGHT);
    this.y = new Scale(0, chart.topSpeed(), LEGEND + PLOT, LEGEND);
    this.bands = new TrackBands(chart.track(), x, fonts, FULL_WIDTH - 1);
  }

  @Override
  public double width() {
    return FULL_WIDTH;
  }

  @Override
  public double height() {
    return LEGEND + PLOT + TrackBands.AXIS + TrackBands.PROFILE + TrackBands.LINE + 2;
  }

  @Override
  public void draw(Canvas canvas) {
    double bottom = LEGEND + PLOT;
    legend(canvas);
    double most = chart.topSpeed();
    SpeedAxis.draw(canvas, LEFT, LEGEND, x.end(), y, most, chart.speedStep(), chart.speedUnit());
    canvas.clip(LEFT, LEGEND, x.end() - LEFT, PLOT + 1);
    chart.curves().stream()
        .filter(c -> c.kind() == Curve.Kind.PERMISSIBLE)
        .forEach(c -> Hatch.above(canvas, c, x, y, LEGEND));
    HeldDrawing held = new HeldDrawing(chart.held(), x, y, fonts);
    held.bands(canvas);
    for (Curve c : chart.curves()) {
      canvas.line(x.at(c.x()), y.at(c.y()), pen(c.kind()));
    }
    canvas.unclip();
    canvas.line(LEFT, LEGEND, LEFT, bottom, new Pen(0.8, Ink.BLACK));
    LabelPlacer placer = new LabelPlacer(new Box(LEFT, LEGEND, x.end() - LEFT, PLOT));
    held.texts(canvas, placer);
    NumberedPoints points = new NumberedPoints(x, y, placer);
    points.draw(canvas, chart.braked(), true);
    points.draw(canvas, chart.briefed(), false);
    bands.axis(canvas, bottom);
    double top = bottom + TrackBands.AXIS;
    bands.profile(canvas, top);
    bands.line(canvas, top + TrackBands.PROFILE);
  }

  /** The planned run steps back behind the driven one here. */
  private static Pen pen(Curve.Kind kind) {
    return kind == Curve.Kind.PLANNED ? new Pen(1.1, Ink.BLACK, 3.2, 2) : ApproachDrawing.pen(kind);
  }

  private void legend(Canvas canvas) {
    double at = LEFT;
    Canvas.Type type = new Canvas.Type(7.8, true);
    for (Curve c : chart.curves()) {
      canvas.line(at, 4, at + 22, 4, pen(c.kind()));
      canvas.text(at + 26, 6.8, c.text(), type, Anchor.START);
      at += 26 + fonts.width(c.text(), type) + 18;
    }
  }
}
