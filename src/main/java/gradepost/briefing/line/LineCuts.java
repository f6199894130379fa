package gradepost.briefing.line;

import java.util.ArrayList;
import java.util.List;

/**
 * Cuts the line into sheets: at stations, where a leg is long at a signal or post, and only where
 * the rows do not fit even so between any two of them. The legs of a sheet are chosen by what
 * stands beside the line whatever is driven there, so that a new restriction does not move every
 * cut.
 */
final class LineCuts {
  /**
   * The longest stretch of a sheet: four and a half kilometres, two and three quarters of a mile.
   */
  static final double MOST_M = 4500;

  /** So much is driven for each stop: start, shut off, brake, ease, stand. */
  private static final int LEG_PX = 11 * 18;

  /** How full a sheet of several legs is to be of what always stands there. */
  private static final double FULL = 0.97;

  /** A part is cut again into no more than so many. */
  private static final int MOST_PARTS = 40;

  /** From stop to stop. */
  record Leg(double fromM, double toM) {}

  /**
   * Something that takes room.
   *
   * @param starts whether it belongs to the leg that begins at its place, not to the one that ends
   */
  record Weight(double atM, boolean starts, int heightPx) {}

  /**
   * A sheet.
   *
   * @param firstLeg that it begins in, as {@code lastLeg} counted from 0
   * @param part of that leg, from 1; 1 too where the sheet holds whole legs
   * @param fromRow the first of its rows, {@code toRow} the first after them
   */
  record Cut(
      double fromM, double toM, int firstLeg, int lastLeg, int part, int fromRow, int toRow) {}

  private final List<Leg> legs;
  private final List<Weight> rows;
  private final List<Weight> fixed;
  private final List<Double> places;
  private final int roomPx;
  private final List<Cut> out = new ArrayList<>();

  /**
   * @param rows all of them, in order of travel
   * @param fixed those that stand there whatever is driven
   * @param places signals and posts where a leg may be cut
   */
  LineCuts(List<Leg> legs, List<Weight> rows, List<Weight> fixed, List<Double> places, int roomPx) {
    this.legs = legs;
    this.rows = rows;
    this.fixed = fixed;
    this.places = places.stream().sorted().toList();
    this.roomPx = roomPx;
  }

  List<Cut> cuts() {
    int n = legs.size();
    double[] cost = new double[n + 1];
    int[] from = new int[n + 1];
    for (int to = 1; to <= n; to++) {
      cost[to] = Double.POSITIVE_INFINITY;
      for (int first = to - 1; first >= 0; first--) {
        double all = cost[first] + cost(first, to);
        if (all < cost[to]) {
          cost[to] = all;
          from[to] = first;
        }
      }
    }
    List<int[]> groups = new ArrayList<>();
    for (int to = n; to > 0; to = from[to]) {
      groups.add(0, new int[] {from[to], to});
    }
    groups.forEach(g -> group(g[0], g[1]));
    return List.copyOf(out);
  }

  /** The sheets, and of as many sheets the evenly filled ones. */
  private double cost(int first, int to) {
    double load = 0;
    for (int leg = first; leg < to; leg++) {
      load += load(leg);
    }
    load /= roomPx;
    double share = lengthM(first, to) / MOST_M;
    if (to - first > 1) {
      return load > FULL || share > 1 ? Double.POSITIVE_INFINITY : 1 + load * load / 1000;
    }
    double sheets = Math.max(1, Math.max(up(load), up(share)));
    return sheets + load * load / sheets / 1000;
  }

  private static int up(double value) {
    return (int) Math.ceil(value - 1e-9);
  }

  private double lengthM(int first, int to) {
    return legs.get(to - 1).toM() - legs.get(first).fromM();
  }

  private double load(int leg) {
    return LEG_PX + height(fixed, begin(fixed, leg), begin(fixed, leg + 1));
  }

  /** The first row of a leg; after the last leg the number of all. */
  private int begin(List<Weight> of, int leg) {
    if (leg == 0) {
      return 0;
    }
    return leg == legs.size() ? of.size() : begin(of, legs.get(leg).fromM());
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

  private static int height(List<Weight> of, int from, int to) {
    return of.subList(from, to).stream().mapToInt(Weight::heightPx).sum();
  }

  private boolean fits(int fromRow, int toRow) {
    return height(rows, fromRow, toRow) <= roomPx;
  }

  private void group(int first, int to) {
    if (to - first == 1) {
      leg(first);
    } else if (fits(begin(rows, first), begin(rows, to))) {
      out.add(
          new Cut(
              legs.get(first).fromM(),
              legs.get(to - 1).toM(),
              first,
              to - 1,
              1,
              begin(rows, first),
              begin(rows, to)));
    } else {
      int middle = middle(first, to);
      group(first, middle);
      group(middle, to);
    }
  }

  /** The stop at which several legs are shared out most evenly. */
  private int middle(int first, int to) {
    int best = first + 1;
    double off = Double.POSITIVE_INFINITY;
    for (int cut = first + 1; cut < to; cut++) {
      double before = 0;
      double after = 0;
      for (int leg = first; leg < to; leg++) {
        if (leg < cut) {
          before += load(leg);
        } else {
          after += load(leg);
        }
      }
      if (Math.abs(before - after) < off) {
        off = Math.abs(before - after);
        best = cut;
      }
    }
    return best;
  }

  private void leg(int leg) {
    for (int parts = 1; parts <= MOST_PARTS; parts++) {
      List<Double> shared = shared(leg, parts);
      List<Double> at = withRows(leg, shared);
      boolean close = shared.size() == parts - 1 && fits(leg, at);
      if (close && (at.size() < shared.size() || near(leg, at))) {
        add(leg, at);
        return;
      }
    }
    anywhere(leg);
  }

  /** The signals or posts nearest to where the leg is shared out evenly. */
  private List<Double> shared(int leg, int parts) {
    Leg whole = legs.get(leg);
    List<Double> out = new ArrayList<>();
    for (int k = 1; k < parts; k++) {
      double share = (double) k / parts;
      double last = out.isEmpty() ? whole.fromM() : out.get(out.size() - 1);
      places.stream()
          .filter(p -> p > last + 1 && p < whole.toM() - 1)
          .min((a, b) -> Double.compare(off(leg, a, share), off(leg, b, share)))
          .ifPresent(out::add);
    }
    return out;
  }

  private double off(int leg, double placeM, double share) {
    Leg whole = legs.get(leg);
    int from = begin(fixed, leg);
    double rows =
        (double) height(fixed, from, Math.max(from, at(fixed, placeM))) / Math.max(1, load(leg));
    double way = (placeM - whole.fromM()) / (whole.toM() - whole.fromM());
    return Math.abs((rows + way) / 2 - share);
  }

  /** Without those that would leave a sheet with nothing to tell: then the next is longer. */
  private List<Double> withRows(int leg, List<Double> places) {
    List<Double> out = new ArrayList<>();
    int from = begin(rows, leg);
    for (double place : places) {
      int to = at(rows, place);
      if (to > from && to < begin(rows, leg + 1)) {
        out.add(place);
        from = to;
      }
    }
    return out;
  }

  /** Whether no part is longer than a sheet shows. */
  private boolean near(int leg, List<Double> at) {
    double fromM = legs.get(leg).fromM();
    for (double place : at) {
      if (place - fromM > MOST_M) {
        return false;
      }
      fromM = place;
    }
    return legs.get(leg).toM() - fromM <= MOST_M;
  }

  private boolean fits(int leg, List<Double> at) {
    int fromRow = begin(rows, leg);
    List<Double> ends = new ArrayList<>(at);
    ends.add(legs.get(leg).toM());
    for (int i = 0; i < ends.size(); i++) {
      boolean last = i == ends.size() - 1;
      int toRow = last ? begin(rows, leg + 1) : at(rows, ends.get(i));
      if (!fits(fromRow, toRow)) {
        return false;
      }
      fromRow = toRow;
    }
    return true;
  }

  private void add(int leg, List<Double> at) {
    double fromM = legs.get(leg).fromM();
    int fromRow = begin(rows, leg);
    for (int i = 0; i < at.size(); i++) {
      int toRow = at(rows, at.get(i));
      out.add(new Cut(fromM, at.get(i), leg, leg, i + 1, fromRow, toRow));
      fromM = at.get(i);
      fromRow = toRow;
    }
    double end = legs.get(leg).toM();
    out.add(new Cut(fromM, end, leg, leg, at.size() + 1, fromRow, begin(rows, leg + 1)));
  }

  /** As much on each sheet as it has room for. */
  private void anywhere(int leg) {
    double fromM = legs.get(leg).fromM();
    int row = begin(rows, leg);
    int end = begin(rows, leg + 1);
    for (int part = 1; row < end || part == 1; part++) {
      int to = row;
      while (to < end
          && fits(row, to + 1)
          && (to == row || rows.get(to).atM() - fromM <= MOST_M || to + 1 == end)) {
        to++;
      }
      to = Math.max(to, Math.min(end, row + 1));
      double toM = to == end ? legs.get(leg).toM() : rows.get(to).atM();
      out.add(new Cut(fromM, toM, leg, leg, part, row, to));
      fromM = toM;
      row = to;
    }
  }
}
