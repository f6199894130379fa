package gradepost.briefing.line;

import gradepost.briefing.Shown;
import gradepost.pack.Picture;
import java.util.ArrayList;
import java.util.List;

/**
 * The pictures in the rows of one sheet of the line. They take what the rows leave of it: a sheet
 * is never cut elsewhere for them, and one that finds no room stands on the screen alone.
 *
 * @param rows those of each row
 * @param heightsPx how high each row is with them, CSS pixels
 */
record RowPictures(List<List<Shown>> rows, List<Integer> heightsPx) {
  /** How many stand side by side. */
  private static final int MOST = 3;

  /** How wide and how high one is at the most: of one or two, and of three. */
  private static final int WIDE_MM = 33;

  private static final int HIGH_MM = 22;
  private static final int NARROW_MM = 23;
  private static final int LOW_MM = 16;

  /** Smaller ones show nothing. */
  private static final int LEAST_MM = 10;

  private static final double PX_PER_MM = 96 / 25.4;

  /** Above and below. */
  private static final int AIR_PX = 4;

  /**
   * A row without its pictures.
   *
   * @param belowPx how high it is where nothing stands beside what there is to do
   */
  record Bare(int heightPx, int belowPx, List<Views.View> views) {}

  RowPictures {
    rows = List.copyOf(rows);
    heightsPx = List.copyOf(heightsPx);
  }

  /** In the order of travel, as long as there is room. */
  static RowPictures of(List<Bare> rows, int roomPx) {
    int left = roomPx - rows.stream().mapToInt(Bare::heightPx).sum();
    List<List<Shown>> shown = new ArrayList<>();
    List<Integer> heights = new ArrayList<>();
    for (Bare row : rows) {
      List<Shown> all = row.views().stream().limit(MOST).map(v -> shown(v, row)).toList();
      int highest = all.stream().mapToInt(Shown::heightMm).max().orElse(0);
      int withPx = row.belowPx() + (int) (highest * PX_PER_MM) + 1 + AIR_PX;
      boolean fits = highest > 0 && withPx - row.heightPx() <= left;
      left -= fits ? withPx - row.heightPx() : 0;
      heights.add(fits ? withPx : row.heightPx());
      shown.add(fits ? all : all.stream().map(s -> new Shown(s.name(), s.data(), 0, 0)).toList());
    }
    return new RowPictures(shown, heights);
  }

  private static Shown shown(Views.View view, Bare row) {
    boolean narrow = row.views().size() >= MOST;
    Picture picture = view.picture();
    double scale =
        Math.min(
            (double) (narrow ? NARROW_MM : WIDE_MM) / picture.widthPx(),
            (double) (narrow ? LOW_MM : HIGH_MM) / picture.heightPx());
    int widthMm = (int) (picture.widthPx() * scale);
    int heightMm = (int) (picture.heightPx() * scale);
    boolean tells = widthMm >= LEAST_MM && heightMm >= LEAST_MM;
    return new Shown(view.name(), picture.data(), tells ? widthMm : 0, tells ? heightMm : 0);
  }

  /** A row that has a picture is set above it. */
  RowSetting.Lines lines(int row, RowSetting.Lines lines) {
    return rows.get(row).stream().anyMatch(Shown::onPaper) ? lines.below() : lines;
  }
}
