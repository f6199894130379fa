package gradepost.ride;

import gradepost.motion.EvenChange;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.ride.Ride.Observed;
import gradepost.ride.Ride.Sample;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Traction;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads out of a recorder's export what an assessor would have written down. */
final class RecordReading {
  /** The brake is on at this share of the briefed first application. */
  private static final double ON_SHARE = 0.3;

  /** Where the plan has the brake on before, the first application is so far on from that. */
  private static final double ON_FURTHER_SHARE = 0.5;

  /** Read so far into the holding: the brake has filled, the main application has not begun. */
  private static final double HELD_SHARE = 0.7;

  /** A release shows on the gauge within this time, as a fall to this share. */
  private static final double RELEASE_SEEN_S = 1.5;

  private static final double RELEASE_SHARE = 0.9;

  /** Slower than this the train stands. */
  private static final double STANDS_MPS = 0.3;

  /** A stop belongs to a mark so far away at most. */
  private static final double STOP_WITHIN_M = 300;

  private final Plan plan;
  private final Ride.Recorded ride;
  private final List<Sample> samples;
  private final double[] timeS;

  /** Sample of the last application that was read for an approach; none counts for two. */
  private int read = -1;

  RecordReading(Plan plan, Ride.Recorded ride) {
    this.plan = plan;
    this.ride = ride;
    this.samples = ride.samples();
    this.timeS = new double[samples.size()];
    for (int i = 1; i < timeS.length; i++) {
      Sample a = samples.get(i - 1);
      Sample b = samples.get(i);
      double mean = Math.max(0.05, (a.speedMps() + b.speedMps()) / 2);
      timeS[i] = timeS[i - 1] + (b.atM() - a.atM()) / mean;
    }
  }

  List<Observed> approaches() {
    List<Observed> out = new ArrayList<>();
    List<Approach> all = plan.approaches();
    double end = samples.get(samples.size() - 1).atM();
    for (int i = 0; i < all.size(); i++) {
      Approach a = all.get(i);
      double to = i + 1 < all.size() ? all.get(i + 1).fromM() : plan.assignment().path().lengthM();
      boolean reached = end >= a.target().atM() - STOP_WITHIN_M;
      out.add(reached ? approach(a, to) : Observed.nothing(a.number()));
    }
    return out;
  }

  private Observed approach(Approach a, double toM) {
    // A late brake belongs to its target, also where the page of the next one has begun.
    Optional<Integer> on = brakedAfter(a, Math.max(toM, a.target().atM()));
    on.ifPresent(i -> read = i);
    return new Observed(
        a.number(),
        on.map(i -> asked(i, a)),
        on.map(i -> speedAt(asked(i, a))),
        on.map(i -> held(i, onPa(a))),
        stopError(a, toM),
        over(a.fromM(), toM),
        forbidden(a.fromM(), toM));
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

  private static double pressure(Sample s) {
    return s.pressurePa().orElse(0.0);
  }

  /**
   * Of the times that the brake went on on this approach the one nearest to the briefed point; the
   * sample after which it did.
   */
  private Optional<Integer> brakedAfter(Approach a, double toM) {
    if (!ride.pressures() || a.brakingPointM().isEmpty()) {
      return Optional.empty();
    }
    double point = a.brakingPointM().get();
    double on = onPa(a);
    int best = -1;
    for (int i = read + 1; i + 1 < samples.size(); i++) {
      boolean here = samples.get(i + 1).atM() > a.fromM() && samples.get(i).atM() < toM;
      boolean rises = pressure(samples.get(i)) < on && pressure(samples.get(i + 1)) >= on;
      if (here
          && rises
          && samples.get(i).speedMps() > STANDS_MPS
          && (best < 0 || Math.abs(where(i, on) - point) < Math.abs(where(best, on) - point))) {
        best = i;
      }
    }
    return best < 0 ? Optional.empty() : Optional.of(best);
  }

  private double where(int i, double pascals) {
    Sample a = samples.get(i);
    Sample b = samples.get(i + 1);
    double share = (pascals - pressure(a)) / rise(i);
    return a.atM() + share * (b.atM() - a.atM());
  }

  /** Where the handle was moved: the gauge shows it after the brake's own time to answer. */
  private double asked(int i, Approach a) {
    BrakeSystem service = plan.assignment().stock().service();
    double onPa = onPa(a);
    double deadS = service.action().deadTime().seconds();
    double rate = service.application().pascalsPerSecond();
    double at = where(i, onPa);
    double before = Math.min(beforePa(a), shownBefore(i, deadS + onPa / rate));
    return at - (deadS + (onPa - before) / rate) * speedAt(at);
  }

  /** What the gauge showed so long before a sample. */
  private double shownBefore(int i, double seconds) {
    int k = i;
    while (k > 0 && timeS[k] > timeS[i] - seconds) {
      k--;
    }
    return pressure(samples.get(k));
  }

  private double speedAt(double atM) {
    for (int i = 1; i < samples.size(); i++) {
      Sample a = samples.get(i - 1);
      Sample b = samples.get(i);
      if (b.atM() >= atM && b.atM() > a.atM()) {
        double on = Math.max(atM, a.atM());
        return EvenChange.speedMps(a.atM(), a.speedMps(), b.atM(), b.speedMps(), on);
      }
    }
    return samples.get(samples.size() - 1).speedMps();
  }

  /**
   * The pressure while the first application is held as the policy says; where no sample falls into
   * the later half of that, the one after it.
   */
  private double held(int i, double onPa) {
    double held = plan.assignment().policy().stopping().firstHeld().seconds();
    double span = HELD_SHARE * held;
    double share = (onPa - pressure(samples.get(i))) / rise(i);
    double from = timeS[i] + share * (timeS[i + 1] - timeS[i]);
    double most = 0;
    boolean late = false;
    for (int k = i + 1; k < samples.size() && (timeS[k] <= from + span || !late); k++) {
      most = Math.max(most, pressure(samples.get(k)));
      late = timeS[k] >= from + span / 2;
    }
    return most;
  }

  private double rise(int i) {
    return pressure(samples.get(i + 1)) - pressure(samples.get(i));
  }

  private Optional<Double> stopError(Approach a, double toM) {
    if (!a.target().isStop()) {
      return Optional.empty();
    }
    Optional<Double> stood = Optional.empty();
    for (Sample s : samples) {
      boolean here = s.atM() > a.fromM() + 1 && s.atM() < toM + STOP_WITHIN_M;
      if (here
          && s.speedMps() < STANDS_MPS
          && Math.abs(s.atM() - a.target().atM()) < STOP_WITHIN_M) {
        stood = Optional.of(a.target().atM() - s.atM());
      }
    }
    return stood;
  }

  /** Looked for at every sample and at every fall of the permissible speed between two. */
  private Optional<Double> over(double fromM, double toM) {
    double most = 0;
    for (int i = 0; i < samples.size(); i++) {
      Sample s = samples.get(i);
      if (s.atM() > fromM && s.atM() <= toM) {
        most = Math.max(most, s.speedMps() - ceiling(s.atM()));
      }
    }
    for (CeilingStep step : plan.ceiling()) {
      boolean driven = step.fromM() >= samples.get(0).atM();
      if (driven
          && step.fromM() > fromM
          && step.fromM() <= toM
          && step.fromM() <= samples.get(samples.size() - 1).atM()) {
        most = Math.max(most, speedAt(step.fromM()) - step.speedMps());
      }
    }
    return Optional.of(most);
  }

  private double ceiling(double atM) {
    List<CeilingStep> steps = plan.ceiling();
    return steps.stream()
        .filter(s -> atM < s.toM())
        .findFirst()
        .orElse(steps.get(steps.size() - 1))
        .speedMps();
  }

  private Optional<Integer> forbidden(double fromM, double toM) {
    if (!ride.notches()) {
      return Optional.empty();
    }
    Traction traction = plan.assignment().stock().traction();
    double on = ON_SHARE * plan.assignment().policy().stopping().first().pascals();
    int count = 0;
    for (int i = 1; i < samples.size(); i++) {
      Sample a = samples.get(i - 1);
      Sample b = samples.get(i);
      if (b.atM() <= fromM || b.atM() > toM) {
        continue;
      }
      int was = a.notch().orElse(-1);
      int is = b.notch().orElse(-1);
      boolean down = is >= 0 && is < was && !traction.notchingDown();
      // Between samples further apart than a notch takes, one may have passed unseen.
      boolean seen = timeS[i] - timeS[i - 1] < traction.timePerNotch().seconds();
      boolean skips = is > was + 1 && seen;
      boolean powerBraking = is > was && pressure(a) >= on && !releasing(i);
      if (down || skips || powerBraking) {
        count++;
      }
    }
    return Optional.of(count);
  }

  /** Whether the brake has been taken off by now, whatever the gauge still shows. */
  private boolean releasing(int i) {
    double before = pressure(samples.get(i - 1));
    int k = i;
    while (k + 1 < samples.size() && timeS[k] < timeS[i - 1] + RELEASE_SEEN_S) {
      k++;
    }
    return pressure(samples.get(k)) < RELEASE_SHARE * before;
  }
}
