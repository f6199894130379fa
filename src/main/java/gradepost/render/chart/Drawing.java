package gradepost.render.chart;

/** A chart laid out: its size is known, and it can be drawn on any canvas. */
public interface Drawing {
  /** Width of the text on the paper, in points: A4 less hole margin and outer margin. */
  double FULL_WIDTH = 496;

  double width();

  double height();

  void draw(Canvas canvas);
}
