package gradepost.motion;

import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.ShareOf;

/**
 * A law of adhesion as numbers for the inner loop, where a call through its interface costs more
 * than the law: {@code share (level + fall / (V + from))}, V in km/h. It never rises with speed.
 */
final class Grip {
  private final double share;
  private final double level;
  private final double fall;
  private final double fromKmh;

  private Grip(double share, double level, double fall, double fromKmh) {
    this.share = share;
    this.level = level;
    this.fall = fall;
    this.fromKmh = fromKmh;
  }

  static Grip of(AdhesionLaw law) {
    if (law instanceof ShareOf part) {
      Grip whole = of(part.dry());
      return new Grip(part.share() * whole.share, whole.level, whole.fall, whole.fromKmh);
    }
    if (law instanceof CurtiusKniffler) {
      return new Grip(1, CurtiusKniffler.LEVEL, CurtiusKniffler.FALL, CurtiusKniffler.FROM_KMH);
    }
    return new Grip(1, ((ConstantAdhesion) law).coefficient(), 0, 1);
  }

  double mu(double speedMps) {
    double kmh = speedMps > 0 ? speedMps * 3.6 : 0;
    return share * (level + fall / (kmh + fromKmh));
  }
}
