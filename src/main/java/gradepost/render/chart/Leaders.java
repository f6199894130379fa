package gradepost.render.chart;

import gradepost.render.chart.LabelPlacer.Box;
import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Leaders from points to the names that stand beside them: none runs through a name. */
final class Leaders {
  private final List<Box> names = new ArrayList<>();
  private final List<Line2D> leaders = new ArrayList<>();

  /** Names that stand without a leader. */
  void written(Collection<Box> boxes) {
    names.addAll(boxes);
  }

  /** Whether a name there is struck by no leader, and the leader to it strikes no name. */
  boolean clear(double px, double py, Box name) {
    Line2D leader = leader(px, py, name);
    return leaders.stream().noneMatch(l -> meets(l, name))
        && names.stream().noneMatch(n -> meets(leader, n));
  }

  /** Draws the leader from its point, and remembers it with its name. */
  void draw(Canvas canvas, double px, double py, Box name) {
    Line2D leader = leader(px, py, name);
    leaders.add(leader);
    names.add(name);
    canvas.line(px, py, leader.getX2(), leader.getY2(), Canvas.Pen.HAIR);
  }

  /** From the point to the nearest edge of its name. */
  private static Line2D leader(double px, double py, Box b) {
    double end = Math.max(b.x(), Math.min(px, b.x() + b.width()));
    return new Line2D.Double(px, py, end, b.y() > py ? b.y() : b.y() + b.height());
  }

  private static boolean meets(Line2D leader, Box b) {
    return leader.intersects(b.x(), b.y(), b.width(), b.height());
  }
}
