package gradepost.render.chart;

import gradepost.briefing.chart.ApproachChart;
import gradepost.briefing.chart.Curve;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Writes the name of each line upon the line, along it, where it hides no other. */
final class LineLabels {
  /** A line in points. */
  @SuppressWarnings("ArrayRecordComponent") // the same only as itself
  private record Drawn(Curve curve, double[] x, double[] y) {}

  /** A place for a name: its middle, its slope in degrees, and how near to other lines it comes. */
  private record Spot(double x, double y, double degrees, double clear, List<Box> boxes) {}

  private static final Canvas.Type TYPE = new Canvas.Type(7.4, true);
  private static final double HALF = 3.6;
  private static final double LEAST_CLEAR = 0.5;
  private static final double MOST_CLEAR = 12;
  private final List<Drawn> lines = new ArrayList<>();

  private final Leaders leaders = new Leaders();
  private final Fonts fonts;
  private final LabelPlacer placer;

  LineLabels(ApproachChart chart, Scale x, Scale y, Fonts fonts, LabelPlacer placer) {
    this.fonts = fonts;
    this.placer = placer;
    for (Curve c : chart.curves()) {
      if (c.x().length > 1) {
        lines.add(new Drawn(c, x.at(c.x()), y.at(c.y())));
      }
    }
  }

  void draw(Canvas canvas) {
    List<Drawn> fromLeft = new ArrayList<>(lines);
    fromLeft.sort(java.util.Comparator.comparingDouble(l -> l.x[0]));
    for (Drawn line : fromLeft) {
      Optional<Spot> spot = best(line);
      if (spot.isPresent()) {
        write(canvas, line, spot.get());
      } else {
        beside(canvas, line);
      }
    }
  }

  private void write(Canvas canvas, Drawn line, Spot s) {
    s.boxes.forEach(placer::take);
    leaders.written(s.boxes);
    double half = fonts.width(line.curve.text(), TYPE) / 2 + 2;
    double cos = Math.cos(Math.toRadians(s.degrees));
    double sin = Math.sin(Math.toRadians(s.degrees));
    double[] dx = {-half, half, half, -half};
    double[] dy = {-HALF, -HALF, HALF, HALF};
    double[] px = new double[4];
    double[] py = new double[4];
    for (int i = 0; i < 4; i++) {
      px[i] = s.x + dx[i] * cos + dy[i] * sin;
      py[i] = s.y - dx[i] * sin + dy[i] * cos;
    }
    canvas.area(px, py, Ink.PAPER);
    canvas.text(
        s.x + 2.4 * sin, s.y + 2.4 * cos, line.curve.text(), TYPE, Anchor.MIDDLE, s.degrees);
  }

  /** Where the lines run too close together: in the open, with a leader to the line's beginning. */
  private void beside(Canvas canvas, Drawn line) {
    double width = fonts.width(line.curve.text(), TYPE);
    double px = line.x[0];
    double py = line.y[0];
    List<Box> wanted = new ArrayList<>();
    for (double up : new double[] {-16, -26, -36, -8, -46, 14, 24, 34, 46, 58, 70}) {
      for (double right :
          new double[] {10, 24, 40, 60, 80, 105, -width / 2, -width - 6, -width - 30}) {
        Box box = new Box(px + right - 2, py + up - 5, width + 4, 9);
        if (lines.stream().noneMatch(l -> crosses(l, box)) && leaders.clear(px, py, box)) {
          wanted.add(box);
        }
      }
    }
    placer
        .place(wanted)
        .ifPresent(
            b -> {
              leaders.draw(canvas, px, py, b);
              canvas.disc(px, py, 1.5, Ink.BLACK, new Canvas.Pen(0.3, Ink.BLACK));
              canvas.box(b.x(), b.y(), b.width(), b.height(), Ink.PAPER);
              canvas.text(b.x() + 2, b.y() + 7, line.curve.text(), TYPE, Anchor.START);
            });
  }

  private static boolean crosses(Drawn line, Box box) {
    for (int i = 0; i <= 8; i++) {
      double px = box.x() + box.width() * i / 8;
      if (px >= line.x[0] && px <= line.x[line.x.length - 1]) {
        double h = heightAt(line, px);
        if (h > box.y() - 2 && h < box.y() + box.height() + 2) {
          return true;
        }
      }
    }
    return false;
  }

  /** The clearest place; one that would hide another line only where there is none else. */
  private Optional<Spot> best(Drawn line) {
    double half = fonts.width(line.curve.text(), TYPE) / 2 + 2;
    Optional<Spot> best = Optional.empty();
    double first = line.x[0];
    double last = line.x[line.x.length - 1];
    int tries = 60;
    double enough = LEAST_CLEAR;
    for (int i = 0; i <= tries; i++) {
      double middle = first + (last - first) * i / tries;
      Optional<Spot> spot = spot(line, middle, half, enough);
      if (spot.isPresent() && spot.get().boxes.stream().allMatch(placer::free)) {
        best = spot;
        enough = spot.get().clear + LEAST_CLEAR;
      }
    }
    return best;
  }

  /** Empty where the name would not lie on its line, or not clear enough of the others. */
  private Optional<Spot> spot(Drawn line, double middle, double half, double enough) {
    double y = heightAt(line, middle);
    double slope = (heightAt(line, middle + 8) - heightAt(line, middle - 8)) / 16;
    double angle = Math.atan(slope);
    double ux = Math.cos(angle);
    double uy = Math.sin(angle);
    if (middle - half * ux < line.x[0] || middle + half * ux > line.x[line.x.length - 1]) {
      return Optional.empty();
    }
    double clear = MOST_CLEAR;
    if (clear <= enough) {
      return Optional.empty();
    }
    List<Box> boxes = new ArrayList<>();
    for (double t = -half; t <= half + 0.01; t += half / 6) {
      double px = middle + t * ux;
      double py = y + t * uy;
      if (Math.abs(heightAt(line, px) - py) * ux > 3.2) {
        return Optional.empty();
      }
      boxes.add(new Box(px - 3, py - HALF, 6, 2 * HALF));
      for (Drawn other : lines) {
        if (!other.equals(line) && px > other.x[0] && px < other.x[other.x.length - 1]) {
          double gap = gap(other, px, py);
          clear = Math.min(clear, gap - HALF);
          if (clear <= enough) {
            return Optional.empty();
          }
        }
      }
    }
    return Optional.of(new Spot(middle, y, -Math.toDegrees(angle), clear, boxes));
  }

  private static double gap(Drawn line, double px, double py) {
    double h = heightAt(line, px);
    double slope = (heightAt(line, px + 3) - heightAt(line, px - 3)) / 6;
    return Math.abs(h - py) / Math.sqrt(1 + slope * slope);
  }

  private static double heightAt(Drawn line, double px) {
    double[] x = line.x;
    int low = 0;
    int high = x.length - 1;
    if (px <= x[0]) {
      return line.y[0];
    }
    if (px >= x[high]) {
      return line.y[high];
    }
    while (high - low > 1) {
      int mid = (low + high) >>> 1;
      if (x[mid] <= px) {
        low = mid;
      } else {
        high = mid;
      }
    }
    double length = x[high] - x[low];
    double share = length <= 0 ? 0 : (px - x[low]) / length;
    return line.y[low] + share * (line.y[high] - line.y[low]);
  }
}
