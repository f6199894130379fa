package gradepost.drive.leg;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.ReductionMonitor;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.GuideDependencies;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.List;

/** Coasting up to a braking point, and the braking from there, as tried out from a place. */
final class CoastThenBrake {
  private final Assignment assignment;
  private final TrainModels bench;
  private final DriverRules rules;
  private final Stepper stepper;
  private final StopConditions until = new StopConditions();
  private final double leadS;
  private GuideDependencies asked = new GuideDependencies();

  CoastThenBrake(Assignment assignment, TrainModels bench, DriverRules rules, Stepper stepper) {
    this.assignment = assignment;
    this.bench = bench;
    this.rules = rules;
    this.stepper = stepper;
    this.leadS = rules.manner().coastS();
  }

  /**
   * Where the speed of the target is to be reached on this run: before its board; at the board by a
   * train that starts so close to it that it is slower there anyway.
   */
  double aimM(RunStates line, Target target, Braking braking) {
    double aim = target.aimM(assignment.policy().margins());
    if (aim == target.atM() || aim > line.endM()) {
      return aim;
    }
    line.pickUp(stepper, aim);
    return stepper.speedMps() <= braking.aimMps() ? target.atM() : aim;
  }

  /** What is asked of the guide from now on. */
  GuideDependencies askedFromNow() {
    asked = new GuideDependencies();
    return asked;
  }

  /** The guide was asked what to do all along the way up to a place. */
  void askedUpTo(double atM) {
    asked.upTo(atM);
  }

  Braking braking(Target target) {
    Braking braking = Braking.of(assignment, bench, target);
    if (target.standsThere()) {
      return braking;
    }
    asked.release(target);
    return rules
        .manner()
        .guide()
        .releaseBefore(target.atM())
        .map(mps -> Braking.downTo(assignment, bench, target, mps))
        .orElse(braking);
  }

  /**
   * Coasts from {@code x} as long as is needed before a braking point; leaves the stepper there.
   */
  void approach(RunStates line, double x) {
    double off = line.powerOffSinceS(x);
    line.pickUp(stepper, x);
    if (stepper.demandPa() > 0) {
      return;
    }
    double coasted = off < 0 ? 0 : stepper.timeS() - off;
    stepper.shutOff();
    if (coasted < leadS) {
      double ceiling = rules.ceilingAt(stepper.atM());
      until
          .clear()
          .time(stepper.timeS() + leadS - coasted)
          .speedDown(assignment.policy().practice().power().coastKeeps() * stepper.speedMps());
      if (stepper.speedMps() < ceiling - Slack.SPEED_MPS) {
        until.speedUp(ceiling);
      }
      stepper.advance(until);
    }
  }

  /**
   * How far short of its aim the train is when power is taken off at {@code x}; negative when it
   * runs past, or when it is too fast at a reduction on the way.
   *
   * @param before the targets on the way
   */
  double margin(RunStates line, double x, double aimM, List<Target> before, Braking braking) {
    return margin(line, x, aimM, before, braking, Double.POSITIVE_INFINITY);
  }

  /**
   * The same, and how far short of its limit the brake goes on, where that is less.
   *
   * @param byM where the brake has to be on by
   */
  double margin(
      RunStates line, double x, double aimM, List<Target> before, Braking braking, double byM) {
    approach(line, x);
    double earlyM = byM - stepper.atM();
    ReductionMonitor guard = new ReductionMonitor(before);
    stepper.record(guard);
    Braking.Outcome outcome = braking.run(stepper);
    stepper.record(null);
    return Math.min(earlyM, Math.min(outcome.shortOf(aimM), guard.marginM()));
  }
}
