package gradepost.drive;

import gradepost.motion.Ended;
import gradepost.motion.Stepper;
import gradepost.motion.Until;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the brake goes on for a target, by the speed that the train has there, so that it comes to
 * its aim as the technique says; and how long that takes. Between the speeds worked out, straight.
 */
final class BrakeCurve {
  private static final double STEP_MPS = 0.5;
  private static final int ROUNDS = 6;
  private static final double NEAR_M = 0.5;
  private static final double LONGEST_M = 2000;

  private final double aimM;
  private final double freeMps;
  private final double releaseMps;
  private final boolean staysOn;
  private final double[] placeM;

  /**
   * Of a brake that stays on: how far and how long behind the aim it is off, and the speed then.
   */
  private final double[] offM;

  private final double[] offS;
  private final double[] offMps;

  private final double[] seconds;
  private final double[] endMps;
  private final int[] moves;

  /**
   * @param leastM places before this one are of no interest
   * @param mostMps nor are speeds above this
   * @param comesOffMps where a brake that stays on past the aim comes off
   */
  BrakeCurve(
      Stepper stepper,
      Target target,
      Braking braking,
      double aimM,
      double leastM,
      double mostMps,
      double comesOffMps) {
    this.aimM = aimM;
    staysOn = braking.staysOn();
    releaseMps = braking.releases() ? braking.releasedAtMps() : 0;
    freeMps = Math.max(braking.aimMps(), releaseMps);
    int count = (int) Math.ceil((mostMps - freeMps) / STEP_MPS) + 2;
    placeM = new double[count];
    seconds = new double[count];
    endMps = new double[count];
    moves = new int[count];
    offM = new double[count];
    offS = new double[count];
    offMps = new double[count];
    placeM[0] = aimM;
    endMps[0] = freeMps;
    double last = aimM;
    double before = aimM;
    for (int i = 1; i < count; i++) {
      double x = 2 * last - before;
      for (int round = 0; round < ROUNDS && x > leastM; round++) {
        List<Instruction> out = new ArrayList<>();
        stepper.place(0, x, freeMps + i * STEP_MPS);
        Braking.Outcome outcome = braking.run(stepper, new Trigger.AtPlace(x), target, out);
        double past = outcome.endM() - aimM;
        if (!outcome.held()) {
          x = Double.NEGATIVE_INFINITY;
          break;
        }
        seconds[i] = outcome.endS();
        moves[i] = (int) out.stream().filter(o -> !(o.command() instanceof Command.Stand)).count();
        endMps[i] = Math.min(outcome.endMps(), freeMps);
        if (staysOn && !comesOff(stepper, braking, comesOffMps)) {
          x = Double.NEGATIVE_INFINITY;
          break;
        }
        offM[i] = stepper.atM() - outcome.endM();
        offS[i] = stepper.timeS() - outcome.endS();
        offMps[i] = stepper.speedMps();
        if (Math.abs(past) < NEAR_M) {
          break;
        }
        x -= past;
      }
      placeM[i] = x > leastM ? Math.min(x, aimM) : Double.NEGATIVE_INFINITY;
      before = x > leastM ? last : before;
      last = x > leastM ? x : last;
    }
  }

  /** Runs on with the brake on down to a speed, and until it is empty. */
  private static boolean comesOff(Stepper stepper, Braking braking, double offMps) {
    Until until = new Until().place(stepper.atM() + LONGEST_M).speedDown(offMps);
    if (stepper.speedMps() > offMps && stepper.advance(until) != Ended.SPEED_DOWN) {
      return false;
    }
    double emptyS = braking.emptyS(stepper.pressurePa());
    stepper.brake(braking.rig(), 0);
    stepper.advance(until.clear().time(stepper.timeS() + emptyS));
    return stepper.speedMps() > 0;
  }

  /** Whether the brake is on at the aim, and comes off behind it. */
  boolean staysOn() {
    return staysOn;
  }

  /** Of a brake that stays on: how far behind the aim it is off. */
  double offM(double mps) {
    return between(offM, Math.max(mps, freeMps + STEP_MPS));
  }

  /** How long behind the aim. */
  double offS(double mps) {
    return between(offS, Math.max(mps, freeMps + STEP_MPS));
  }

  /** The speed then. */
  double offMps(double mps) {
    return between(offMps, Math.max(mps, freeMps + STEP_MPS));
  }

  /** Where the braking is to be over. */
  double aimM() {
    return aimM;
  }

  /** Up to this speed no brake is needed. */
  double freeMps() {
    return freeMps;
  }

  /** The speed at which the brake comes off before the aim; 0 where it does not. */
  double releaseMps() {
    return releaseMps;
  }

  /** The last place for this speed; minus infinity where there is none on the leg. */
  double placeM(double mps) {
    if (mps <= freeMps) {
      return aimM;
    }
    int i = Math.min((int) ((mps - freeMps) / STEP_MPS), placeM.length - 2);
    boolean known = Math.min(placeM[i], placeM[i + 1]) > Double.NEGATIVE_INFINITY;
    return known ? between(placeM, mps) : Double.NEGATIVE_INFINITY;
  }

  double seconds(double mps) {
    return mps <= freeMps ? 0 : between(seconds, mps);
  }

  /** The speed that is left at the aim. */
  double endMps(double mps) {
    return mps <= freeMps ? mps : between(endMps, mps);
  }

  private double between(double[] all, double mps) {
    double j = (mps - freeMps) / STEP_MPS;
    int i = Math.min((int) j, all.length - 2);
    return all[i] + (j - i) * (all[i + 1] - all[i]);
  }

  /** The fewer of those at the speeds worked out on either side. */
  int moves(double mps) {
    if (mps <= freeMps) {
      return 0;
    }
    int i = Math.min((int) ((mps - freeMps) / STEP_MPS), moves.length - 2);
    return i == 0 ? moves[1] : Math.min(moves[i], moves[i + 1]);
  }

  /** The highest speed from which the aim can still be met. */
  double mostMps(double atM) {
    for (int i = placeM.length - 1; i > 0; i--) {
      if (placeM[i] >= atM) {
        return freeMps + i * STEP_MPS;
      }
      if (placeM[i - 1] >= atM) {
        double share =
            placeM[i] == Double.NEGATIVE_INFINITY
                ? 0
                : (placeM[i - 1] - atM) / (placeM[i - 1] - placeM[i]);
        return freeMps + (i - 1 + share) * STEP_MPS;
      }
    }
    return freeMps;
  }
}
