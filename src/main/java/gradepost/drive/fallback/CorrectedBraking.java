package gradepost.drive.fallback;

import gradepost.drive.brake.Pressures;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrainBrake;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.policy.CorrectionPractice;
import gradepost.policy.Margins;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.Pressure;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One braking as it is printed, carried out by a driver who corrects it, with a train that may
 * differ from the planned one. What he sees and does stands in the note of the package.
 */
final class CorrectedBraking {
  private static final double NEVER = Double.POSITIVE_INFINITY;

  private final TrainModels bench;
  private final BrakeSystem service;
  private final double gaugePa;
  private final CorrectionPractice practice;
  private final Target target;
  private final double nearestM;
  private final List<Instruction> told;
  private final Course course;
  private final StopConditions until = new StopConditions();

  private Stepper stepper;
  private TrainBrake rig;

  /** What the sheet says at this moment, without any correction. */
  private double printedPa;

  private double correctionPa;
  private double demandPa;
  private boolean full;

  /**
   * @param told from the instruction that begins it
   * @param course the same braking by the planned train
   */
  CorrectedBraking(
      Assignment assignment,
      TrainModels bench,
      Target target,
      List<Instruction> told,
      Course course) {
    this.bench = bench;
    this.service = assignment.stock().service();
    this.gaugePa = assignment.route().units().pressureStepPa();
    this.practice = assignment.policy().practice().correction();
    this.target = target;
    Margins margins = assignment.policy().margins();
    this.nearestM =
        (target.standsThere() ? margins.stopTolerance() : margins.beforeBoard()).metres();
    this.told = told;
    this.course = course;
    this.stepper = bench.plannedStepper();
    this.rig = bench.service(target);
  }

  /**
   * How it came out.
   *
   * @param metM where the train stands, or its speed is down to the permissible one of the board;
   *     empty where that is never
   * @param full whether full service was asked for
   */
  record End(OptionalDouble metM, boolean full) {}

  /** From the braking point, where the stepper is. */
  End run(Stepper from, TrainBrake drawn) {
    stepper = from;
    rig = drawn;
    correctionPa = 0;
    demandPa = stepper.demandPa();
    full = false;
    double beganM = stepper.atM();
    int next = 0;
    double toldS = stepper.timeS();
    carryOut(told.get(next++));
    double looksS = stepper.timeS() + practice.looksEvery().seconds();
    double actsS = NEVER;
    double decidedPa = 0;
    while (stepper.speedMps() > target.speedMps()) {
      Trigger awaited = next < told.size() ? told.get(next).trigger() : new Trigger.Standstill();
      double afterS = awaited.after().map(a -> a.seconds()).orElse(NEVER) + toldS;
      double downMps = Math.max(target.speedMps(), downMps(awaited));
      double timeS = Math.min(afterS, Math.min(looksS, actsS));
      StopReason ended =
          stepper.advance(until.clear().hopeless(beganM).speedDown(downMps).time(timeS));
      if (ended == StopReason.STANDSTILL) {
        break;
      } else if (ended == StopReason.TIME && timeS < afterS) {
        if (timeS == actsS) {
          correctionPa = decidedPa;
          actsS = NEVER;
          if (settingPa() != demandPa) {
            apply();
          }
        } else {
          decidedPa = wantedPa();
          looksS = timeS + practice.looksEvery().seconds();
          if (decidedPa != correctionPa) {
            actsS = timeS + practice.reaction().seconds();
            // Nobody looks while his hand is still on its way.
            looksS = Math.max(looksS, actsS);
          }
        }
      } else if (ended == StopReason.TIME || ended == StopReason.SPEED_DOWN) {
        if (stepper.speedMps() > target.speedMps()) {
          toldS = stepper.timeS();
          carryOut(told.get(next++));
        }
      } else {
        return new End(OptionalDouble.empty(), full);
      }
    }
    return new End(OptionalDouble.of(stepper.atM()), full);
  }

  private static double downMps(Trigger awaited) {
    return awaited.match(
        place -> 0.0, up -> 0.0, down -> down.speedMps(), after -> 0.0, start -> 0.0, stand -> 0.0);
  }

  private void carryOut(Instruction instruction) {
    instruction
        .command()
        .act(
            power -> {},
            off -> {},
            brake -> {
              printedPa = brake.pressurePa();
              apply();
            },
            release -> {
              demandPa = 0;
              stepper.brake(rig, 0);
            },
            stand -> {},
            hold -> {});
  }

  /** What is printed and the correction on top of it, as far as the handle can set it. */
  private double settingPa() {
    double wantedPa =
        correctionPa == 0
            ? printedPa
            : setting(Math.max(printedPa + correctionPa, rig.thresholdPa()));
    return rig.gradualRelease() ? wantedPa : Math.max(demandPa, wantedPa);
  }

  private void apply() {
    demandPa = settingPa();
    full |= demandPa >= rig.fullPa();
    stepper.brake(rig, demandPa);
  }

  /** The nearest that the gauge can show, or the nearest step of the handle; full is its end. */
  private double setting(double pascals) {
    if (pascals > rig.fullPa() - gaugePa / 2) {
      return rig.fullPa();
    }
    return service
        .control()
        .match(
            any -> Pressures.asked(service, pascals, gaugePa),
            steps ->
                steps.pressures().stream()
                    .map(Pressure::pascals)
                    .min(Comparator.comparingDouble(p -> Math.abs(p - pascals)))
                    .orElse(pascals));
  }

  /** What takes off, over the rest of the way, the speed that the plan does not have here. */
  private double wantedPa() {
    double mps = stepper.speedMps();
    double plannedMps = course.speedMps(stepper.atM());
    double restM = Math.max(course.endM() - stepper.atM(), nearestM);
    double moreMps2 = (mps * mps - plannedMps * plannedMps) / (2 * restM);
    TrainBrake planned = bench.service(target);
    double perPaMps2 = bench.brakedMps2(planned, mps, planned.thresholdPa() + 1);
    return Math.rint(moreMps2 / perPaMps2 / gaugePa) * gaugePa;
  }
}
