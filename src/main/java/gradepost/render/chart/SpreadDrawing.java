package gradepost.render.chart;

import gradepost.briefing.chart.SpreadChart;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;

/** A bar from the run that ends early to the one that ends late, across the target. */
final class SpreadDrawing implements Drawing {
  private static final double WIDTH = 200;
  private static final double HEIGHT = 25;
  private static final double MARGIN = 26;
  private static final double BAR = 13;
  private static final Canvas.Type SMALL = new Canvas.Type(7.4, false);
  private final SpreadChart chart;
  private final Fonts fonts;

  SpreadDrawing(SpreadChart chart, Fonts fonts) {
    this.chart = chart;
    this.fonts = fonts;
  }

  @Override
  public double width() {
    return WIDTH;
  }

  @Override
  public double height() {
    return HEIGHT;
  }

  @Override
  public void draw(Canvas canvas) {
    double early = Math.max(chart.before(), 0);
    double late = Math.min(chart.past(), 0);
    double span = Math.max(early - late, 1);
    Scale x = new Scale(-early - 0.04 * span, -late + 0.04 * span, MARGIN, WIDTH - MARGIN);
    double a = x.at(-chart.before());
    double b = x.at(-chart.past());
    canvas.line(x.start() - 8, BAR, x.end() + 8, BAR, Pen.HAIR);
    canvas.box(a, BAR - 3.5, b - a, 7, Ink.PALE);
    canvas.frame(a, BAR - 3.5, b - a, 7, new Pen(0.8, Ink.BLACK));
    double middle = x.at(-chart.middle());
    canvas.line(middle, BAR - 3.5, middle, BAR + 3.5, new Pen(1.8, Ink.BLACK));
    double mark = x.at(0);
    canvas.line(mark, 1, mark, BAR + 6, new Pen(1.1, Ink.BLACK, 4, 1.5, 1, 1.5));
    double width = fonts.width(chart.target(), SMALL);
    boolean right = mark + 3 + width < WIDTH;
    canvas.text(
        right ? mark + 3 : mark - 3, 7, chart.target(), SMALL, right ? Anchor.START : Anchor.END);
    double half = fonts.width(chart.beforeText(), SMALL) / 2;
    double other = fonts.width(chart.pastText(), SMALL) / 2;
    double left = Math.max(half, Math.min(a, WIDTH - half));
    double end = Math.max(other, Math.min(b, WIDTH - other));
    if (end - left < half + other + 4) {
      left = Math.max(half, Math.min(left, (left + end) / 2 - half - 2));
      end = Math.min(WIDTH - other, Math.max(end, left + half + other + 4));
    }
    canvas.text(left, HEIGHT - 1.5, chart.beforeText(), SMALL, Anchor.MIDDLE);
    canvas.text(end, HEIGHT - 1.5, chart.pastText(), SMALL, Anchor.MIDDLE);
  }
}
