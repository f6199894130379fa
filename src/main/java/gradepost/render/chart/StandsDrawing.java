package gradepost.render.chart;

import gradepost.briefing.chart.StandsChart;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.List;
import java.util.stream.DoubleStream;

/** The train over each of its platforms, to one scale, its front on one line through all. */
final class StandsDrawing implements Drawing {
  private static final double ROW = 29;
  private static final double TOP = 6;
  private static final double LEFT = 172;
  private static final double RIGHT = 8;
  private static final double CAR = 7;
  private static final double FACE = 5;

  /** Foot of a mark's number under the top of the platform: clear of mark and broken line. */
  private static final double NUMBER = FACE + 11;

  private static final double SMALLEST = 7;
  private static final Canvas.Type NAME = new Canvas.Type(8, true);
  private static final Canvas.Type SMALL = new Canvas.Type(7.4, false);
  private final StandsChart chart;
  private final Fonts fonts;
  private final Scale x;
  private final double lengthM;

  StandsDrawing(StandsChart chart, Fonts fonts) {
    this.chart = chart;
    this.fonts = fonts;
    this.lengthM = chart.carsM().stream().mapToDouble(Double::doubleValue).sum();
    double least =
        chart.stands().stream().mapToDouble(StandsChart.Stand::startM).reduce(-lengthM, Math::min);
    double most = chart.stands().stream().flatMapToDouble(StandsDrawing::ahead).max().orElse(0);
    this.x = new Scale(least, Math.max(most, 1), LEFT, FULL_WIDTH - RIGHT);
  }

  private static DoubleStream ahead(StandsChart.Stand s) {
    return DoubleStream.concat(
        DoubleStream.of(s.endM()),
        DoubleStream.concat(
            s.buffersM().stream().mapToDouble(b -> b),
            s.marks().stream().mapToDouble(StandsChart.Mark::atM)));
  }

  @Override
  public double width() {
    return FULL_WIDTH;
  }

  @Override
  public double height() {
    return TOP + ROW * chart.stands().size();
  }

  @Override
  public void draw(Canvas canvas) {
    double top = TOP;
    for (StandsChart.Stand s : chart.stands()) {
      words(canvas, s, top);
      train(canvas, s, top);
      platform(canvas, s, top + CAR + 1.5);
      double front = x.at(0);
      canvas.line(front, top - 4, front, top + CAR + FACE + 3, new Pen(0.8, Ink.BLACK, 3, 1.5));
      top += ROW;
    }
  }

  private void words(Canvas canvas, StandsChart.Stand s, double top) {
    double fits = Math.min(1, (LEFT - 6) / fonts.width(s.station(), NAME));
    Canvas.Type name = new Canvas.Type(Math.max(SMALLEST, NAME.size() * fits), true);
    canvas.text(0, top + 6, s.station(), name, Anchor.START);
    canvas.text(0, top + 15, s.at(), SMALL, Anchor.START);
    canvas.text(0, top + 24, s.room(), new Canvas.Type(7.4, s.tooShort()), Anchor.START);
  }

  private void train(Canvas canvas, StandsChart.Stand s, double top) {
    double end = 0;
    for (double car : chart.carsM()) {
      double a = x.at(end - car) + 0.4;
      double width = x.at(end) - 0.4 - a;
      canvas.box(a, top, width, CAR, Ink.PAPER);
      canvas.frame(a, top, width, CAR, new Pen(0.9, Ink.BLACK));
      // What stands off the platform is hatched: no door may open there.
      double off = Math.min(x.at(s.startM()) - a, width);
      if (off > 0.5) {
        Hatch.fill(canvas, a, top, off, CAR, 2.4, new Pen(0.5, Ink.BLACK));
      }
      double past = Math.min(a + width - x.at(s.endM()), width);
      if (past > 0.5) {
        Hatch.fill(canvas, a + width - past, top, past, CAR, 2.4, new Pen(0.5, Ink.BLACK));
      }
      end -= car;
    }
    double nose = x.at(0) - 1;
    canvas.area(
        new double[] {nose - 5, nose, nose - 5},
        new double[] {top + 1, top + CAR / 2, top + CAR - 1},
        Ink.BLACK);
  }

  private void platform(Canvas canvas, StandsChart.Stand s, double top) {
    double a = x.at(s.startM());
    double e = x.at(s.endM());
    canvas.box(a, top, e - a, FACE, Ink.PALE);
    canvas.frame(a, top, e - a, FACE, new Pen(0.8, Ink.BLACK));
    for (double b : s.buffersM()) {
      canvas.box(x.at(b), top - CAR - 1.5, 3, CAR + FACE + 1.5, Ink.BLACK);
    }
    LabelPlacer placer = new LabelPlacer(new Box(LEFT - 8, top, FULL_WIDTH - LEFT + 8, 22));
    for (boolean own : new boolean[] {true, false}) {
      for (StandsChart.Mark m : s.marks()) {
        if (m.own() == own) {
          mark(canvas, m, top, placer);
        }
      }
    }
  }

  private void mark(Canvas canvas, StandsChart.Mark m, double top, LabelPlacer placer) {
    double at = x.at(m.atM());
    canvas.line(at, top - 1, at, top + FACE + 2, new Pen(m.own() ? 2 : 0.9, Ink.BLACK));
    Canvas.Type type = new Canvas.Type(m.own() ? 9 : 7.4, m.own());
    double width = fonts.width(m.cars(), type);
    placer
        .place(
            List.of(
                new Box(at - width / 2 - 1, top + NUMBER - 8, width + 2, 9),
                new Box(at + 1, top + NUMBER - 8, width + 2, 9),
                new Box(at - width - 3, top + NUMBER - 8, width + 2, 9)))
        .ifPresent(b -> canvas.text(b.x() + 1, top + NUMBER, m.cars(), type, Anchor.START));
  }
}
