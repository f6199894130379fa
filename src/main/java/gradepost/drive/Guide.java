package gradepost.drive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where and how far power is taken on a leg, and to what speeds it is braked: what a driver is to
 * aim for before the rules of driving turn it into instructions.
 *
 * @param powers in order
 * @param releases where a brake comes off before a reduction
 * @param trace speeds along the way
 */
record Guide(List<Power> powers, List<Release> releases, List<Release> trace) {
  /** Places of the guide are those of a grid: a train may be so far from them. */
  private static final double NEAR_M = 60;

  /** Behind the guide by this share of its speed, power is taken by the rules alone. */
  private static final double FALLEN = 0.75;

  /** Power from a place on, up to a notch and a speed (infinite: as the rules have it). */
  record Power(double onM, int notch, double offM, double offMps) {}

  /** A speed at a place. */
  record Release(double atM, double mps) {}

  static final Guide NONE = new Guide(List.of(), List.of(), List.of());

  boolean guides() {
    return !powers.isEmpty();
  }

  /** The power that was begun last at a place, by its index; −1 before the first. */
  int powerAt(double atM) {
    int index = -1;
    for (int i = 0; i < powers.size(); i++) {
      if (powers.get(i).onM() <= atM + 1) {
        index = i;
      }
    }
    return index;
  }

  /** Where power is to be taken next. */
  double nextOnM(double atM) {
    for (Power power : powers) {
      if (power.onM() > atM) {
        return power.onM();
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** Guides that differ from this one in one thing, by a unit of speed or a little way. */
  List<Guide> neighbours(double unitMps) {
    List<Guide> all = new ArrayList<>();
    for (int i = 0; i < powers.size(); i++) {
      Power power = powers.get(i);
      if (power.offMps() < Double.POSITIVE_INFINITY) {
        all.add(
            with(i, new Power(power.onM(), power.notch(), power.offM(), power.offMps() - unitMps)));
        all.add(
            with(i, new Power(power.onM(), power.notch(), power.offM(), power.offMps() + unitMps)));
      }
      if (i > 0) {
        for (double by : new double[] {-NEAR_M, NEAR_M}) {
          double onM = power.onM() + by;
          if (onM > powers.get(i - 1).offM() && onM < power.offM()) {
            all.add(with(i, new Power(onM, power.notch(), power.offM(), power.offMps())));
          }
        }
        List<Power> fewer = new ArrayList<>(powers);
        fewer.remove(i);
        all.add(new Guide(fewer, releases, trace));
      }
    }
    for (int i = 0; i < releases.size(); i++) {
      for (double by : new double[] {-2 * unitMps, 2 * unitMps}) {
        List<Release> other = new ArrayList<>(releases);
        other.set(i, new Release(releases.get(i).atM(), Math.max(1, releases.get(i).mps() + by)));
        all.add(new Guide(powers, other, trace));
      }
    }
    return all;
  }

  private Guide with(int index, Power power) {
    List<Power> other = new ArrayList<>(powers);
    other.set(index, power);
    return new Guide(other, releases, trace);
  }

  /** Whether the guide has power on here, or the train has fallen far behind it. */
  boolean wantsPower(double atM, double mps, int done) {
    int index = powerAt(atM);
    boolean on = index > done && atM < powers.get(index).offM() + NEAR_M;
    return on || mps < FALLEN * speedAt(atM);
  }

  private double speedAt(double atM) {
    for (int i = 1; i < trace.size(); i++) {
      Release to = trace.get(i);
      if (to.atM() >= atM) {
        Release from = trace.get(i - 1);
        double share = (atM - from.atM()) / (to.atM() - from.atM());
        return from.mps() + share * (to.mps() - from.mps());
      }
    }
    return 0;
  }

  /** The speed that a brake before this place is released at. */
  Optional<Double> releaseBefore(double atM) {
    Optional<Double> found = Optional.empty();
    for (Release release : releases) {
      if (release.atM() > atM - 300 && release.atM() < atM + 100) {
        found = Optional.of(release.mps());
      }
    }
    return found;
  }

  /** Collects a guide. */
  static final class Maker {
    private final List<Power> powers = new ArrayList<>();
    private final List<Release> releases = new ArrayList<>();
    private final List<Release> trace = new ArrayList<>();
    private double onM;
    private int notch;

    void point(double atM, double mps) {
      trace.add(new Release(atM, mps));
    }

    void power(double atM, int to, boolean already) {
      onM = already ? onM : atM;
      notch = already ? Math.max(notch, to) : to;
    }

    void off(double atM, double mps) {
      powers.add(new Power(onM, notch, atM, mps));
    }

    void released(double atM, double mps) {
      releases.add(new Release(atM, mps));
    }

    Guide guide() {
      return new Guide(List.copyOf(powers), List.copyOf(releases), List.copyOf(trace));
    }
  }
}
