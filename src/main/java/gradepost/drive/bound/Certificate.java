package gradepost.drive.bound;

/**
 * What slopes prove of a relaxed leg; the proof is in the note of this package. A slope {@code e},
 * at most 1, belongs to each place of the {@link Segments}, and is linear between them.
 */
final class Certificate {
  private final RelaxedLeg leg;
  private final Segments cut;
  private final double stepMps;

  /** By column: kinetic energy, resistance, effort from here up. */
  private final double[] energy;

  private final double[] resistance;
  private final double[] effort;

  /**
   * By cell between two columns: a tangent of 1/v, which nowhere lies above it, at the lower and at
   * the upper column, s/m.
   */
  private final double[] slowLow;

  private final double[] slowHigh;

  /** By segment: the cell in which the least was found last. */
  private final int[] found;

  Certificate(RelaxedLeg leg, Segments cut, double stepMps) {
    this.leg = leg;
    this.cut = cut;
    this.stepMps = stepMps;
    int columns = (int) (Math.sqrt(2 * cut.most()) / stepMps) + 2;
    energy = new double[columns];
    resistance = new double[columns];
    effort = new double[columns];
    slowLow = new double[columns];
    slowHigh = new double[columns];
    found = new int[cut.count()];
    for (int i = 0; i < columns; i++) {
      double v = i * stepMps;
      energy[i] = Segments.energy(v);
      resistance[i] = leg.resistance().atN(v);
      effort[i] = leg.effort().from(v);
      double touch = i == 0 ? stepMps : v + stepMps / 2;
      slowLow[i] = tangent(touch, energy[i]);
      slowHigh[i] = tangent(touch, Segments.energy(v + stepMps));
    }
  }

  private static double tangent(double mps, double energy) {
    return (1 - (energy - Segments.energy(mps)) / (mps * mps)) / mps;
  }

  /**
   * No run of this leg costs less than this, J/kg, with so many watts for each kilogram as the
   * price of a second.
   */
  double least(double wattsPerKg, double[] slope) {
    return sum(wattsPerKg, slope, 0, cut.count(), true);
  }

  /** What the segments between two places have in it, looked for near where it was found last. */
  double part(double wattsPerKg, double[] slope, int from, int to) {
    return sum(wattsPerKg, slope, from, to, false);
  }

  private double sum(double watts, double[] slope, int from, int to, boolean everywhere) {
    double sum = 0;
    if (from == 0) {
      sum -= (1 - slope[0]) * Segments.energy(leg.startMps());
    }
    if (to == cut.count()) {
      sum += (1 - slope[to]) * Segments.energy(leg.endMps());
    }
    for (int k = from; k < to; k++) {
      double length = cut.lengthM(k);
      double rise = (slope[k + 1] - slope[k]) / length;
      double track = (1 - (slope[k] + slope[k + 1]) / 2) * cut.meanN[k] * length;
      double ends =
          everywhere
              ? everywhere(k, watts, slope[k], rise) + everywhere(k, watts, slope[k + 1], rise)
              : near(k, watts, slope[k], rise) + near(k, watts, slope[k + 1], rise);
      sum += track - rise * cut.momentNM2[k] + length / 2 * ends;
    }
    return sum;
  }

  private int last(int k) {
    return Math.min((int) (Math.sqrt(2 * cut.mostOn[k]) / stepMps), energy.length - 2);
  }

  private double everywhere(int k, double watts, double e, double rise) {
    int last = last(k);
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= last; i++) {
      least = Math.min(least, cell(k, i, watts, e, rise));
    }
    return least;
  }

  private double near(int k, double watts, double e, double rise) {
    int last = last(k);
    int i = Math.min(found[k], last);
    double least = cell(k, i, watts, e, rise);
    for (int way = -1; way <= 1; way += 2) {
      while (i + way >= 0 && i + way <= last) {
        double next = cell(k, i + way, watts, e, rise);
        if (next > least) {
          break;
        }
        least = next;
        i += way;
      }
    }
    found[k] = i;
    return least;
  }

  /** No more than the Hamiltonian anywhere in a cell, as far as the train can be in it. */
  private double cell(int k, int i, double watts, double e, double rise) {
    double up = energy[i + 1];
    double upN = resistance[i + 1];
    double upSlow = slowHigh[i];
    if (up > cut.mostOn[k]) {
      double share = (cut.mostOn[k] - energy[i]) / (up - energy[i]);
      up = cut.mostOn[k];
      upN = resistance[i] + share * (upN - resistance[i]);
      upSlow = slowLow[i] + share * (upSlow - slowLow[i]);
    }
    double low = rise * energy[i] + (1 - e) * resistance[i] + watts * slowLow[i];
    double high = rise * up + (1 - e) * upN + watts * upSlow;
    return Math.min(low, high) + Math.min(0, e) * effort[i];
  }

  /** Looks for the least first where a run is. */
  void startFrom(double[] run) {
    for (int k = 0; k < found.length; k++) {
      found[k] = (int) (Math.sqrt(run[k] + run[k + 1]) / stepMps);
    }
  }
}
