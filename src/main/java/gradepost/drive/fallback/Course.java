package gradepost.drive.fallback;

import gradepost.motion.EvenChange;
import java.util.ArrayList;
import java.util.List;

/** The speeds that one braking has on its way, by place. */
final class Course {
  private final List<Double> atM = new ArrayList<>();
  private final List<Double> mps = new ArrayList<>();

  /** Adds a place, and the speed there; what is not behind the last place is left out. */
  void add(double placeM, double speedMps) {
    if (atM.isEmpty() || placeM > endM()) {
      atM.add(placeM);
      mps.add(speedMps);
    }
  }

  /** Where it is over, metres run. */
  double endM() {
    return atM.get(atM.size() - 1);
  }

  /**
   * Speed at a place, m/s; before its first place the speed there, behind its last one the last.
   */
  double speedMps(double placeM) {
    int last = atM.size() - 1;
    if (placeM <= atM.get(0)) {
      return mps.get(0);
    }
    if (placeM >= atM.get(last)) {
      return mps.get(last);
    }
    int low = 0;
    int high = last;
    while (high - low > 1) {
      int middle = (low + high) / 2;
      if (atM.get(middle) <= placeM) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return EvenChange.speedMps(atM.get(low), mps.get(low), atM.get(high), mps.get(high), placeM);
  }
}
