package gradepost.drive.bound;

import gradepost.motion.PiecewiseLinear;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A leg cut into segments, with what holds on each of them whatever the train does: the force of
 * the track, and the greatest kinetic energy that it can have. Kinetic energy is in joules for each
 * kilogram of inertia, half the square of the speed.
 */
final class Segments {
  /** The longest segment is cut shorter towards a stand: to this share of what lies between. */
  private static final double SHARE = 0.06;

  private static final double SHORTEST_M = 0.1;

  final double[] placeM;

  /** By segment: mean of the track's force, and its moment about the middle, N/kg and N m²/kg. */
  final double[] meanN;

  final double[] momentNM2;

  /** The greatest kinetic energy at a place, and anywhere on a segment. */
  final double[] mostAt;

  final double[] mostOn;

  /** How far the track's force lies from its mean at most. */
  private final double[] spreadN;

  Segments(RelaxedLeg leg, double longestM) {
    placeM = places(leg, longestM);
    int count = placeM.length - 1;
    meanN = new double[count];
    momentNM2 = new double[count];
    spreadN = new double[count];
    for (int k = 0; k < count; k++) {
      sum(leg.track(), k);
    }
    mostAt = new double[count + 1];
    mostOn = new double[count];
    bound(leg);
  }

  int count() {
    return meanN.length;
  }

  double lengthM(int k) {
    return placeM[k + 1] - placeM[k];
  }

  /** The greatest kinetic energy anywhere. */
  double most() {
    double most = 0;
    for (double on : mostOn) {
      most = Math.max(most, on);
    }
    return most;
  }

  private static double[] places(RelaxedLeg leg, double longestM) {
    TreeSet<Double> edges = new TreeSet<>(List.of(leg.toM()));
    for (RelaxedLeg.Cap cap : leg.caps()) {
      if (cap.toM() > leg.fromM() && cap.toM() < leg.toM()) {
        edges.add(cap.toM());
      }
    }
    List<Double> places = new ArrayList<>(List.of(leg.fromM()));
    double at = leg.fromM();
    for (double edge : edges) {
      while (at < edge) {
        double near = Math.min(at - leg.fromM(), leg.toM() - at);
        double length = Math.min(longestM, Math.max(SHORTEST_M, SHARE * near));
        at = edge - at < 1.5 * length ? edge : at + length;
        places.add(at);
      }
    }
    return places.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Exact: the track's force is linear between its knots. */
  private void sum(PiecewiseLinear track, int k) {
    double end = placeM[k + 1];
    double middle = (placeM[k] + end) / 2;
    double at = placeM[k];
    double force = track.at(at);
    double low = force;
    double high = force;
    double sum = 0;
    double moment = 0;
    for (int knot = track.piece(at) + 1; at < end; knot++) {
      double next = knot < track.knots() ? Math.min(track.x(knot), end) : end;
      double then = track.at(next);
      double mean = (force + then) / 2;
      sum += (next - at) * mean;
      // Simpson's rule, of a parabola.
      double ends = force * (at - middle) + then * (next - middle);
      moment += (next - at) / 6 * (ends + 4 * mean * ((at + next) / 2 - middle));
      low = Math.min(low, then);
      high = Math.max(high, then);
      at = next;
      force = then;
    }
    meanN[k] = sum / lengthM(k);
    momentNM2[k] = moment;
    spreadN[k] = Math.max(high - meanN[k], meanN[k] - low);
  }

  /**
   * Under the caps, under full power from the start, and under the full brake to the end and to
   * every lower cap.
   */
  private void bound(RelaxedLeg leg) {
    int count = count();
    double[] cap = caps(leg);
    double[] powered = new double[count + 1];
    powered[0] = Math.min(cap[0], energy(leg.startMps()));
    for (int k = 0; k < count; k++) {
      double from = Math.min(powered[k], cap[k]);
      double v = Math.sqrt(2 * from);
      // As long as it has more than here, it gains no more than this.
      double gain = leg.effort().from(v) - leg.resistance().atN(v) - meanN[k] + spreadN[k];
      powered[k] = from;
      powered[k + 1] = Math.min(cap[k], from + lengthM(k) * Math.max(0, gain));
    }
    double braked = Math.min(cap[count - 1], energy(leg.endMps()));
    mostAt[count] = Math.min(braked, powered[count]);
    for (int k = count - 1; k >= 0; k--) {
      double to = Math.min(braked, cap[k]);
      double most =
          leg.brake().from(Math.sqrt(2 * to))
              + leg.resistance().atN(Math.sqrt(2 * cap[k]))
              + meanN[k]
              + spreadN[k];
      braked = Math.min(cap[k], to + lengthM(k) * Math.max(0, most));
      mostOn[k] = Math.min(braked, Math.max(powered[k], powered[k + 1]));
      mostAt[k] = Math.min(powered[k], k == 0 ? braked : Math.min(braked, cap[k - 1]));
    }
  }

  private double[] caps(RelaxedLeg leg) {
    double[] cap = new double[count()];
    int i = 0;
    for (int k = 0; k < cap.length; k++) {
      while (i + 1 < leg.caps().size() && leg.caps().get(i).toM() <= placeM[k]) {
        i++;
      }
      cap[k] = energy(leg.caps().get(i).mps());
    }
    return cap;
  }

  static double energy(double mps) {
    return mps * mps / 2;
  }
}
