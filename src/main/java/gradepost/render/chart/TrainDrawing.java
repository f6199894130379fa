package gradepost.render.chart;

import gradepost.briefing.chart.TrainChart;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;

/** The formation from the side, to scale along its length; it runs to the right. */
final class TrainDrawing implements Drawing {
  private static final double TOP = 8;
  private static final double BODY = 24;
  private final TrainChart chart;
  private final Fonts fonts;

  TrainDrawing(TrainChart chart, Fonts fonts) {
    this.chart = chart;
    this.fonts = fonts;
  }

  @Override
  public double width() {
    return FULL_WIDTH;
  }

  @Override
  public double height() {
    return 66;
  }

  @Override
  public void draw(Canvas canvas) {
    double total = chart.cars().stream().mapToDouble(TrainChart.Car::lengthM).sum();
    double leads = fonts.width(chart.leads(), new Canvas.Type(8, true)) + 16;
    double right = FULL_WIDTH - leads;
    double scale = Math.min(right / total, 104 / (total / chart.cars().size()));
    double end = right;
    for (TrainChart.Car car : chart.cars()) {
      double length = car.lengthM() * scale;
      car(canvas, car, end - length + 0.8, length - 1.6);
      end -= length;
    }
    double y = TOP + BODY / 2;
    canvas.line(right + 2, y, right + 10, y, new Pen(1.4, Ink.BLACK));
    canvas.area(
        new double[] {right + 9, right + 14, right + 9},
        new double[] {y - 3.5, y, y + 3.5},
        Ink.BLACK);
    canvas.text(FULL_WIDTH, y + 2.8, chart.leads(), new Canvas.Type(8, true), Anchor.END);
    double dim = TOP + BODY + 17;
    canvas.line(end, dim, right, dim, new Pen(0.6, Ink.BLACK));
    canvas.line(end, dim - 3, end, dim + 3, new Pen(0.6, Ink.BLACK));
    canvas.line(right, dim - 3, right, dim + 3, new Pen(0.6, Ink.BLACK));
    canvas.text(
        (end + right) / 2, dim + 10, chart.total(), new Canvas.Type(8.5, true), Anchor.MIDDLE);
  }

  private void car(Canvas canvas, TrainChart.Car car, double x, double length) {
    canvas.box(x, TOP, length, BODY, car.motored() ? Ink.FAINT : Ink.PAPER);
    canvas.frame(x, TOP, length, BODY, new Pen(1, Ink.BLACK));
    for (double wheel : new double[] {0.16, 0.26, 0.74, 0.84}) {
      canvas.disc(
          x + wheel * length,
          TOP + BODY + 2,
          1.9,
          car.motored() ? Ink.BLACK : Ink.PAPER,
          new Pen(0.8, Ink.BLACK));
    }
    canvas.text(x + length / 2, TOP + 11, car.type(), new Canvas.Type(9, true), Anchor.MIDDLE);
    canvas.text(x + length / 2, TOP + 20, car.length(), new Canvas.Type(7.4, false), Anchor.MIDDLE);
  }
}
