package gradepost.drive;

import gradepost.motion.Stepper;
import java.util.ArrayList;
import java.util.List;

/**
 * A run whose speed is given from place to place, power and brake off: between two places the
 * square of the speed is linear in the distance.
 */
final class HeldLine extends Line {
  private final List<double[]> places = new ArrayList<>();

  /** Adds the time, the place and the speed of a stepper that coasts there. */
  void addHeld(Stepper stepper) {
    places.add(new double[] {stepper.timeS(), stepper.atM(), stepper.speedMps()});
    add(stepper.save());
  }

  @Override
  void pickUp(Stepper stepper, double atM) {
    int i = Math.min(indexAt(atM), places.size() - 2);
    if (i < 0 || atM >= places.get(i + 1)[1]) {
      super.pickUp(stepper, atM);
      return;
    }
    double[] from = places.get(i);
    double[] to = places.get(i + 1);
    double share = (atM - from[1]) / (to[1] - from[1]);
    double square = from[2] * from[2] + share * (to[2] * to[2] - from[2] * from[2]);
    double mps = Math.sqrt(Math.max(square, 0));
    double after = share <= 0 ? 0 : 2 * (atM - from[1]) / (from[2] + mps);
    stepper.place(from[0] + after, atM, mps);
  }
}
