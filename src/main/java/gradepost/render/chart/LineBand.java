package gradepost.render.chart;

import gradepost.briefing.chart.TrackStrip;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.List;

/** The line with its platforms and signals, and the platforms' names where they fit. */
final class LineBand {
  private final TrackStrip track;
  private final Scale x;
  private final Fonts fonts;
  private final Standing standing;

  LineBand(TrackStrip track, Scale x, Fonts fonts, Standing standing) {
    this.track = track;
    this.x = x;
    this.fonts = fonts;
    this.standing = standing;
  }

  void draw(Canvas canvas, double top) {
    double middle = top + TrackBands.LINE / 2;
    canvas.line(x.start(), middle, x.end(), middle, new Pen(1.6, Ink.BLACK));
    LabelPlacer placer =
        new LabelPlacer(
            new Box(x.start() - 4, top - 1, x.end() - x.start() + 8, TrackBands.LINE + 2));
    signs(canvas, middle, placer);
    for (TrackStrip.Stretch p : track.platforms()) {
      double a = x.at(p.fromM());
      double e = x.at(p.toM());
      double y = p.left() ? middle - 6.5 : middle + 2;
      canvas.box(a, y, e - a, 4.5, Ink.PALE);
      canvas.frame(a, y, e - a, 4.5, new Pen(0.8, Ink.BLACK));
      placer.take(new Box(a, y, e - a, 4.5));
    }
    track.platforms().forEach(p -> platformName(canvas, p, middle, placer));
  }

  /** On the free side of the line; beside the platform where a signal stands in the way. */
  private void platformName(
      Canvas canvas, TrackStrip.Stretch p, double middle, LabelPlacer placer) {
    Canvas.Type type = new Canvas.Type(7.4, true);
    double width = fonts.width(p.text(), type);
    double a = x.at(p.fromM());
    double opposite = p.left() ? middle + 9 : middle - 3.5;
    List<Box> wanted = new ArrayList<>();
    for (double start : standing.starts(Math.max(x.start(), Math.min(a, x.end() - width)), width)) {
      wanted.add(new Box(start - 3, opposite - 6, width + 6, 7));
    }
    double beside = p.left() ? middle - 2.5 : middle + 8;
    for (double wish : new double[] {x.at(p.toM()) + 3, a - width - 3}) {
      for (double start : standing.starts(wish, width)) {
        wanted.add(new Box(start - 2, beside - 6, width + 4, 7));
      }
    }
    placer
        .place(wanted)
        .ifPresent(
            box -> {
              double inset = (box.width() - width) / 2;
              canvas.text(box.x() + inset, box.y() + 6, p.text(), type, Anchor.START);
            });
  }

  private void signs(Canvas canvas, double middle, LabelPlacer placer) {
    for (TrackStrip.Sign s : track.signs()) {
      double at = x.at(s.atM());
      switch (s.kind()) {
        case SIGNAL -> {
          double head = s.left() ? middle - 8 : middle + 8;
          canvas.line(at, middle, at, head, new Pen(1, Ink.BLACK));
          canvas.disc(at, head, 1.9, Ink.PAPER, new Pen(1, Ink.BLACK));
          placer.take(new Box(at - 2.5, Math.min(middle, head - 2.5), 5, 10.5));
        }
        case GAP -> canvas.box(at - 1, middle - 3, 2, 6, Ink.BLACK);
        case STRUCTURE -> canvas.line(at, middle - 2.6, at, middle + 2.6, new Pen(1.2, Ink.BLACK));
        case LANDMARK, BOARD, TARGET -> {}
      }
    }
  }
}
