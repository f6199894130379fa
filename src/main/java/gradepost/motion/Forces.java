package gradepost.motion;

import gradepost.stock.RunningResistance;
import gradepost.stock.law.AdhesionLaw;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The right-hand side of the equation of motion. Every force is smooth within a piece; {@link
 * #select} picks the pieces that hold from a state on, and the stepper ends its steps where one of
 * them ends.
 */
final class Forces {
  /** Within this of a corner of a continuous force along the track its piece may end. */
  static final double CORNER_M = 0.01;

  private static final double ON_CORNER_MPS = 1e-9;

  private final double perKg;
  private final RunningResistance resistance;
  private final PiecewiseLinear track;
  private final List<PiecewiseLinear> effort;
  private final BrakeForce brake;
  private final AdhesionLimit grip;

  private int notch = -1;

  private int trackPiece;
  private double trackX;
  private double trackN;
  private double trackNPerM;
  private @Nullable PiecewiseLinear effortLine;
  private int effortPiece;
  private double effortV;
  private double effortN;
  private double effortNPerMps;

  Forces(
      Train train,
      RunningResistance resistance,
      PiecewiseLinear track,
      AdhesionLaw adhesion,
      LowAdhesionRail poor) {
    this.perKg = 1 / train.inertiaKg();
    this.resistance = resistance;
    this.track = track;
    this.effort = train.effort();
    this.grip = new AdhesionLimit(train, adhesion, poor);
    this.brake = new BrakeForce(grip);
  }

  BrakeForce brake() {
    return brake;
  }

  int notch() {
    return notch;
  }

  void notch(int newNotch) {
    notch = newNotch;
  }

  /** Picks the pieces that hold from this state on; gives the acceleration there. */
  double select(double time, double at, double speed) {
    selectTrack(at);
    grip.select(at, speed);
    brake.select(time, speed);
    if (notch >= 0) {
      selectEffort(speed + ON_CORNER_MPS);
    }
    double a = acceleration(time, at, speed);
    if (a >= 0) {
      return brake.rises(speed) ? acceleration(time, at, speed) : a;
    }
    // On a corner of speed a train that slows meets the piece below it.
    if (notch >= 0 && effortPiece > 0 && speed - effortV < 1e-7) {
      effortPiece(effortPiece - 1);
      return acceleration(time, at, speed);
    }
    return a;
  }

  private void selectTrack(double at) {
    double probe = at + CORNER_M;
    if (track.x(trackPiece) > probe) {
      trackPiece = track.piece(probe);
    }
    while (trackPiece < track.knots() - 2 && track.x(trackPiece + 1) <= probe) {
      trackPiece++;
    }
    trackX = track.x(trackPiece);
    trackN = track.y(trackPiece);
    trackNPerM = track.slope(trackPiece);
  }

  private void selectEffort(double speed) {
    PiecewiseLinear line = effort.get(notch);
    if (line != effortLine || line.x(effortPiece) > speed || line.x(effortPiece + 1) <= speed) {
      effortPiece(line.piece(speed));
    }
  }

  private void effortPiece(int piece) {
    PiecewiseLinear line = effort.get(notch);
    effortLine = line;
    effortPiece = piece;
    effortV = line.x(piece);
    effortN = line.y(piece);
    effortNPerMps = line.slope(piece);
  }

  /** Where along the track a piece ends next; infinite after the last one. */
  double nextCornerM() {
    double end =
        trackPiece < track.knots() - 2 ? track.x(trackPiece + 1) : Double.POSITIVE_INFINITY;
    return Math.min(end, grip.nextCornerM());
  }

  /** Lower end of the pieces of speed. */
  double lowCornerMps() {
    double low = brake.lowCornerMps();
    return notch >= 0 && effortPiece > 0 ? Math.max(low, effortV) : low;
  }

  /** Upper end of the pieces of speed. */
  double highCornerMps() {
    double high = brake.highCornerMps();
    if (notch >= 0) {
      PiecewiseLinear line = effort.get(notch);
      if (effortPiece < line.knots() - 2) {
        return Math.min(high, line.x(effortPiece + 1));
      }
    }
    return high;
  }

  double resistanceN(double speed) {
    return resistance.atN(speed);
  }

  double trackN(double at) {
    return trackN + trackNPerM * (at - trackX);
  }

  double tractionN(double at, double speed) {
    return notch < 0 ? 0 : poweredN(at, speed);
  }

  private double poweredN(double at, double speed) {
    double force = effortN + effortNPerMps * (speed - effortV);
    if (grip.ampleForMotors(force)) {
      return force > 0 ? force : 0;
    }
    return Math.min(force, grip.motoredN(at, speed));
  }

  /** Whether adhesion may hold something back: power is on, or the brake. */
  boolean pullsOrBrakes() {
    return notch >= 0 || brake.pulls();
  }

  /** How many pulls adhesion holds back. Where the number changes a force has a kink. */
  int capped(double time, double at, double speed) {
    int count = brake.capped(time, at, speed);
    if (notch >= 0) {
      double force = effortN + effortNPerMps * (speed - effortV);
      if (!grip.ampleForMotors(force) && force > grip.motoredN(at, speed)) {
        count++;
      }
    }
    return count;
  }

  /** Acceleration at this time, place and speed with the chosen pieces. */
  double acceleration(double time, double at, double speed) {
    return (tractionN(at, speed) - brake.forceN(time, at, speed) - resistanceN(speed) - trackN(at))
        * perKg;
  }

  /** The same without the brake. */
  double unbraked(double at, double speed) {
    return (tractionN(at, speed) - resistanceN(speed) - trackN(at)) * perKg;
  }

  /**
   * Adds the work done over the step that {@code dopri} keeps, which began at {@code time}, up to
   * the share {@code to} of it.
   */
  void tally(Work sum, DormandPrince54 dopri, double time, double step, double to) {
    for (int i = 0; i < DormandPrince54.GAUSS_AT.length; i++) {
      double share = DormandPrince54.GAUSS_AT[i] * to;
      double weight = DormandPrince54.GAUSS_WEIGHT[i] * step * to;
      double at = dopri.placeAt(share);
      double speed = dopri.speedAt(share);
      sum.tractionJ += weight * tractionN(at, speed) * speed;
      sum.brakeJ -= weight * brake.forceN(time + share * step, at, speed) * speed;
      sum.resistanceJ -= weight * resistanceN(speed) * speed;
      sum.trackJ -= weight * trackN(at) * speed;
    }
  }
}
