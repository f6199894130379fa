package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.Slack;
import gradepost.drive.grid.ControlProfile;
import gradepost.drive.grid.DriverRules;
import gradepost.motion.Stepper;

/** A run that keeps to a guide, as far as the driver's rules allow: where it is in it by now. */
final class GuideFollower {
  private final ControlProfile guide;
  private final DriverRules rules;
  private final Stepper stepper;
  private final int highestNotch;
  private final PlannerSettings settings;

  /** Index in the guide of the power that was taken off last. */
  private int done = -1;

  /**
   * @param settings how far the train may be from the guide
   */
  GuideFollower(DriverRules rules, Stepper stepper, int highestNotch, PlannerSettings settings) {
    this.guide = rules.manner().guide();
    this.rules = rules;
    this.stepper = stepper;
    this.highestNotch = highestNotch;
    this.settings = settings;
  }

  /** Whether there is a guide. */
  boolean guides() {
    return guide.guides();
  }

  /** Where power is to be taken or come off, or a higher notch be taken, next. */
  double nextM() {
    return guide.nextM(stepper.atM());
  }

  /** Whether power that is on by the guide is to come off at this place, or was before it. */
  boolean offAtPlace() {
    return guide.offAtPlace(stepper.atM(), done);
  }

  /** Whether the train is well past the power that was begun last. */
  boolean rests() {
    int index = guide.powerAt(stepper.atM());
    return index < 0 || stepper.atM() > guide.powers().get(index).offM() + settings.grid().nearM();
  }

  /** The power that was begun last is over. */
  void passed() {
    done = guide.powerAt(stepper.atM());
  }

  /** A speed was held up to here, and all is off: what the guide had on the way is over. */
  void held() {
    if (rests() || guide.powerAt(stepper.atM()) < 0) {
      passed();
    } else {
      int index = guide.powerAt(stepper.atM());
      boolean ends = stepper.atM() >= guide.powers().get(index).offM() - settings.grid().nearM();
      done = ends ? index : Math.max(done, index - 1);
    }
  }

  /** Power comes off: the guide's is over if it has come to its speed. */
  void shutOff() {
    int index = guide.powerAt(stepper.atM());
    if (index >= 0 && stepper.speedMps() >= guidedOffMps(index) - Slack.SPEED_MPS) {
      done = index;
    }
  }

  /** Whether the guide has power on here, and the train is about where it should be. */
  boolean holds() {
    return guide.holds(stepper.atM(), stepper.speedMps(), done, settings);
  }

  /** The guide's notch where it has power on here; else what the rules have. */
  int notchFor(double ceilingMps, boolean holding) {
    double at = stepper.atM();
    return rules.running(
        holds()
            ? Math.min(highestNotch, guide.powers().get(guide.powerAt(at)).notchAt(at))
            : rules.notchFor(at, offMps(ceilingMps), holding));
  }

  /** Whether the guide has power here, and not to a speed that is there already. */
  boolean wantsPower(double ceilingMps) {
    return guide.wantsPower(stepper.atM(), stepper.speedMps(), done, settings)
        && stepper.speedMps() < offMps(ceilingMps) - rules.unitMps();
  }

  /** Where power comes off: by the rules, or sooner by the guide. */
  double offMps(double ceilingMps) {
    double off = rules.band().offMps(ceilingMps);
    int index = guide.powerAt(stepper.atM());
    return index < 0 ? off : Math.min(off, guidedOffMps(index));
  }

  private double guidedOffMps(int index) {
    double unit = rules.unitMps();
    return Math.max(2, Math.rint(guide.powers().get(index).offMps() / unit)) * unit;
  }
}
