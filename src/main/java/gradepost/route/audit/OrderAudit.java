package gradepost.route.audit;

import gradepost.route.LineHoles.Place;
import gradepost.route.Route;
import gradepost.route.Signal;
import gradepost.route.audit.AuditText.Entry;
import gradepost.route.place.Direction;
import gradepost.text.Mistake;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * Lists that are kept in the order of the line but for an entry or two: there the mileage is wrong
 * more often than the order. A list that is in no order is left alone.
 */
final class OrderAudit {
  /** Up to this share of a list may be out of order and the list still count as ordered. */
  private static final double STRAY_SHARE = 0.1;

  private static final double SLACK_M = 0.5;

  private final Ground ground;
  private final List<AuditFinding> out;

  OrderAudit(Ground ground, List<AuditFinding> out) {
    this.ground = ground;
    this.out = out;
  }

  void run() {
    Route route = ground.route();
    list("gradient", route.gradients(), g -> ground.from(g.extent()), g -> "", "from");
    list("curve", route.curves(), c -> ground.from(c.extent()), c -> "", "from");
    list(
        "station",
        route.stations(),
        s -> ground.from(s.platforms().get(0).extent()),
        s -> s.name(),
        "platforms");
    list("junction", route.junctions(), j -> ground.from(j.extent()), j -> j.name(), "from");
    list("landmark", route.landmarks(), m -> ground.at(m.location()), m -> m.name(), "at");
    list("structure", route.structures(), s -> ground.from(s.extent()), s -> s.name(), "");
    for (Direction direction : Direction.values()) {
      List<Signal> signals =
          route.signals().stream().filter(s -> s.direction() == direction).toList();
      list("signal", signals, s -> ground.at(s.location()), s -> s.id(), "at");
    }
  }

  private <T> void list(
      String noun, List<T> entries, ToDoubleFunction<T> at, Function<T, String> name, String key) {
    double[] forward = entries.stream().mapToDouble(at).toArray();
    double[] backward = new double[forward.length];
    for (int i = 0; i < forward.length; i++) {
      backward[i] = -forward[i];
    }
    boolean[] rising = kept(forward);
    boolean[] falling = kept(backward);
    boolean[] kept = count(rising) >= count(falling) ? rising : falling;
    int strays = kept.length - count(kept);
    if (strays == 0 || strays > Math.max(1, kept.length * STRAY_SHARE) || kept.length < 4) {
      return;
    }
    for (int i = 0; i < kept.length; i++) {
      if (!kept[i]) {
        Entry entry = new Entry(noun, name.apply(entries.get(i)));
        out.add(new AuditFinding(stray(entry, forward, kept, i), entries.get(i), key));
      }
    }
  }

  private Mistake stray(Entry entry, double[] at, boolean[] kept, int index) {
    int before = index - 1;
    while (before >= 0 && !kept[before]) {
      before--;
    }
    int after = index + 1;
    while (after < kept.length && !kept[after]) {
      after++;
    }
    Place place = ground.place(at[index]);
    if (before < 0) {
      return AuditText.OUT_OF_ORDER_BEFORE.with(entry, place, ground.place(at[after]));
    }
    Place last = ground.place(at[before]);
    return after == kept.length
        ? AuditText.OUT_OF_ORDER_AFTER.with(entry, place, last)
        : AuditText.OUT_OF_ORDER_BETWEEN.with(entry, place, last, ground.place(at[after]));
  }

  private static int count(boolean[] marks) {
    int count = 0;
    for (boolean mark : marks) {
      count += mark ? 1 : 0;
    }
    return count;
  }

  /** Which entries make the longest run that does not fall. */
  private static boolean[] kept(double[] values) {
    int n = values.length;
    List<Integer> tails = new ArrayList<>();
    int[] previous = new int[n];
    for (int i = 0; i < n; i++) {
      int low = 0;
      int high = tails.size();
      while (low < high) {
        int middle = (low + high) >>> 1;
        if (values[tails.get(middle)] <= values[i] + SLACK_M) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      previous[i] = low == 0 ? -1 : tails.get(low - 1);
      if (low == tails.size()) {
        tails.add(i);
      } else {
        tails.set(low, i);
      }
    }
    boolean[] kept = new boolean[n];
    for (int i = tails.isEmpty() ? -1 : tails.get(tails.size() - 1); i >= 0; i = previous[i]) {
      kept[i] = true;
    }
    return kept;
  }
}
