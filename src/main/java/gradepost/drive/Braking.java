package gradepost.drive;

import gradepost.motion.BrakeRig;
import gradepost.motion.Ended;
import gradepost.motion.Stepper;
import gradepost.motion.Until;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;

/**
 * A technique turned to one target: which pressures, at which speeds. Every number is one that can
 * be printed.
 *
 * @param aimMps speed that the train is braked to: 0, or a little under the reduction's
 * @param onHeldS so long an application that checked the speed stays on before the main one
 * @param staysOn whether the brake is still on where it would be released: something behind the
 *     target needs it at once
 * @param easeAtMps falling speeds at which the brake is eased to {@code easePa}
 */
record Braking(
    BrakeRig rig,
    double aimMps,
    double firstPa,
    double firstHeldS,
    double onHeldS,
    double mainPa,
    double[] easeAtMps,
    double[] easePa,
    boolean staysOn) {
  /** A run that has not met its aim this far past the start of the brake never will. */
  private static final double HOPELESS_M = 8000;

  /** Up to this share of the speed of the last ease, a train creeps. */
  private static final double CREEPING = 1.3;

  /** A train is braked no further below a lower speed than to this share of it. */
  private static final double LOWEST_AIM = 0.5;

  /** How it came out. */
  record Outcome(double endM, double endMps, boolean held) {}

  /** An eased brake still slows the train by this at least, m/s². */
  private static final double EASED_MPS2 = 0.12;

  /** The first application is felt at about this much above the aim. */
  private static final double FELT_ABOVE_MPS = 5;

  /** The policy's technique for this target, before anything is solved. */
  static Braking of(Assignment assignment, Bench bench, Target target) {
    double under = assignment.policy().margins().underSpeed().metresPerSecond();
    boolean stop = target.speedMps() == 0;
    return of(assignment, bench, target, stop ? 0 : aimMps(assignment, bench, target, under));
  }

  /** The same, so that the brake is released at this speed where that is lower. */
  static Braking downTo(Assignment assignment, Bench bench, Target target, double releaseMps) {
    Braking usual = of(assignment, bench, target);
    double unit = assignment.route().units().speedUnitMps();
    double lower = usual.releases() ? usual.releasedAtMps() - releaseMps : 0;
    if (lower < unit) {
      return usual;
    }
    double least = LOWEST_AIM * target.speedMps();
    double aim = Math.round(Math.max(least, usual.aimMps() - lower) / unit) * unit;
    return of(assignment, bench, target, aim);
  }

  private static Braking of(Assignment assignment, Bench bench, Target target, double aim) {
    Policy policy = assignment.policy();
    UnitStyle units = assignment.route().units();
    BrakeRig rig = bench.service(target);
    boolean stop = target.speedMps() == 0;
    Technique technique = stop ? policy.stopping() : policy.restriction();
    List<Technique.Ease> eases =
        technique.eases().stream()
            .filter(e -> rig.gradualRelease() || e.to().pascals() == 0)
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
              : Pressures.atLeast(
                  assignment.stock().service(),
                  Math.max(pressure, easedPa(assignment, bench, target.atM(), speed)));
      at[i] = to[i] == 0 && !stop ? Math.min(speed, target.speedMps()) : speed;
    }
    double firstPa =
        Pressures.atLeast(
            assignment.stock().service(),
            Math.max(
                technique.first().pascals(),
                easedPa(assignment, bench, target.atM() - 40, aim + FELT_ABOVE_MPS)));
    return new Braking(
        rig,
        aim,
        firstPa,
        technique.firstHeld().seconds(),
        0,
        Math.max(technique.main().pascals(), firstPa),
        at,
        to,
        false);
  }

  /**
   * A little under the reduction's speed; where the train gathers speed by itself behind the board,
   * as far under it as a checking application goes.
   */
  private static double aimMps(Assignment assignment, Bench bench, Target target, double under) {
    double gathers = bench.accelerationMps2(-1, target.speedMps(), target.atM() + 100);
    double less =
        gathers > 0.02
            ? Math.max(under, assignment.policy().run().checkTo().metresPerSecond() - under)
            : under;
    double unit = assignment.route().units().speedUnitMps();
    return Math.round(Math.max(target.speedMps() - less, 0.7 * target.speedMps()) / unit) * unit;
  }

  /** What still slows the train enough against the gradient near the target. */
  private static double easedPa(Assignment assignment, Bench bench, double atM, double speedMps) {
    double roll =
        Math.max(
            bench.accelerationMps2(-1, speedMps, atM),
            bench.accelerationMps2(-1, speedMps, atM - 40));
    return bench.servicePressurePa(
        speedMps, roll + EASED_MPS2, assignment.route().units().pressureStepPa());
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
        staysOn);
  }

  /** The same, left on where it would be released. */
  Braking stayingOn() {
    return new Braking(rig, aimMps, firstPa, firstHeldS, onHeldS, mainPa, easeAtMps, easePa, true);
  }

  Braking withRig(BrakeRig other) {
    return new Braking(
        other, aimMps, firstPa, firstHeldS, onHeldS, mainPa, easeAtMps, easePa, staysOn);
  }

  Braking withFirstHeld(double seconds) {
    double on = Math.max(0, onHeldS + seconds - firstHeldS);
    return new Braking(rig, aimMps, firstPa, seconds, on, mainPa, easeAtMps, easePa, staysOn);
  }

  /** Moves the speed of one ease; it stays above the next one, and above half of what it was. */
  Braking withEaseMoved(int index, double byMps) {
    double[] at = easeAtMps.clone();
    double next = index + 1 < at.length ? at[index + 1] : 0;
    at[index] = Math.max(at[index] + byMps, Math.max(1.5 * next, 0.5 * easeAtMps[index]));
    return new Braking(rig, aimMps, firstPa, firstHeldS, onHeldS, mainPa, at, easePa, staysOn);
  }

  /** Eases less far: so much more pressure is kept, up to the main application's. */
  Braking withEasePressed(int index, double byPa) {
    double[] to = easePa.clone();
    to[index] = Math.min(to[index] + byPa, index == 0 ? mainPa : to[index - 1]);
    return new Braking(rig, aimMps, firstPa, firstHeldS, onHeldS, mainPa, easeAtMps, to, staysOn);
  }

  boolean releases() {
    return easePa.length > 0 && easePa[easePa.length - 1] == 0;
  }

  /** The falling speed at which the brake of one that releases comes off. */
  double releasedAtMps() {
    return easeAtMps[easeAtMps.length - 1];
  }

  /** So slow already that only the last, light pressure is needed. */
  private boolean creeping(double speedMps) {
    return !releases()
        && easeAtMps.length > 0
        && speedMps <= CREEPING * easeAtMps[easeAtMps.length - 1];
  }

  /** Speed below which the first application alone does it. */
  double mainAboveMps() {
    return easeAtMps.length > 0 && easePa[0] > 0 ? easeAtMps[0] : aimMps;
  }

  /** Brakes from where the stepper stands; leaves it where the aim is met. */
  Outcome run(Stepper stepper) {
    return run(stepper, new Trigger.AtPlace(stepper.atM()), null, new ArrayList<>());
  }

  /** The same, and writes down what is done. */
  Outcome run(Stepper stepper, Trigger start, Target target, List<Instruction> out) {
    Until until = new Until();
    double began = stepper.speedMps();
    double hopeless = stepper.atM() + HOPELESS_M;
    double lowest = easeAtMps.length > 0 ? easeAtMps[easeAtMps.length - 1] : 0;
    double felt = lowest < 0.85 * began || releases() ? lowest : 0;
    double present = stepper.demandPa();
    if (stepper.speedMps() <= aimMps || (releases() && stepper.speedMps() <= lowest)) {
      if (aimMps == 0) {
        stand(target, out);
      }
      return new Outcome(stepper.atM(), stepper.speedMps(), true);
    }
    Trigger next = start;
    double first = creeping(began) ? Math.min(firstPa, easePa[easePa.length - 1]) : firstPa;
    if (present < first) {
      apply(stepper, first, new Instruction(target, next, brake(first, Command.Stage.FIRST)), out);
      present = first;
      stepper.advance(
          until.clear().place(hopeless).time(stepper.timeS() + firstHeldS).speedDown(felt));
      next = new Trigger.After(firstHeldS);
    }
    boolean heavier = mainPa > present && stepper.speedMps() > mainAboveMps() + 1e-6;
    boolean still = next == start && present > 0 && (!heavier || onHeldS > 0);
    if (still) {
      // The application that checked the speed stays on: from here it is for the target.
      apply(
          stepper,
          present,
          new Instruction(target, next, brake(present, Command.Stage.FIRST)),
          out);
    }
    if (still && heavier) {
      stepper.advance(
          until.clear().place(hopeless).time(stepper.timeS() + onHeldS).speedDown(felt));
      next = new Trigger.After(onHeldS);
      heavier = stepper.speedMps() > mainAboveMps() + 1e-6;
    }
    if (heavier) {
      apply(stepper, mainPa, new Instruction(target, next, brake(mainPa, Command.Stage.MAIN)), out);
      present = mainPa;
    }
    for (int i = 0; i < easeAtMps.length; i++) {
      boolean tooSlow = easePa[i] > 0 && easeAtMps[i] > 0.85 * began;
      if (easePa[i] >= present || tooSlow) {
        continue;
      }
      if (stepper.speedMps() < easeAtMps[i] - 1e-9 && i + 1 < easeAtMps.length) {
        continue;
      }
      Ended ended = stepper.advance(until.clear().place(hopeless).speedDown(easeAtMps[i]));
      if (ended != Ended.SPEED_DOWN) {
        return new Outcome(stepper.atM(), stepper.speedMps(), ended == Ended.STANDSTILL);
      }
      if (easePa[i] == 0 && staysOn) {
        return new Outcome(stepper.atM(), stepper.speedMps(), true);
      }
      Command command =
          easePa[i] == 0 ? new Command.Release() : brake(easePa[i], Command.Stage.EASE);
      Trigger at = new Trigger.SpeedDownTo(easeAtMps[i]);
      apply(stepper, easePa[i], new Instruction(target, at, command), out);
      present = easePa[i];
    }
    if (releases()) {
      double empty =
          rig.deadTimeS() + rig.lastDelayS() + stepper.pressurePa() / rig.releasePaPerS();
      stepper.advance(until.clear().place(hopeless).time(stepper.timeS() + empty));
      return new Outcome(stepper.atM(), stepper.speedMps(), true);
    }
    Ended ended = stepper.advance(until.clear().place(hopeless));
    if (ended == Ended.STANDSTILL) {
      stand(target, out);
    }
    return new Outcome(stepper.atM(), stepper.speedMps(), ended == Ended.STANDSTILL);
  }

  private static void stand(Target target, List<Instruction> out) {
    out.add(new Instruction(target, new Trigger.Standstill(), new Command.Stand()));
  }

  private static Command brake(double pressurePa, Command.Stage stage) {
    return new Command.Brake(pressurePa, stage);
  }

  private void apply(
      Stepper stepper, double pressurePa, Instruction instruction, List<Instruction> out) {
    stepper.brake(rig, pressurePa);
    out.add(instruction);
  }
}
