package gradepost.ride;

import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.stock.BrakeSystem;
import java.util.Optional;

/**
 * Reads the brake for a target out of a tied run: where the handle was moved, at what speed, and
 * what the gauge then showed.
 */
final class BrakeReading {
  /** The brake is on at this share of the briefed first application. */
  static final double ON_SHARE = 0.3;

  /** Where the plan has the brake on before, the first application is so far on from that. */
  private static final double ON_FURTHER_SHARE = 0.5;

  /** Read so far into the holding: the brake has filled, the main application has not begun. */
  private static final double HELD_SHARE = 0.7;

  private final Plan plan;
  private final TiedRun run;

  /** Line of the last application that was read for an approach; none counts for two. */
  private int read = -1;

  BrakeReading(Plan plan, TiedRun run) {
    this.plan = plan;
    this.run = run;
  }

  /** What was read of one braking. */
  record Read(Measured atM, Measured speedMps, double firstPa) {}

  /**
   * The braking for an approach; to be asked for one after the other.
   *
   * @param toM where its own stretch ends
   * @return empty where none is seen, or where it may lie in what was not recorded
   */
  Optional<Read> of(Approach a, double fromM, double toM) {
    // A late brake belongs to its target, also where the page of the next one has begun.
    int on = brakedAfter(a, fromM, Math.max(toM, a.target().atM()));
    if (on < 0) {
      return Optional.empty();
    }
    read = on;
    double at = asked(on, a);
    boolean seen = run.observed(Math.min(at, run.atM(on)), run.atM(on + 1));
    double within = run.withinAt(at);
    return seen
        ? Optional.of(new Read(new Measured(at, within), run.speedAt(at), held(on, onPa(a))))
        : Optional.empty();
  }

  /** The first application is seen where the gauge shows this. */
  private double onPa(Approach a) {
    double first =
        RideJudge.firstPressure(a).orElse(plan.assignment().policy().stopping().first().pascals());
    double before = beforePa(a);
    return before > 0 && before < first
        ? before + ON_FURTHER_SHARE * (first - before)
        : ON_SHARE * first;
  }

  /** Pressure that the plan still has on, of a check mostly, where the braking begins. */
  private double beforePa(Approach a) {
    double point = a.brakingPointM().orElse(a.fromM());
    double on = 0;
    for (Approach each : plan.approaches()) {
      for (Action action : each.actions()) {
        if (action.atM() < point - 1) {
          on = after(action.command(), on);
        }
      }
    }
    return on;
  }

  private static double after(Command command, double pascals) {
    return command.match(
        power -> pascals,
        off -> pascals,
        Command.Brake::pressurePa,
        release -> 0.0,
        stand -> 0.0,
        hold -> 0.0);
  }

  private double pressure(int i) {
    return run.pressurePa(i).orElse(0.0);
  }

  /**
   * Of the times that the brake went on on this approach the one nearest to the briefed point; the
   * line after which it did, or −1.
   */
  private int brakedAfter(Approach a, double fromM, double toM) {
    if (a.brakingPointM().isEmpty()) {
      return -1;
    }
    double point = a.brakingPointM().get();
    double on = onPa(a);
    int best = -1;
    int first = Math.max(read + 1, run.firstAt(fromM) - 1);
    for (int i = first; i + 1 < run.size() && run.atM(i) < toM; i++) {
      boolean told = run.pressurePa(i).isPresent() && run.pressurePa(i + 1).isPresent();
      boolean here = run.atM(i + 1) > fromM;
      boolean rises = pressure(i) < on && pressure(i + 1) >= on;
      if (told
          && here
          && rises
          && run.speedMps(i) > WheelCount.STANDS_MPS
          && (best < 0 || Math.abs(where(i, on) - point) < Math.abs(where(best, on) - point))) {
        best = i;
      }
    }
    return best;
  }

  private double where(int i, double pascals) {
    double share = (pascals - pressure(i)) / rise(i);
    return run.atM(i) + share * (run.atM(i + 1) - run.atM(i));
  }

  /** Where the handle was moved: the gauge shows it after the brake's own time to answer. */
  private double asked(int i, Approach a) {
    BrakeSystem service = plan.assignment().stock().service();
    double onPa = onPa(a);
    double deadS = service.action().deadTime().seconds();
    double rate = service.application().pascalsPerSecond();
    double at = where(i, onPa);
    double before = Math.min(beforePa(a), shownBefore(i, deadS + onPa / rate));
    return at - (deadS + (onPa - before) / rate) * run.speedAt(at).value();
  }

  /** What the gauge showed so long before a line. */
  private double shownBefore(int i, double seconds) {
    int k = i;
    while (k > 0 && run.timeS(k) > run.timeS(i) - seconds) {
      k--;
    }
    return pressure(k);
  }

  /**
   * The pressure while the first application is held as the policy says; where no line falls into
   * the later half of that, the one after it.
   */
  private double held(int i, double onPa) {
    double held = plan.assignment().policy().stopping().firstHeld().seconds();
    double span = HELD_SHARE * held;
    double share = (onPa - pressure(i)) / rise(i);
    double from = run.timeS(i) + share * (run.timeS(i + 1) - run.timeS(i));
    double most = 0;
    boolean late = false;
    for (int k = i + 1; k < run.size() && (run.timeS(k) <= from + span || !late); k++) {
      most = Math.max(most, pressure(k));
      late = run.timeS(k) >= from + span / 2;
    }
    return most;
  }

  private double rise(int i) {
    return pressure(i + 1) - pressure(i);
  }
}
