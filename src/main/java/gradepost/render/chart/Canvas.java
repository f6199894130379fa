package gradepost.render.chart;

/**
 * What a chart is drawn on: points (1/72 inch) from the upper left corner, y downwards. Grey only;
 * lines are told apart by dash and weight.
 */
public interface Canvas {
  /** How dark. */
  enum Ink {
    BLACK(0),
    DARK(0.35),
    PALE(0.72),
    FAINT(0.9),
    /** A band behind lines and figures: plain to see, and a letter on it is still read. */
    BAND(0.8),
    /** What the paper is; hides what lies under it. */
    PAPER(1);

    public final double grey;

    Ink(double grey) {
      this.grey = grey;
    }
  }

  /** Where a text stands to its point. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  /** A line's weight in points, its ink, and its dashes; no dashes is a solid line. */
  @SuppressWarnings("ArrayRecordComponent") // drawn with, never compared
  record Pen(double width, Ink ink, double... dashes) {
    static final Pen HAIR = new Pen(0.4, Ink.DARK);
    static final Pen GRID = new Pen(0.35, Ink.PALE);
  }

  /** A face and size. */
  record Type(double size, boolean bold) {}

  /** A line through these points. */
  void line(double[] x, double[] y, Pen pen);

  /** A straight line. */
  default void line(double x1, double y1, double x2, double y2, Pen pen) {
    line(new double[] {x1, x2}, new double[] {y1, y2}, pen);
  }

  /** Straight lines of one pen, each from one of these points to the next: from 0 to 1, 2 to 3 … */
  default void lines(double[] x, double[] y, Pen pen) {
    for (int i = 0; i + 1 < x.length; i += 2) {
      line(x[i], y[i], x[i + 1], y[i + 1], pen);
    }
  }

  /** An area within these points, filled. */
  void area(double[] x, double[] y, Ink ink);

  /** A filled rectangle, by its upper left corner. */
  default void box(double x, double y, double width, double height, Ink ink) {
    area(
        new double[] {x, x + width, x + width, x},
        new double[] {y, y, y + height, y + height},
        ink);
  }

  /** The outline of a rectangle, by its upper left corner. */
  default void frame(double x, double y, double width, double height, Pen pen) {
    line(
        new double[] {x, x + width, x + width, x, x},
        new double[] {y, y, y + height, y + height, y},
        pen);
  }

  /** A filled circle with a rim, by its middle. */
  void disc(double x, double y, double radius, Ink fill, Pen rim);

  /** A text on its baseline, turned anticlockwise by so many degrees about its point. */
  void text(double x, double y, String text, Type type, Anchor anchor, double degrees);

  /** A text on its baseline. */
  default void text(double x, double y, String text, Type type, Anchor anchor) {
    text(x, y, text, type, anchor, 0);
  }

  /** Draws only inside until {@link #unclip()}. */
  void clip(double x, double y, double width, double height);

  /** Ends the last clip. */
  void unclip();
}
