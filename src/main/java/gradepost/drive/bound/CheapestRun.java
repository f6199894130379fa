package gradepost.drive.bound;

import java.util.Arrays;

/**
 * The run of a relaxed leg that costs least at a price of time, as far as a grid of places and
 * speeds tells. It is a good guess, and nothing that is proved rests on it.
 *
 * <p>Dynamic programming from the end to the start. From a place and speed the train coasts, takes
 * full power, or goes to where a joule more would cost a joule; it may brake to any lower speed at
 * once, since the greatest speeds of {@link Segments} already leave room for the brake.
 */
final class CheapestRun {
  /** More than any leg costs, J/kg. */
  private static final double NEVER = 1e9;

  private final RelaxedLeg leg;
  private final Segments cut;
  private final double stepMps;

  /** By column: kinetic energy, resistance and effort. */
  private final double[] energy;

  private final double[] resistance;
  private final double[] effort;

  /** By place and column: the least cost to the end, J/kg. */
  private final double[][] cost;

  /** By place: columns from where neither more nor less speed is worth its energy. */
  private final int[][] even;

  /** By place: kinetic energy of the run. */
  final double[] run;

  private double wattsPerKg;
  private double least;
  private double seconds;

  CheapestRun(RelaxedLeg leg, Segments cut, double stepMps) {
    this.leg = leg;
    this.cut = cut;
    this.stepMps = stepMps;
    int columns = (int) (Math.sqrt(2 * cut.most()) / stepMps) + 2;
    energy = new double[columns];
    resistance = new double[columns];
    effort = new double[columns];
    for (int i = 0; i < columns; i++) {
      energy[i] = Segments.energy(i * stepMps);
      resistance[i] = leg.resistance().atN(i * stepMps);
      effort[i] = leg.effort().from(i * stepMps);
    }
    cost = new double[cut.count() + 1][columns];
    even = new int[cut.count() + 1][0];
    run = new double[cut.count() + 1];
  }

  /** Finds the run at this price of a second. */
  void solve(double price) {
    wattsPerKg = price;
    double[] end = cost[cut.count()];
    for (int i = 0; i < end.length; i++) {
      // What is short of the speed at the end is dear.
      end[i] = 2 * Math.max(0, Segments.energy(leg.endMps()) - energy[i]);
    }
    for (int k = cut.count() - 1; k >= 0; k--) {
      back(k);
    }
    run[0] = Segments.energy(leg.startMps());
    seconds = 0;
    for (int k = 0; k < cut.count(); k++) {
      double v = Math.sqrt(2 * run[k]);
      run[k + 1] = then(k, run[k], v, leg.resistance().atN(v), leg.effort().from(v));
      seconds += 2 * cut.lengthM(k) / (v + Math.sqrt(2 * run[k + 1]));
    }
  }

  /** How long it takes. */
  double seconds() {
    return seconds;
  }

  private void back(int k) {
    double[] row = cost[k];
    double before = NEVER;
    for (int i = 0; i < row.length; i++) {
      then(k, energy[i], i * stepMps, resistance[i], effort[i]);
      before = Math.min(least, before);
      row[i] = before;
    }
    int[] found = new int[row.length];
    int count = 0;
    for (int i = 1; i + 1 < row.length; i++) {
      double here = row[i] + energy[i];
      if (here <= row[i - 1] + energy[i - 1] && here < row[i + 1] + energy[i + 1]) {
        found[count++] = i;
      }
    }
    even[k] = Arrays.copyOf(found, count);
  }

  /** Kinetic energy behind a segment; what it costs from before it to the end is the least. */
  private double then(int k, double from, double mps, double resistanceN, double effortN) {
    double length = cut.lengthM(k);
    double[] row = cost[k + 1];
    double most = cut.mostAt[k + 1];
    double coasted = from - length * (resistanceN + cut.meanN[k]);
    double low = Math.min(most, Math.max(0, coasted));
    double high = Math.min(most, coasted + length * effortN);
    double timed = 2 * wattsPerKg * length;
    double then = low;
    least = low == 0 && mps == 0 ? NEVER : at(row, low, mps, timed);
    if (high > low) {
      double powered = at(row, high, mps, timed);
      if (powered < least) {
        least = powered;
        then = high;
      }
      for (int i : even[k + 1]) {
        if (energy[i] > low && energy[i] < high) {
          double held = row[i] + energy[i] + timed / (mps + i * stepMps);
          if (held < least) {
            least = held;
            then = energy[i];
          }
        }
      }
    }
    least -= Math.min(most, coasted);
    return then;
  }

  private double at(double[] row, double to, double mps, double timed) {
    double v = Math.sqrt(2 * to);
    int i = Math.min((int) (v / stepMps), row.length - 2);
    double share = (to - energy[i]) / (energy[i + 1] - energy[i]);
    return row[i] + share * (row[i + 1] - row[i]) + to + timed / (mps + v);
  }
}
