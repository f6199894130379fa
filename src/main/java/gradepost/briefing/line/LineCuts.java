package gradepost.briefing.line;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleBiFunction;

/**
 * Cuts the line into as few sheets as may be: at stations, else at signals or posts, and only where
 * the rows do not fit even so between any two of them. The cuts are chosen by what stands beside
 * the line whatever is driven there, with room to spare, so that a new restriction seldom moves
 * one; a sheet that it makes too full shares with the next, or is cut itself.
 */
final class LineCuts {
  /** The longest stretch of a sheet: some four kilometres, two and a half miles. */
  static final double MOST_M = 4030;

  /** So much is driven where a leg begins: the start, and power. */
  private static final int BEGIN_PX = 2 * 18;

  /** And where it ends: shut off, brake, ease, stand. */
  private static final int END_PX = 8 * 18;

  /** And where a lower speed begins: shut off or brake, and power again. */
  static final int LOWER_PX = 2 * 15;

  /** What a cut at a signal or at a post costs, in sheets: a sheet more is dearer than many. */
  private static final double AT_SIGNAL = 0.010;

  private static final double AT_POST = 0.012;

  /** What it costs, in sheets, that they are filled unevenly. */
  private static final double UNEVEN = 0.001;

  /** A sheet that is too full, too long or empty is the last resort. */
  private static final double LAST_RESORT = 50;

  /** And more where it ends at buffer stops: one brake after another. */
  private static final int TERMINAL_PX = 8 * 18;

  /**
   * From stop to stop.
   *
   * @param terminal whether it ends at buffer stops
   */
  record Leg(double fromM, double toM, boolean terminal) {}

  /**
   * Something that takes room.
   *
   * @param starts whether it belongs to the leg that begins at its place, not to the one that ends
   */
  record Weight(double atM, boolean starts, int heightPx) {}

  /**
   * Where a leg may be cut.
   *
   * @param signal whether it is one; else a post
   */
  record Place(double atM, boolean signal) {}

  /**
   * A sheet.
   *
   * @param fromRow the first of its rows, {@code toRow} the first after them
   */
  record Cut(double fromM, double toM, int fromRow, int toRow) {}

  /**
   * Where a sheet may begin or end.
   *
   * @param price of a cut there
   * @param fixedPx what always stands before it, and {@code row} the first row at or after it
   */
  private record Joint(double atM, double price, double fixedPx, int row) {}

  private final List<Weight> rows;
  private final int[] rowsPx;
  private final int roomPx;
  private final List<Joint> joints = new ArrayList<>();
  private final List<Cut> out = new ArrayList<>();

  /**
   * @param rows all of them, in order of travel
   * @param fixed those that stand there whatever is driven
   * @param places where a leg may be cut
   */
  LineCuts(List<Leg> legs, List<Weight> rows, List<Weight> fixed, List<Place> places, int roomPx) {
    this.rows = rows;
    this.rowsPx = sums(rows);
    this.roomPx = roomPx;
    int[] fixedPx = sums(fixed);
    List<Place> sorted = places.stream().sorted(Comparator.comparingDouble(Place::atM)).toList();
    double drivenPx = 0;
    joints.add(new Joint(legs.get(0).fromM(), 0, 0, 0));
    for (int i = 0; i < legs.size(); i++) {
      Leg leg = legs.get(i);
      drivenPx += BEGIN_PX;
      for (Place place : sorted) {
        boolean within = place.atM() > last().atM() + 1 && place.atM() < leg.toM() - 1;
        if (within) {
          double before = fixedPx[at(fixed, place.atM())] + drivenPx;
          double price = place.signal() ? AT_SIGNAL : AT_POST;
          joints.add(new Joint(place.atM(), price, before, at(rows, place.atM())));
        }
      }
      drivenPx += END_PX + (leg.terminal() ? TERMINAL_PX : 0);
      boolean end = i == legs.size() - 1;
      double before = fixedPx[end ? fixed.size() : begin(fixed, leg.toM())] + drivenPx;
      joints.add(new Joint(leg.toM(), 0, before, end ? rows.size() : begin(rows, leg.toM())));
    }
  }

  private Joint last() {
    return joints.get(joints.size() - 1);
  }

  private static int[] sums(List<Weight> of) {
    int[] sums = new int[of.size() + 1];
    for (int i = 0; i < of.size(); i++) {
      sums[i + 1] = sums[i] + of.get(i).heightPx();
    }
    return sums;
  }

  /** The first row of what begins at a stop. */
  private static int begin(List<Weight> of, double stopM) {
    int row = 0;
    while (row < of.size()
        && (of.get(row).atM() < stopM - 1e-6
            || (of.get(row).atM() <= stopM + 1e-6 && !of.get(row).starts()))) {
      row++;
    }
    return row;
  }

  /** The first row at or after a signal or post. */
  private static int at(List<Weight> of, double placeM) {
    int row = 0;
    while (row < of.size() && of.get(row).atM() < placeM - 1e-6) {
      row++;
    }
    return row;
  }

  /** The sheets, in order of travel. */
  List<Cut> cuts() {
    List<int[]> sheets = best(0, joints.size() - 1, this::fixedLoad);
    for (int i = 0; i < sheets.size(); i++) {
      if (!fits(sheets.get(i))) {
        share(sheets, i);
      }
    }
    for (int[] sheet : sheets) {
      if (fits(sheet)) {
        add(sheet);
      } else {
        // What is driven there takes more room: this sheet is cut, and no other.
        for (int[] part : best(sheet[0], sheet[1], this::load)) {
          if (fits(part)) {
            add(part);
          } else {
            anywhere(joints.get(part[0]), joints.get(part[1]));
          }
        }
      }
    }
    return List.copyOf(out);
  }

  /** Cuts a sheet that is too full and one beside it elsewhere, where both fit then. */
  private void share(List<int[]> sheets, int full) {
    for (int first : new int[] {full, full - 1}) {
      if (first >= 0 && first + 1 < sheets.size()) {
        int from = sheets.get(first)[0];
        int to = sheets.get(first + 1)[1];
        List<int[]> both = best(from, to, this::load);
        if (both.size() == 2 && both.stream().allMatch(this::fits)) {
          sheets.set(first, both.get(0));
          sheets.set(first + 1, both.get(1));
          return;
        }
      }
    }
  }

  private void add(int[] sheet) {
    Joint from = joints.get(sheet[0]);
    Joint to = joints.get(sheet[1]);
    out.add(new Cut(from.atM(), to.atM(), from.row(), to.row()));
  }

  private double load(int from, int to) {
    return (double) (rowsPx[joints.get(to).row()] - rowsPx[joints.get(from).row()]) / roomPx;
  }

  private double fixedLoad(int from, int to) {
    return (joints.get(to).fixedPx() - joints.get(from).fixedPx()) / roomPx;
  }

  private boolean fits(int[] sheet) {
    return load(sheet[0], sheet[1]) <= 1;
  }

  /** The cheapest sheets between two joints, as pairs of joints. */
  private List<int[]> best(int first, int end, ToDoubleBiFunction<Integer, Integer> load) {
    double[] cost = new double[end + 1];
    int[] before = new int[end + 1];
    for (int to = first + 1; to <= end; to++) {
      cost[to] = Double.POSITIVE_INFINITY;
      double price = to == end ? 0 : joints.get(to).price();
      for (int from = to - 1; from >= first; from--) {
        double all = cost[from] + price + cost(from, to, load.applyAsDouble(from, to));
        if (all < cost[to]) {
          cost[to] = all;
          before[to] = from;
        }
      }
    }
    List<int[]> sheets = new ArrayList<>();
    for (int to = end; to > first; to = before[to]) {
      sheets.add(0, new int[] {before[to], to});
    }
    return sheets;
  }

  private double cost(int from, int to, double load) {
    double share = (joints.get(to).atM() - joints.get(from).atM()) / MOST_M;
    double over = Math.max(0, load - 1) + Math.max(0, share - 1);
    boolean empty = joints.get(from).row() == joints.get(to).row();
    double last = empty || over > 1e-9 ? LAST_RESORT * (1 + over) : 0;
    return 1 + UNEVEN * load * load + last;
  }

  /** As much on each sheet as it has room for. */
  private void anywhere(Joint from, Joint end) {
    double fromM = from.atM();
    int row = from.row();
    do {
      int to = Math.min(end.row(), row + 1);
      while (to < end.row()
          && rowsPx[to + 1] - rowsPx[row] <= roomPx
          && (rows.get(to).atM() - fromM <= MOST_M || to + 1 == end.row())) {
        to++;
      }
      double toM = to == end.row() ? end.atM() : rows.get(to).atM();
      out.add(new Cut(fromM, toM, row, to));
      fromM = toM;
      row = to;
    } while (row < end.row());
  }
}
