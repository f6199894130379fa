package gradepost.drive;

import java.util.ArrayList;
import java.util.List;

/**
 * A braking of the seated unit of {@link EvenLine} on the level with its automatic brake, in small
 * steps of time: a demand answers after 0.5 s at the front, and at each valve later by its distance
 * at 250 m/s (valves in the middle of four cars of 20 m). Cylinders fill by 11 psi a second and
 * empty by 3. Each car takes off a quarter of 0.85 m/s² at 46 psi above its springs' 4.
 */
final class PencilAlong {
  private static final double STEP_S = 0.0005;
  private static final double[] VALVES_M = {10, 30, 50, 70};

  private final List<Double> leading = new ArrayList<>();
  private double askedPsi;
  private double nextPsi;
  private double nextS = Double.POSITIVE_INFINITY;
  private double mps;
  private double metres;

  PencilAlong(double fromMps) {
    this.mps = fromMps;
    leading.add(0.0);
  }

  /** Asks for a pressure; it is answered after half a second. */
  PencilAlong ask(double psi) {
    nextPsi = psi;
    nextS = seconds() + 0.5;
    return this;
  }

  /** Waits. */
  PencilAlong forS(double waitS) {
    double until = seconds() + waitS;
    while (seconds() < until - STEP_S / 2) {
      step();
    }
    return this;
  }

  /** Waits until the speed is down to this. */
  PencilAlong downTo(double toMps) {
    while (mps > toMps) {
      step();
    }
    return this;
  }

  private void step() {
    double lead = leading.get(leading.size() - 1);
    if (seconds() >= nextS) {
      askedPsi = nextPsi;
      nextS = Double.POSITIVE_INFINITY;
    }
    double next =
        askedPsi > lead
            ? Math.min(askedPsi, lead + 11 * STEP_S)
            : Math.max(askedPsi, lead - 3 * STEP_S);
    double off = 0;
    for (double valve : VALVES_M) {
      int then = leading.size() - 1 - (int) Math.round(valve / 250 / STEP_S);
      off += then < 0 ? 0 : 0.85 / 46 / 4 * Math.max(0, leading.get(then) - 4);
    }
    leading.add(next);
    metres += mps * STEP_S - off * STEP_S * STEP_S / 2;
    mps -= off * STEP_S;
  }

  double seconds() {
    return (leading.size() - 1) * STEP_S;
  }

  double metres() {
    return metres;
  }

  double mps() {
    return mps;
  }
}
