package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.motion.Snapshot;
import java.util.List;

/**
 * Watches a leg that is worked out in another manner for where it has met the old way again: the
 * next target is the same, and the train is where it was, with the same handles.
 */
final class LegMeeting {
  private final PlannerSettings.Choice settings;
  private final List<LegStart> old;
  private final double behindM;
  private int index;
  private boolean lost;

  /**
   * @param settings how near two ways are one again: the print grid leaves a little between them
   * @param behindM before this place the two manners may still differ
   */
  LegMeeting(PlannerSettings.Choice settings, LegPlanner.Leg leg, double behindM) {
    this.settings = settings;
    this.old = leg.starts();
    this.behindM = behindM;
    this.index = old.size() - 1;
  }

  /** Whether the leg need not be worked out any further. */
  boolean met(LegStart start) {
    Snapshot is = start.state();
    if (is.atM() < behindM) {
      return false;
    }
    for (int i = 1; i < old.size() - 1; i++) {
      Snapshot was = old.get(i).state();
      if (old.get(i).next() == start.next()
          && Math.abs(was.atM() - is.atM()) < settings.sameM()
          && Math.abs(was.speedMps() - is.speedMps()) < settings.sameMps()
          && was.notch() == is.notch()
          && was.demandPa() == is.demandPa()) {
        index = i;
        return true;
      }
    }
    lost = is.atM() > behindM + settings.reachM();
    return lost;
  }

  /** Whether it was given up: so far behind the change the train is not as it was. */
  boolean lost() {
    return lost;
  }

  /** Where they met, by the start on the old leg; its end where they did not meet before. */
  int index() {
    return index;
  }
}
