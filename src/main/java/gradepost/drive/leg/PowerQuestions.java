package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.Slack;
import gradepost.drive.grid.DriverRules;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.plan.Command;
import gradepost.task.Assignment;

/**
 * Whether power is to be taken, kept or left, as the train stands: by the rules of driving, by a
 * guide where there is one, and by what the train does if it is left to itself.
 */
final class PowerQuestions {
  private final DriverRules rules;
  private final Assignment assignment;
  private final PlannerSettings.Leg settings;
  private final PlannerSettings.Run own;
  private final Stepper stepper;
  private final Stepper probe;
  private final GuideFollower guide;
  private final double noPowerFromM;
  private final double noPowerToM;
  private final double leastOffS;

  /**
   * @param probe is moved at will
   * @param noPowerFromM from here on power is not taken, until {@code noPowerToM}
   */
  PowerQuestions(
      DriverRules rules,
      Assignment assignment,
      PlannerSettings settings,
      Stepper stepper,
      Stepper probe,
      GuideFollower guide,
      double noPowerFromM,
      double noPowerToM) {
    this.rules = rules;
    this.assignment = assignment;
    this.settings = settings.leg();
    this.own = settings.run();
    this.stepper = stepper;
    this.probe = probe;
    this.guide = guide;
    this.noPowerFromM = noPowerFromM;
    this.noPowerToM = noPowerToM;
    this.leastOffS = assignment.policy().practice().power().offAtLeast().seconds();
  }

  /** Whether the train hardly gains in this notch, and there is a higher one that would help. */
  boolean weak(double off) {
    int next = stepper.notch() + 1;
    return !guide.holds()
        && next < assignment.stock().traction().notches().size()
        && stepper.speedMps() < off - 2 * rules.unitMps()
        && stepper.accelerationMps2() < own.weakMps2()
        && stepper.accelerationInNotch(next) > stepper.accelerationMps2() + own.helpsMps2();
  }

  /** Left to itself the train would come too slow to a running brake test; power mends that. */
  boolean mayBeTakenForTest(double ceiling, double offS) {
    double at = stepper.atM();
    return stepper.speedMps() < rules.neededMps(at)
        && stepper.speedMps() < rules.band().offMps(ceiling) - rules.unitMps()
        && stepper.brakeOff()
        && stepper.timeS() >= offS + leastOffS - Slack.TIME_S
        && !rules.powerForbidden(at);
  }

  /** Whether power stays on where a speed was held. */
  boolean goesOn(Command.Hold hold, double ceiling, double notchSinceS) {
    double perNotch = assignment.stock().traction().timePerNotch().seconds();
    return stepper.timeS() >= notchSinceS + perNotch - Slack.TIME_S
        && !rules.powerForbidden(stepper.atM())
        && stepper.speedMps() < guide.offMps(ceiling) - rules.unitMps()
        && (guide.guides()
            ? guide.wantsPower(ceiling)
            : rules.band().offMps(ceiling) > hold.upperMps() + Slack.SPEED_MPS);
  }

  /** Hardly below the band on a falling grade: it comes back without power. */
  boolean gathersByItself(double ceiling) {
    return !slow(ceiling) && stepper.accelerationInNotch(-1) > Slack.STEADY_MPS2;
  }

  /** Whether power may be taken here, if it is wanted. */
  boolean mayBeTaken(double ceiling, double offS) {
    boolean justOff = !slow(ceiling) && stepper.timeS() < offS + leastOffS - Slack.TIME_S;
    if (justOff || !stepper.brakeOff()) {
      return false;
    }
    double least = rules.run().leastPower().seconds();
    double at = stepper.atM();
    if (stepper.speedMps() >= rules.coastsFromMps(at) - own.closeToTestMps()) {
      return false;
    }
    double rise = rules.nextRise(at) - at;
    boolean spared = at >= noPowerFromM - Slack.PLACE_M && at < noPowerToM - Slack.PLACE_M;
    if (guide.guides()) {
      return !spared && !rules.powerForbidden(at) && guide.wantsPower(ceiling);
    }
    return !spared
        && (rise > least * stepper.speedMps() || slow(ceiling))
        && !rules.powerForbidden(at)
        && (rules.toNoPowerM(at) > least * stepper.speedMps() || slow(ceiling) || wouldLoseSpeed());
  }

  /** Whether the ceiling rises ahead before the train, left to itself, is too fast for this one. */
  boolean riseComesInTime(double ceiling) {
    double riseWaitedS = assignment.policy().practice().handles().riseWaitedFor().seconds();
    double ahead = rules.nextRise(stepper.atM()) - stepper.atM();
    if (ahead >= riseWaitedS * stepper.speedMps()) {
      return false;
    }
    probe.restore(stepper.save());
    StopConditions there =
        new StopConditions().place(stepper.atM() + ahead).speedUp(ceiling - settings.closeMps());
    return probe.advance(there) == StopReason.PLACE;
  }

  /** Whether coasting to the far end of the next stretch without power costs too much speed. */
  private boolean wouldLoseSpeed() {
    double v = stepper.speedMps();
    double a = stepper.accelerationInNotch(-1);
    return v * v + 2 * a * rules.pastNoPowerM(stepper.atM()) < own.gapKeeps() * v * v;
  }

  /** Too slow to wait for a higher ceiling. */
  private boolean slow(double ceiling) {
    double on = rules.band().onMps(ceiling);
    return stepper.speedMps() < Math.max(own.slowMps(), own.slowShare() * on);
  }
}
