package gradepost.render.chart;

import gradepost.briefing.chart.Chart.HeldBand;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.List;

/**
 * Speeds that are held: upright strokes between the two figures, which no other hatching has, so
 * that they are told apart in grey.
 */
final class HeldDrawing {
  private static final double STEP = 2.6;
  private static final double HIGH = 8.5;
  private static final Canvas.Type TYPE = new Canvas.Type(7.4, true);

  private final List<HeldBand> held;
  private final Scale x;
  private final Scale y;
  private final Fonts fonts;

  HeldDrawing(List<HeldBand> held, Scale x, Scale y, Fonts fonts) {
    this.held = held;
    this.x = x;
    this.y = y;
    this.fonts = fonts;
  }

  void bands(Canvas canvas) {
    for (HeldBand band : held) {
      double left = x.at(band.fromM());
      double right = x.at(band.toM());
      double top = y.at(band.upper());
      double bottom = y.at(band.lower());
      for (double at = left; at < right; at += STEP) {
        canvas.line(at, top, at, bottom, new Pen(0.35, Ink.BLACK));
      }
      canvas.line(right, top, right, bottom, new Pen(0.35, Ink.BLACK));
      canvas.line(left, top, right, top, new Pen(0.9, Ink.BLACK));
      canvas.line(left, bottom, right, bottom, new Pen(0.9, Ink.BLACK));
    }
  }

  /** Keeps texts off the bands. */
  void take(LabelPlacer placer) {
    for (HeldBand band : held) {
      double left = x.at(band.fromM());
      double top = y.at(band.upper());
      placer.take(new Box(left, top, x.at(band.toM()) - left, y.at(band.lower()) - top));
    }
  }

  /** Under its band, else over it; where there is no room the page says it. */
  void texts(Canvas canvas, LabelPlacer placer) {
    for (HeldBand band : held) {
      double width = fonts.width(band.text(), TYPE) + 3;
      double middle = (x.at(band.fromM()) + x.at(band.toM())) / 2;
      double left = Math.max(x.at(band.fromM()), Math.min(middle - width / 2, x.end() - width));
      placer
          .place(
              List.of(
                  new Box(left, y.at(band.lower()) + 2, width, HIGH),
                  new Box(left, y.at(band.upper()) - HIGH - 2, width, HIGH),
                  new Box(x.at(band.toM()) + 2, y.at(band.upper()), width, HIGH),
                  new Box(x.at(band.fromM()) - width - 2, y.at(band.upper()), width, HIGH)))
          .ifPresent(
              box -> {
                canvas.box(box.x(), box.y(), box.width(), box.height(), Ink.PAPER);
                canvas.text(box.x() + 1.5, box.y() + 6.6, band.text(), TYPE, Anchor.START);
              });
    }
  }
}
