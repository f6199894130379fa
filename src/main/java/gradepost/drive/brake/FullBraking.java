package gradepost.drive.brake;

import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrainBrake;
import gradepost.plan.fallback.Met;
import gradepost.task.Target;

/** Full service, or the emergency application, of one brake by the train on the safe side. */
public final class FullBraking {
  private final double endOfTrackM;
  private final Target target;
  private final Stepper worst;
  private final TrainBrake rig;
  private final double demandPa;
  private final StopConditions until = new StopConditions();

  /**
   * @param endOfTrackM how far the track is known
   * @param worst stands where the brake is asked for, with the brake as it was before
   */
  public FullBraking(double endOfTrackM, Target target, Stepper worst, TrainBrake rig) {
    this(endOfTrackM, target, worst, rig, rig.fullPa());
  }

  /**
   * The same with less than the full brake.
   *
   * @param demandPa what is asked of it
   */
  public FullBraking(
      double endOfTrackM, Target target, Stepper worst, TrainBrake rig, double demandPa) {
    this.endOfTrackM = endOfTrackM;
    this.target = target;
    this.worst = worst;
    this.rig = rig;
    this.demandPa = demandPa;
  }

  /**
   * How far short of the target it ends, for a search only: the track is taken to go on as it ends,
   * and {@link Braking.Outcome#NOT_HELD_M} stands for never.
   */
  public double shortM() {
    worst.brake(rig, demandPa);
    until.clear().hopeless(target.atM());
    if (!target.standsThere()) {
      until.speedDown(target.speedMps());
    }
    StopReason ended = worst.advance(until);
    boolean met = ended == StopReason.SPEED_DOWN || ended == StopReason.STANDSTILL;
    return met ? target.atM() - worst.atM() : Braking.Outcome.NOT_HELD_M;
  }

  /** Where it ends, as the papers may say it. */
  public Met met() {
    Snapshot asked = worst.save();
    double shortM = shortM();
    double knownM = knownM();
    boolean held = shortM > Braking.Outcome.NOT_HELD_M && worst.atM() <= knownM + Slack.PLACE_M;
    worst.restore(asked);
    return held ? new Met.At(shortM) : new Met.Nowhere(reason(knownM));
  }

  private Met.Reason reason(double knownM) {
    if (gains(knownM)) {
      return Met.Reason.GRADIENT_DEFEATS_BRAKE;
    }
    return knownM < endOfTrackM ? Met.Reason.BUFFER_STOPS : Met.Reason.TRACK_ENDS;
  }

  /** How far there is track to run on. */
  private double knownM() {
    return target
        .stop()
        .flatMap(Target.Stop::buffersM)
        .map(buffersM -> Math.min(buffersM, endOfTrackM))
        .orElse(endOfTrackM);
  }

  /** Whether the train, braked fully from here, is no slower at a place than when it was so. */
  public boolean gains(double toM) {
    Snapshot asked = worst.save();
    worst.brake(rig, demandPa);
    double onS = rig.deadTimeS() + rig.lastDelayS() + demandPa / rig.applyPaPerS();
    worst.advance(until.clear().place(toM).time(worst.timeS() + onS));
    double fullyOnMps = worst.speedMps();
    boolean there = worst.atM() < toM - Slack.PLACE_M;
    StopReason ended = worst.advance(until.clear().place(toM));
    boolean gains = there && ended == StopReason.PLACE && worst.speedMps() >= fullyOnMps;
    worst.restore(asked);
    return gains;
  }

  /** Speed at a place, braked fully from here. */
  public double speedAtMps(double atM) {
    worst.brake(rig, demandPa);
    worst.advance(until.clear().place(atM));
    return worst.speedMps();
  }
}
