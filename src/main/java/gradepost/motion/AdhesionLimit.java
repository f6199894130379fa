package gradepost.motion;

import gradepost.route.Stretch;
import gradepost.stock.law.AdhesionCurve;
import gradepost.stock.law.AdhesionLaw;
import gradepost.units.Exact;
import java.util.Arrays;

/** What adhesion lets each vehicle and the driven axles use, poor stretches included. */
final class AdhesionLimit {
  private final AdhesionCurve law;
  private final AdhesionCurve poorLaw;
  private final double leastMu;
  private final double ampleForMotorsN;
  private final PiecewiseLinear met;
  private final double[] weightN;
  private final double[] motoredN;
  private final double motoredSumN;

  /** End of each vehicle behind the front; entry 0 is the front itself. */
  private final double[] endM;

  /** Where some vehicle begins or ends to enter or leave a poor stretch, rising. */
  private final double[] cornerM;

  /** Share of each vehicle on poor rail: at {@link #fromM}, and for each metre after it. */
  private final double[] share;

  private final double[] shareRise;
  private double fromM;
  private int nextCorner;

  /** A speed, and the coefficient there; at a lower one it is no less. */
  private double hereMps;

  private double hereMu;

  /** No vehicle is on poor rail within the present piece. */
  private boolean even = true;

  AdhesionLimit(Train train, AdhesionLaw law, LowAdhesionRail poor) {
    this.law = law.curve();
    this.leastMu = law.least();
    this.hereMu = this.law.mu(0);
    this.poorLaw = poor.law().curve();
    this.met = poor.metLength();
    int n = train.vehicles();
    this.weightN = new double[n];
    this.motoredN = new double[n];
    this.share = new double[n];
    this.shareRise = new double[n];
    this.endM = new double[n + 1];
    double sum = 0;
    for (int i = 0; i < n; i++) {
      weightN[i] = train.massKg()[i] * Exact.G;
      motoredN[i] = train.motoredVehicleKg()[i] * Exact.G;
      sum += motoredN[i];
      endM[i + 1] = endM[i] + train.lengthM()[i];
    }
    this.motoredSumN = sum;
    this.ampleForMotorsN = leastMu * sum;
    this.cornerM = corners(poor);
  }

  private double[] corners(LowAdhesionRail poor) {
    double[] all = new double[2 * poor.stretches().size() * endM.length];
    int k = 0;
    for (Stretch stretch : poor.stretches()) {
      for (double end : endM) {
        all[k++] = stretch.fromM() + end;
        all[k++] = stretch.toM() + end;
      }
    }
    Arrays.sort(all);
    return all;
  }

  int vehicles() {
    return weightN.length;
  }

  double weightN(int vehicle) {
    return weightN[vehicle];
  }

  /** Picks what holds from this place on, for a train that gathers no speed. */
  void select(double at, double speed) {
    if (speed != hereMps) {
      hereMps = speed;
      hereMu = law.mu(speed);
    }
    if (cornerM.length == 0) {
      return;
    }
    double probe = at + Forces.CORNER_M;
    int found = Arrays.binarySearch(cornerM, probe);
    nextCorner = found >= 0 ? found : -found - 1;
    while (nextCorner < cornerM.length && cornerM[nextCorner] <= probe) {
      nextCorner++;
    }
    even = true;
    fromM = at;
    double to = nextCorner < cornerM.length ? cornerM[nextCorner] : probe + 1;
    for (int i = 0; i < share.length; i++) {
      double length = endM[i + 1] - endM[i];
      double now = (met.at(probe - endM[i]) - met.at(probe - endM[i + 1])) / length;
      double then = (met.at(to - endM[i]) - met.at(to - endM[i + 1])) / length;
      shareRise[i] = to > probe ? (then - now) / (to - probe) : 0;
      share[i] = now - shareRise[i] * (probe - at);
      even &= now == 0 && then == 0;
    }
  }

  double nextCornerM() {
    return nextCorner < cornerM.length ? cornerM[nextCorner] : Double.POSITIVE_INFINITY;
  }

  /** Whether all vehicles have the same coefficient, {@link #mu}. */
  boolean even() {
    return even;
  }

  /** Whether so much of its weight is there for every vehicle at this speed: spares the law. */
  boolean ample(double share, double speed) {
    return even && (share <= leastMu || (speed <= hereMps && share <= hereMu));
  }

  double mu(double speed) {
    return law.mu(speed);
  }

  double poorMu(double speed) {
    return poorLaw.mu(speed);
  }

  /** Share of a vehicle that is on poor rail. */
  double share(int vehicle, double at) {
    return Math.min(1, Math.max(0, share[vehicle] + shareRise[vehicle] * (at - fromM)));
  }

  /** Whether the driven axles can use so much at any speed. */
  boolean ampleForMotors(double forceN) {
    return even && forceN <= ampleForMotorsN;
  }

  /** What the driven axles can use together. */
  double motoredN(double at, double speed) {
    double mu = law.mu(speed);
    if (even) {
      return mu * motoredSumN;
    }
    double less = poorLaw.mu(speed) - mu;
    double sum = 0;
    for (int i = 0; i < motoredN.length; i++) {
      sum += (mu + less * share(i, at)) * motoredN[i];
    }
    return sum;
  }
}
