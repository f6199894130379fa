package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.line.LineBreaks;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How much room a road sheet has for its drawing, and whether the lower speeds and other routes
 * find theirs below its rows. In points; estimates, on the high side, of what the style sheet makes
 * of them: the widths are those of the columns in {@code paper.css}, in millimetres.
 */
final class RoadRoom {
  private static final double MM = 72 / 25.4;

  /** Between the running heads. */
  private static final double PAGE = (210 - 13 - 9.7) * MM;

  private static final double TITLE = 17;
  private static final double TITLE_TYPE = 12;

  /** The drawing without its plot: two rows of names, the mileages and the bands. */
  private static final double BANDS = 97;

  /** As low as a plot may be. */
  private static final double PLOT = 52;

  private static final double TYPE = 9;
  private static final double LINE = 1.06 * TYPE;

  /** Air and a rule. */
  private static final double ROW = 2.1;

  /** The point is a little larger than the other cells, and as high. */
  private static final double LEAST_ROW = 9.9 + ROW;

  /** Heading and air of a table below the rows. */
  private static final double HEADING = 17;

  private static final double[] POINTS = {4.2, 58, 29.3, 52.5, 50, 5.5, 10.5};

  /** The last one; those between share alike what is left. */
  private static final double FAILS = 25.5;

  private static final double WIDE = 273;

  /** On either side of a cell. */
  private static final double PADDING = 0.8;

  /** The one that is bold, and by how much its type is larger. */
  private static final int POINT = 2;

  private static final double LARGER = 10 / TYPE;
  private static final double[] LOWER = {51, 16.5, 12.5, 12.5, 39.5, 24.5, 25};
  private static final double[] SELDOM = {14, 26.5, 30.7};

  /** Between words, in type sizes. */
  private static final double SPACE = 0.2;

  /** The triangle is no wider than this letter. */
  private static final String WARNING = "\u25b2";

  private static final String LETTER = "W";

  /** Between the title and what the rails are, on one line. */
  private static final double APART = 3;

  private final boolean railsBeside;

  /**
   * @param title of the part, in large type, and {@code rails} beside or below it
   */
  RoadRoom(String title, String rails) {
    double titleMm = TITLE_TYPE * wide(title, true) / MM;
    this.railsBeside = titleMm + TYPE * wide(rails, false) / MM + APART <= WIDE;
  }

  private static double wide(String text, boolean bold) {
    return Arrays.stream(text.split(" ", -1)).mapToDouble(w -> LineBreaks.width(w, bold)).sum()
        + SPACE * text.chars().filter(c -> c == ' ').count();
  }

  /** Whether what the rails are stands beside the title. */
  boolean railsBeside() {
    return railsBeside;
  }

  /** What is left for the drawing above these rows. */
  double above(Table points, List<String> notes) {
    double below = notes.isEmpty() ? 0 : note(String.join(" ", notes), WIDE);
    double title = TITLE + (railsBeside ? 0 : note("", WIDE));
    return PAGE - title - high(points, widths(points.columns().size())) - below;
  }

  private static double[] widths(int columns) {
    double left = WIDE - columns * 2 * PADDING - Arrays.stream(POINTS).sum() - FAILS;
    double[] out = Arrays.copyOf(POINTS, columns);
    Arrays.fill(out, POINTS.length, columns - 1, left / (columns - 1 - POINTS.length));
    out[columns - 1] = FAILS;
    return out;
  }

  /** The same with the lower speeds and other routes below them; empty where that is too little. */
  Optional<Double> above(Table points, List<String> notes, Optional<Table> lower, Table seldom) {
    double left = lower.map(t -> HEADING + high(t, LOWER)).orElse(0.0);
    double right = HEADING + high(seldom, SELDOM);
    return Optional.of(above(points, notes) - Math.max(left, right))
        .filter(room -> room >= BANDS + PLOT);
  }

  private static double note(String text, double wideMm) {
    return 2 + LINE * lines(text, false, wideMm * MM / TYPE);
  }

  private static double high(Table table, double[] widthsMm) {
    List<String> heads = table.columns().stream().map(Table.Column::heading).toList();
    double rows = table.rows().stream().mapToDouble(r -> high(r, widthsMm)).sum();
    return row(lines(heads, widthsMm, true)) + (table.rows().isEmpty() ? row(1) : rows);
  }

  /** A line for another rail stands close below the one before it. */
  private static double high(Table.Row row, double[] widthsMm) {
    int lines = lines(row.cells(), widthsMm, false);
    return row.cells().get(0).isEmpty() ? LINE * lines : row(lines);
  }

  private static double row(int lines) {
    return Math.max(LEAST_ROW, ROW + LINE * lines);
  }

  /** Of the highest cell; the first of the lower speeds is bold, as the third of the points. */
  private static int lines(List<String> cells, double[] widthsMm, boolean bold) {
    int most = 1;
    for (int i = 0; i < cells.size(); i++) {
      boolean point = widthsMm != LOWER && widthsMm != SELDOM && i == POINT;
      boolean heavy = bold || point || (widthsMm == LOWER && i == 0);
      double em = widthsMm[Math.min(i, widthsMm.length - 1)] * MM / TYPE / (point ? LARGER : 1);
      int lines =
          Arrays.stream(cells.get(i).split("\n", -1)).mapToInt(l -> lines(l, heavy, em)).sum();
      most = Math.max(most, lines);
    }
    return most;
  }

  /** Broken between any two words. */
  private static int lines(String text, boolean bold, double em) {
    int lines = 1;
    double used = 0;
    for (String word : text.replace(WARNING, LETTER).split(" ", -1)) {
      double more = LineBreaks.width(word, bold);
      if (used > 0 && used + SPACE + more > em) {
        lines++;
        used = more;
      } else {
        used += (used > 0 ? SPACE : 0) + more;
      }
    }
    return lines;
  }
}
