package gradepost.render.chart;

/** A chart laid out: its size is known, and it can be drawn on any canvas. */
public interface Drawing {
  /** Width of the text on the paper, in points: A4 less hole margin and outer margin. */
  double FULL_WIDTH = 496;

  /** Width in points. */
  double width();

  /** Height in points. */
  double height();

  /** Draws it with its upper left corner at the origin. */
  void draw(Canvas canvas);
}
