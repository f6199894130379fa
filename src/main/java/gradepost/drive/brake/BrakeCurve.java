package gradepost.drive.brake;

import gradepost.motion.Stepper;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the brake goes on for a target, by the speed that the train has there, so that it comes to
 * its aim as the technique says; and how long that takes. Between the speeds worked out, straight.
 *
 * <p>It does not look for its points as {@link LastPlace} does. They are for the grid of the search
 * and nothing printed is taken from them, so they need not be on the early side: half a metre
 * either way will do. And each is begun where the two before it lead to, so that one or two
 * brakings settle it; a search that knows only that a point lies before the last one takes twice as
 * many.
 */
public final class BrakeCurve {
  private final double stepMps;
  private final double aimM;
  private final double freeMps;
  private final double releaseMps;
  private final boolean staysOn;
  private final double[] placeM;
  private final double[] seconds;
  private final double[] endMps;
  private final int[] moves;

  /**
   * @param leastM places before this one are of no interest
   * @param mostMps nor are speeds above this
   */
  public BrakeCurve(
      PlannerSettings.Brake settings,
      Stepper stepper,
      Target target,
      Braking braking,
      double aimM,
      double leastM,
      double mostMps) {
    this.stepMps = settings.curveStepMps();
    this.aimM = aimM;
    staysOn = braking.staysOn();
    releaseMps = braking.releases() ? braking.releasedAtMps() : 0;
    freeMps = Math.max(braking.aimMps(), releaseMps);
    int count = (int) Math.ceil((mostMps - freeMps) / stepMps) + 2;
    placeM = new double[count];
    seconds = new double[count];
    endMps = new double[count];
    moves = new int[count];
    placeM[0] = aimM;
    endMps[0] = freeMps;
    double last = aimM;
    double before = aimM;
    for (int i = 1; i < count; i++) {
      double x = 2 * last - before;
      for (int round = 0; round < settings.curveRounds() && x > leastM; round++) {
        List<Instruction> out = new ArrayList<>();
        stepper.place(0, x, freeMps + i * stepMps);
        Braking.Outcome outcome = braking.run(stepper, new Trigger.AtPlace(x), target, out);
        double past = outcome.endM() - aimM;
        if (!outcome.held()) {
          x = Double.NEGATIVE_INFINITY;
          break;
        }
        seconds[i] = outcome.endS();
        moves[i] = (int) out.stream().filter(o -> !o.command().isStand()).count();
        endMps[i] = Math.min(outcome.endMps(), freeMps);
        if (Math.abs(past) < settings.curveNearM()) {
          break;
        }
        x -= past;
      }
      placeM[i] = x > leastM ? Math.min(x, aimM) : Double.NEGATIVE_INFINITY;
      before = x > leastM ? last : before;
      last = x > leastM ? x : last;
    }
  }

  /** Whether the brake is on at the aim, and comes off behind it. */
  public boolean staysOn() {
    return staysOn;
  }

  /** Where the braking is to be over. */
  public double aimM() {
    return aimM;
  }

  /** Up to this speed no brake is needed. */
  public double freeMps() {
    return freeMps;
  }

  /** The speed at which the brake comes off before the aim; 0 where it does not. */
  public double releaseMps() {
    return releaseMps;
  }

  /** The last place for this speed; minus infinity where there is none on the leg. */
  public double placeM(double mps) {
    if (mps <= freeMps) {
      return aimM;
    }
    int i = Math.min((int) ((mps - freeMps) / stepMps), placeM.length - 2);
    boolean known = Math.min(placeM[i], placeM[i + 1]) > Double.NEGATIVE_INFINITY;
    return known ? between(placeM, mps) : Double.NEGATIVE_INFINITY;
  }

  /** Time from where the brake goes on at this speed to the aim, seconds. */
  public double seconds(double mps) {
    return mps <= freeMps ? 0 : between(seconds, mps);
  }

  /** The speed that is left at the aim. */
  public double endMps(double mps) {
    return mps <= freeMps ? mps : between(endMps, mps);
  }

  private double between(double[] all, double mps) {
    double j = (mps - freeMps) / stepMps;
    int i = Math.min((int) j, all.length - 2);
    return all[i] + (j - i) * (all[i + 1] - all[i]);
  }

  /** The fewer of those at the speeds worked out on either side. */
  public int moves(double mps) {
    if (mps <= freeMps) {
      return 0;
    }
    int i = Math.min((int) ((mps - freeMps) / stepMps), moves.length - 2);
    return i == 0 ? moves[1] : Math.min(moves[i], moves[i + 1]);
  }

  /** The highest speed from which the aim can still be met. */
  public double mostMps(double atM) {
    for (int i = placeM.length - 1; i > 0; i--) {
      if (placeM[i] >= atM) {
        return freeMps + i * stepMps;
      }
      if (placeM[i - 1] >= atM) {
        double share =
            placeM[i] == Double.NEGATIVE_INFINITY
                ? 0
                : (placeM[i - 1] - atM) / (placeM[i - 1] - placeM[i]);
        return freeMps + (i - 1 + share) * stepMps;
      }
    }
    return freeMps;
  }
}
