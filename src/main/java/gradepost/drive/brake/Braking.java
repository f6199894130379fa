package gradepost.drive.brake;

import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrainBrake;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.policy.BrakePractice;
import gradepost.policy.Policy;
import gradepost.policy.Technique;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.Acceleration;
import gradepost.units.UnitStyle;
import java.util.List;

/**
 * A technique turned to one target: which pressures, at which speeds. Every number is one that can
 * be printed.
 *
 * @param aimMps speed that the train is braked to: 0, or a little under the reduction's
 * @param onHeldS so long an application that checked the speed stays on before the main one
 * @param easeAtMps falling speeds at which the brake is eased to {@code easePa}
 * @param lastEaseAlone up to this share of the speed of the last ease only its pressure is used
 * @param staysOn whether the aim is met with the brake on: where the train gathers speed behind a
 *     board, a brake let go there would have to check it at once. It comes off as a checking
 *     application does
 */
@SuppressWarnings("ArrayRecordComponent")
public // never compared, and its arrays never changed
record Braking(
    TrainBrake rig,
    double aimMps,
    double firstPa,
    double firstHeldS,
    double onHeldS,
    double mainPa,
    double[] easeAtMps,
    double[] easePa,
    double lastEaseAlone,
    boolean staysOn) {
  /** No brake is kept on for longer behind a board. */
  private static final double LONGEST_S = 120;

  /** A braking that has hardly begun is not eased: not above this share of its first speed. */
  private static final double EASED_UP_TO = 0.85;

  /** How it came out: where, how fast and when the aim was met. */
  public record Outcome(double endM, double endMps, double endS, boolean held) {
    /** For a search only: the overrun assumed for a braking that never meets its aim, metres. */
    static final double NOT_HELD_M = -1e6;

    /** How far short of its aim it ended, metres; negative past it, and far past where not held. */
    public double shortOf(double aimM) {
      return held ? aimM - endM : NOT_HELD_M;
    }

    static Outcome now(Stepper stepper, boolean held) {
      return new Outcome(stepper.atM(), stepper.speedMps(), stepper.timeS(), held);
    }
  }

  /** The policy's technique for this target, before anything is solved. */
  public static Braking of(Assignment assignment, TrainModels bench, Target target) {
    boolean stop = target.standsThere();
    double aim = stop ? 0 : aimMps(assignment, target, gathersMps2(assignment, bench, target));
    return of(assignment, bench, target, aim);
  }

  /** The same, so that the brake is released at this speed where that is lower. */
  public static Braking downTo(
      Assignment assignment, TrainModels bench, Target target, double releaseMps) {
    Braking usual = of(assignment, bench, target);
    double unit = assignment.route().units().speedUnitMps();
    double lower = usual.releases() ? usual.releasedAtMps() - releaseMps : 0;
    if (lower < unit) {
      return usual;
    }
    double least = practice(assignment).lowestRelease() * target.speedMps();
    double aim = Math.round(Math.max(least, usual.aimMps() - lower) / unit) * unit;
    return of(assignment, bench, target, aim);
  }

  private static Braking of(Assignment assignment, TrainModels bench, Target target, double aim) {
    Policy policy = assignment.policy();
    UnitStyle units = assignment.route().units();
    double gaugePa = units.pressureStepPa();
    TrainBrake rig = bench.service(target);
    boolean stop = target.standsThere();
    Technique technique = stop ? policy.stopping() : policy.restriction();
    boolean staysOn = !stop && checksAtOnce(assignment, bench, target, aim);
    List<Technique.Ease> eases =
        technique.eases().stream()
            .filter(e -> e.to().pascals() == 0 ? !staysOn : rig.gradualRelease())
            .toList();
    double[] at = new double[eases.size()];
    double[] to = new double[eases.size()];
    for (int i = 0; i < at.length; i++) {
      double above = eases.get(i).aboveTarget().metresPerSecond();
      double speed = Math.round((aim + above) / units.speedUnitMps()) * units.speedUnitMps();
      double pressure = eases.get(i).to().pascals();
      to[i] =
          pressure == 0
              ? 0
              : Pressures.asked(
                  assignment.stock().service(),
                  Math.max(
                      pressure,
                      easedPa(assignment, bench, target.atM(), speed, slows(policy, eases.get(i)))),
                  gaugePa);
      if (i > 0) {
        to[i] = Math.min(to[i], to[i - 1]);
      }
      at[i] = to[i] == 0 && !stop ? Math.min(speed, target.speedMps()) : speed;
    }
    double firstPa =
        Pressures.asked(
            assignment.stock().service(),
            Math.max(
                technique.first().pascals(),
                easedPa(
                    assignment,
                    bench,
                    target.atM() - 40,
                    aim + practice(assignment).feltAbove().metresPerSecond(),
                    practice(assignment).eased())),
            gaugePa);
    return new Braking(
        rig,
        aim,
        firstPa,
        technique.firstHeld().seconds(),
        0,
        Math.max(technique.main().pascals(), firstPa),
        at,
        to,
        practice(assignment).lastEaseAlone(),
        staysOn);
  }

  /**
   * A little under the reduction's speed; where the train gathers speed by itself behind the board,
   * as far under it as a checking application goes.
   */
  private static double aimMps(Assignment assignment, Target target, double gathersMps2) {
    double under = assignment.policy().margins().underSpeed().metresPerSecond();
    double checkTo = assignment.policy().run().checkTo().metresPerSecond();
    double staysOnFrom = practice(assignment).staysOnFrom().metresPerSecond2();
    boolean further =
        gathersMps2 > practice(assignment).brakedLowerFrom().metresPerSecond2()
            && gathersMps2 <= staysOnFrom;
    double less = further ? Math.max(under, checkTo - under) : under;
    double unit = assignment.route().units().speedUnitMps();
    double aim =
        Math.max(target.speedMps() - less, practice(assignment).lowestAim() * target.speedMps());
    return Math.round(aim / unit) * unit;
  }

  /** Whether a brake that comes off for this lower speed has to go on again within some seconds. */
  private static boolean checksAtOnce(
      Assignment assignment, TrainModels bench, Target target, double aimMps) {
    Band band = new Band(assignment.policy().run(), assignment.route().units().speedUnitMps());
    double gathers = gathersMps2(assignment, bench, target);
    double atBoard = bench.accelerationMps2(-1, target.speedMps(), target.atM());
    double above =
        assignment.policy().restriction().eases().stream()
            .filter(e -> e.to().pascals() == 0)
            .mapToDouble(e -> e.aboveTarget().metresPerSecond())
            .findFirst()
            .orElse(0);
    double released = Math.min(aimMps + above, target.speedMps()) - band.unitMps();
    boolean near = released > band.checkFromMps(target.speedMps()) - Slack.SPEED_MPS;
    return gathers > practice(assignment).staysOnFrom().metresPerSecond2()
        || (near && Math.max(gathers, atBoard) > Slack.STEADY_MPS2);
  }

  private static BrakePractice practice(Assignment assignment) {
    return assignment.policy().practice().brake();
  }

  /** How much speed the train, left to itself, gathers behind the board of a lower speed. */
  private static double gathersMps2(Assignment assignment, TrainModels bench, Target target) {
    double atOnceS = practice(assignment).offAtLeast().seconds();
    double behindM = Math.min(100, atOnceS * target.speedMps());
    return bench.accelerationMps2(-1, target.speedMps(), target.atM() + behindM);
  }

  private static Acceleration slows(Policy policy, Technique.Ease ease) {
    return ease.slows().orElse(policy.practice().brake().eased());
  }

  /** What still slows the train enough against the gradient near the target. */
  private static double easedPa(
      Assignment assignment, TrainModels bench, double atM, double speedMps, Acceleration slows) {
    double roll =
        Math.max(
            bench.accelerationMps2(-1, speedMps, atM),
            bench.accelerationMps2(-1, speedMps, atM - 40));
    return bench.servicePressurePa(
        speedMps, roll + slows.metresPerSecond2(), assignment.route().units().pressureStepPa());
  }

  Braking withMain(double pressurePa) {
    return new Braking(
        rig,
        aimMps,
        Math.min(firstPa, pressurePa),
        firstHeldS,
        onHeldS,
        pressurePa,
        easeAtMps,
        easePa,
        lastEaseAlone,
        staysOn);
  }

  Braking withEases(double[] pressuresPa) {
    return new Braking(
        rig,
        aimMps,
        firstPa,
        firstHeldS,
        onHeldS,
        mainPa,
        easeAtMps,
        pressuresPa,
        lastEaseAlone,
        staysOn);
  }

  Braking withRig(TrainBrake other) {
    return new Braking(
        other,
        aimMps,
        firstPa,
        firstHeldS,
        onHeldS,
        mainPa,
        easeAtMps,
        easePa,
        lastEaseAlone,
        staysOn);
  }

  Braking withFirstHeld(double seconds) {
    double on = Math.max(0, onHeldS + seconds - firstHeldS);
    return new Braking(
        rig, aimMps, firstPa, seconds, on, mainPa, easeAtMps, easePa, lastEaseAlone, staysOn);
  }

  /**
   * Moves the speed of one ease by so many whole units; it stays above the next one, and above half
   * of what it was.
   */
  Braking withEaseMoved(int index, int units, double unitMps) {
    double[] at = easeAtMps.clone();
    double next = index + 1 < at.length ? at[index + 1] : 0;
    double least = Math.max(1.5 * next, 0.5 * easeAtMps[index]);
    double printed = Math.ceil(least / unitMps - Slack.UNITS) * unitMps;
    at[index] = Math.max(at[index] + units * unitMps, printed);
    return new Braking(
        rig, aimMps, firstPa, firstHeldS, onHeldS, mainPa, at, easePa, lastEaseAlone, staysOn);
  }

  /** Eases less far: so much more pressure is kept, up to the main application's. */
  Braking withEasePressed(int index, double byPa) {
    double[] to = easePa.clone();
    to[index] = Math.min(to[index] + byPa, index == 0 ? mainPa : to[index - 1]);
    return new Braking(
        rig, aimMps, firstPa, firstHeldS, onHeldS, mainPa, easeAtMps, to, lastEaseAlone, staysOn);
  }

  /** How long a brake that is let go at this pressure takes to be off, seconds. */
  double emptyS(double pressurePa) {
    return rig.deadTimeS() + rig.lastDelayS() + pressurePa / rig.releasePaPerS();
  }

  /**
   * Where a brake that is on is off, if it is let go at this speed; the stepper stays where it is.
   */
  public double offM(Stepper stepper, double mps) {
    Snapshot on = stepper.save();
    StopConditions until = new StopConditions().time(stepper.timeS() + LONGEST_S).speedDown(mps);
    if (stepper.speedMps() <= mps || stepper.advance(until) == StopReason.SPEED_DOWN) {
      double emptyS = emptyS(stepper.pressurePa());
      stepper.brake(rig, 0);
      stepper.advance(until.clear().time(stepper.timeS() + emptyS));
    }
    double offM = stepper.atM();
    stepper.restore(on);
    return offM;
  }

  /** Whether the technique ends with the brake off. */
  public boolean releases() {
    return easePa.length > 0 && easePa[easePa.length - 1] == 0;
  }

  /** The falling speed at which the brake of one that releases comes off. */
  public double releasedAtMps() {
    return easeAtMps[easeAtMps.length - 1];
  }

  /** So slow already that only the last, light pressure is needed. */
  boolean creeping(double speedMps) {
    return !releases()
        && !staysOn
        && easeAtMps.length > 0
        && speedMps <= lastEaseAlone * easeAtMps[easeAtMps.length - 1];
  }

  /** Whether an ease comes so soon that it is left out, begun at this speed. */
  boolean tooSoon(int ease, double beganMps) {
    return easePa[ease] > 0 && hardlyBegun(easeAtMps[ease], beganMps);
  }

  /** Whether a braking from the second speed has hardly begun at the first. */
  static boolean hardlyBegun(double mps, double beganMps) {
    return mps > EASED_UP_TO * beganMps;
  }

  /** Speed down to which the main application, or the first without it, stays on. */
  double mainDownToMps(double beganMps) {
    for (int i = 0; i < easePa.length; i++) {
      if (!tooSoon(i, beganMps)) {
        return easePa[i] > 0 ? easeAtMps[i] : aimMps;
      }
    }
    return aimMps;
  }

  /** Speed below which the first application alone does it. */
  double mainAboveMps() {
    return easeAtMps.length > 0 && easePa[0] > 0 ? easeAtMps[0] : aimMps;
  }

  /** Brakes from where the stepper stands; leaves it where the aim is met. */
  public Outcome run(Stepper stepper) {
    Trigger here = new Trigger.AtPlace(stepper.atM());
    return new BrakingRun(this, stepper, here, (trigger, command) -> {}).run();
  }

  /** The same from where all the trials of a tree begin. */
  Outcome run(Stepper stepper, RunTree trials) {
    trials.again();
    Trigger here = new Trigger.AtPlace(stepper.atM());
    return new BrakingRun(this, stepper, trials, here, (trigger, command) -> {}).run();
  }

  /** The same, and writes down what is done. */
  public Outcome run(Stepper stepper, Trigger start, Target target, List<Instruction> out) {
    return new BrakingRun(
            this, stepper, start, (by, command) -> out.add(new Instruction(target, by, command)))
        .run();
  }
}
