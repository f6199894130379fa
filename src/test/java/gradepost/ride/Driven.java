package gradepost.ride;

import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.ride.Ride.Sample;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;

/**
 * A run as it was driven, moment by moment on the road, and what a recorder that counts by a wheel
 * would have exported of it. Begins as the plan, driven as it stands.
 */
public final class Driven {
  private static final double EACH_S = 0.1;
  private static final double DWELL_S = 30;
  private static final double MPH = 0.44704;

  /** A moment: where the front is, m, how fast, m/s, pressure, Pa, and notch, −1 for off. */
  public record Moment(double atM, double speedMps, double pressurePa, int notch) {}

  private final Plan plan;

  /** So often as {@link #EACH_S} while it moves; where it stands, {@link #DWELL_S} long. */
  private final List<Moment> moments;

  private Driven(Plan plan, List<Moment> moments) {
    this.plan = plan;
    this.moments = moments;
  }

  public static Driven asPlanned(Plan plan) {
    List<Moment> out = new ArrayList<>();
    List<Trace.Point> points = plan.trace().points();
    stand(out, points.get(0));
    for (int i = 1; i < points.size(); i++) {
      Trace.Point a = points.get(i - 1);
      Trace.Point b = points.get(i);
      double lasts = b.timeS() - a.timeS();
      int steps = (int) Math.ceil(lasts / EACH_S);
      for (int k = 1; k <= steps; k++) {
        double share = k / (double) steps;
        double speed = a.speedMps() + share * (b.speedMps() - a.speedMps());
        double at = a.atM() + share * lasts * (a.speedMps() + speed) / 2;
        at = k == steps ? b.atM() : Math.min(at, b.atM());
        double pressure = a.pressurePa() + share * (b.pressurePa() - a.pressurePa());
        out.add(new Moment(at, speed, pressure, k == steps ? b.notch() : a.notch()));
      }
      if (b.speedMps() == 0 && a.speedMps() > 0) {
        stand(out, b);
      }
    }
    return new Driven(plan, out);
  }

  private static void stand(List<Moment> out, Trace.Point p) {
    for (int i = 0; i < DWELL_S / EACH_S; i++) {
      out.add(new Moment(p.atM(), 0, p.pressurePa(), -1));
    }
  }

  /** The brake for an approach goes on so much later, and brings the train to the same place. */
  Driven late(Approach a, double byM) {
    double point = a.brakingPointM().orElseThrow();
    double end = a.target().atM();
    List<Moment> out = new ArrayList<>();
    for (Moment m : moments) {
      if (m.atM() <= point || m.atM() >= end || m.speedMps() == 0) {
        out.add(m);
        continue;
      }
      double was =
          m.atM() < point + byM
              ? point
              : point + (m.atM() - point - byM) * (end - point) / (end - point - byM);
      Moment then = at(was);
      out.add(new Moment(m.atM(), then.speedMps(), then.pressurePa(), then.notch()));
    }
    return new Driven(plan, evenly(out));
  }

  private static final double RAMP_M = 320;

  /** So much over the permissible speed from a place on, for some seconds; gently up and down. */
  Driven over(double fromM, double byMps, double seconds) {
    CeilingStep step =
        plan.ceiling().stream().filter(s -> s.toM() > fromM).findFirst().orElseThrow();
    double top = step.speedMps() + byMps;
    double toM = fromM + seconds * top;
    List<Moment> out = new ArrayList<>();
    for (Moment m : moments) {
      double beside = Math.max(0, Math.max(fromM - m.atM(), m.atM() - toM));
      double share = Math.max(0, 1 - beside / RAMP_M);
      double speed = m.speedMps() + share * (top - m.speedMps());
      out.add(speed > m.speedMps() ? new Moment(m.atM(), speed, m.pressurePa(), m.notch()) : m);
    }
    return new Driven(plan, evenly(out));
  }

  /** The handle elsewhere from a place on, for some seconds. */
  Driven handle(double fromM, double seconds, int notch) {
    List<Moment> out = new ArrayList<>(moments);
    int from = 0;
    while (moments.get(from).atM() < fromM) {
      from++;
    }
    for (int i = from; i < from + seconds / EACH_S; i++) {
      Moment m = moments.get(i);
      out.set(i, new Moment(m.atM(), m.speedMps(), m.pressurePa(), notch));
    }
    return new Driven(plan, out);
  }

  /** Each moment changed by itself; places and times stay. */
  Driven with(UnaryOperator<Moment> change) {
    return new Driven(plan, moments.stream().map(change).toList());
  }

  private Moment at(double atM) {
    int low = 0;
    int high = moments.size() - 1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (moments.get(middle).atM() <= atM) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return moments.get(low);
  }

  /** The same places at the same speeds, moment by moment again. */
  private static List<Moment> evenly(List<Moment> moments) {
    List<Moment> out = new ArrayList<>();
    Moment last = moments.get(0);
    out.add(last);
    double left = EACH_S;
    for (Moment m : moments.subList(1, moments.size())) {
      double mean = (m.speedMps() + last.speedMps()) / 2;
      if (mean < 1e-6 || m.atM() <= last.atM()) {
        out.add(m);
        last = m;
        left = EACH_S;
        continue;
      }
      double lasts = (m.atM() - last.atM()) / mean;
      double t = left;
      for (; t <= lasts; t += EACH_S) {
        double share = t / lasts;
        out.add(
            new Moment(
                last.atM() + share * (m.atM() - last.atM()),
                last.speedMps() + share * (m.speedMps() - last.speedMps()),
                last.pressurePa() + share * (m.pressurePa() - last.pressurePa()),
                share < 1 ? last.notch() : m.notch()));
      }
      left = t - lasts;
      last = m;
    }
    return out;
  }

  List<Moment> moments() {
    return moments;
  }

  /**
   * A recorder.
   *
   * @param scale metres counted for each metre of road
   * @param slip by how much the wheel runs too fast while starting, and too slowly under the brake
   * @param hz lines a second
   * @param jitterS by how much their times are wrong
   */
  public record Recorder(double scale, double slip, double hz, double jitterS, boolean coarse) {
    /** One that is right in everything, ten lines a second. */
    public static Recorder exact() {
      return new Recorder(1, 0, 10, 0, false);
    }

    private static final double STARTS_MPS = 8;
    private static final double BRAKES_PA = 26 * 6894.757;

    Ride.Recorded export(Driven run, Random random) {
      List<Sample> out = new ArrayList<>();
      double counted = 0;
      double next = 0;
      Moment last = run.moments().get(0);
      for (int i = 0; i < run.moments().size(); i++) {
        Moment m = run.moments().get(i);
        boolean starts = m.notch() >= 0 && m.speedMps() < STARTS_MPS;
        boolean brakes = m.pressurePa() > BRAKES_PA && m.speedMps() > 0;
        double wheel = scale * (1 + (starts ? slip : brakes ? -slip : 0));
        counted += (m.atM() - last.atM()) * wheel;
        last = m;
        double time = i * EACH_S;
        if (time + 1e-9 >= next) {
          next += 1 / hz;
          double told = time + jitterS * (2 * random.nextDouble() - 1);
          out.add(
              new Sample(
                  Optional.of(told),
                  step(counted, 0.5),
                  step(m.speedMps() * wheel, 1 / 3.6),
                  Optional.of(step(m.pressurePa(), 6894.757)),
                  Optional.of(m.notch()),
                  Optional.empty(),
                  false));
        }
      }
      return new Ride.Recorded(out);
    }

    /** The same as a file. */
    public String csv(Driven run, Random random) {
      StringBuilder out =
          new StringBuilder("time,distance (m),speed (km/h),pressure (psi),notch\n");
      for (Sample s : export(run, random).samples()) {
        out.append(
            String.format(
                Locale.ROOT,
                "%.2f,%.2f,%.2f,%.1f,%d%n",
                s.timeS().orElseThrow(),
                s.countedM(),
                s.speedMps() * 3.6,
                s.pressurePa().orElseThrow() / 6894.757,
                s.notch().orElseThrow() + 1));
      }
      return out.toString();
    }

    private double step(double value, double by) {
      return coarse ? Math.round(value / by) * by : value;
    }
  }

  static double mph(double mph) {
    return mph * MPH;
  }
}
