package gradepost.drive.grid;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.Slack;
import gradepost.motion.EvenChange;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where and how far power is taken on a leg, and to what speeds it is braked: what a driver is to
 * aim for before the rules of driving turn it into instructions.
 *
 * @param powers in order
 * @param releases where a brake comes off before a reduction
 * @param trace speeds along the way
 */
public record ControlProfile(
    List<PowerPhase> powers, List<SpeedPoint> releases, List<SpeedPoint> trace) {
  /** A release of the guide belongs to a target so far behind it, and so little before it. */
  static final double RELEASED_BEHIND_M = 300;

  private static final double RELEASED_BEFORE_M = 100;

  /**
   * Power from a place on, up to a speed (infinite: up to its place, or as the rules have it).
   *
   * @param notches in order of place, from where power is taken on; each higher than the last
   */
  public record PowerPhase(double onM, List<Notch> notches, double offM, double offMps) {
    /** Keeps the notches as they are. */
    public PowerPhase {
      notches = List.copyOf(notches);
    }

    /** Whether it comes off at its place, if the rules have not taken it off before. */
    public boolean offAtPlace() {
      return offMps == Double.POSITIVE_INFINITY;
    }

    /** The notch that is held at a place. */
    public int notchAt(double atM) {
      int held = notches.get(0).notch();
      for (Notch notch : notches) {
        held = notch.fromM() <= atM + 1 ? notch.notch() : held;
      }
      return held;
    }

    private PowerPhase from(double otherM) {
      return new PowerPhase(otherM, notches, offM, offMps);
    }

    private PowerPhase upTo(double otherMps) {
      return new PowerPhase(onM, notches, offM, otherMps);
    }

    private PowerPhase offAt(double otherM) {
      return new PowerPhase(onM, notches, otherM, offMps);
    }

    private PowerPhase in(List<Notch> others) {
      return new PowerPhase(onM, others, offM, offMps);
    }
  }

  /** A notch that is held from a place on. */
  public record Notch(double fromM, int notch) {}

  /** A speed at a place. */
  public record SpeedPoint(double atM, double mps) {}

  /** No guide: by the rules alone. */
  public static final ControlProfile NONE = new ControlProfile(List.of(), List.of(), List.of());

  /** Whether it has power on anywhere; a leg without that is driven by the rules alone. */
  public boolean guides() {
    return !powers.isEmpty();
  }

  /** The power that was begun last at a place, by its index; −1 before the first. */
  public int powerAt(double atM) {
    int index = -1;
    for (int i = 0; i < powers.size(); i++) {
      if (powers.get(i).onM() <= atM + 1) {
        index = i;
      }
    }
    return index;
  }

  /** Where power is to be taken or come off, or a higher notch be taken, next. */
  public double nextM(double atM) {
    for (PowerPhase power : powers) {
      if (power.onM() > atM) {
        return power.onM();
      }
      for (Notch notch : power.notches()) {
        if (notch.fromM() > atM) {
          return notch.fromM();
        }
      }
      if (power.offAtPlace() && power.offM() > atM) {
        return power.offM();
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /**
   * Things in which a guide may differ from this one, by a unit of speed or a little way.
   *
   * @param unitMps the unit of speed
   * @param moveM the little way
   */
  public List<GuideChange> changes(double unitMps, double moveM) {
    List<GuideChange> all = new ArrayList<>();
    for (int i = 0; i < powers.size(); i++) {
      PowerPhase power = powers.get(i);
      if (power.offMps() < Double.POSITIVE_INFINITY) {
        all.add(new GuideChange.OtherPower(power, power.upTo(power.offMps() - unitMps)));
        all.add(new GuideChange.OtherPower(power, power.upTo(power.offMps() + unitMps)));
      } else {
        all.add(new GuideChange.OtherPower(power, power.offAt(power.offM() - moveM)));
        all.add(new GuideChange.OtherPower(power, power.offAt(power.offM() + moveM)));
      }
      otherNotches(power.notches())
          .forEach(n -> all.add(new GuideChange.OtherPower(power, power.in(n))));
      if (i > 0) {
        for (double by : new double[] {-moveM, moveM}) {
          double onM = power.onM() + by;
          if (onM > powers.get(i - 1).offM() && onM < power.offM()) {
            all.add(new GuideChange.OtherPower(power, power.from(onM)));
          }
        }
        all.add(new GuideChange.NoPower(power));
        PowerPhase before = powers.get(i - 1);
        all.add(
            new GuideChange.OnePower(
                before,
                power,
                new PowerPhase(before.onM(), before.notches(), power.offM(), power.offMps())));
      }
    }
    for (SpeedPoint is : releases) {
      for (double by : new double[] {-2 * unitMps, 2 * unitMps}) {
        all.add(
            new GuideChange.OtherRelease(is, new SpeedPoint(is.atM(), Math.max(1, is.mps() + by))));
      }
    }
    return all;
  }

  /** This guide with some things different, each in a place of its own. */
  public ControlProfile with(List<GuideChange> changes) {
    List<PowerPhase> otherPowers = new ArrayList<>(powers);
    List<SpeedPoint> otherReleases = new ArrayList<>(releases);
    changes.forEach(change -> change.make(otherPowers, otherReleases));
    return new ControlProfile(List.copyOf(otherPowers), List.copyOf(otherReleases), trace);
  }

  /** One notch less or more somewhere, or one notch not taken. */
  private static List<List<Notch>> otherNotches(List<Notch> notches) {
    List<List<Notch>> all = new ArrayList<>();
    for (int i = 0; i < notches.size(); i++) {
      Notch notch = notches.get(i);
      int below = i == 0 ? -1 : notches.get(i - 1).notch();
      int above = i + 1 == notches.size() ? Integer.MAX_VALUE : notches.get(i + 1).notch();
      for (int by = -1; by <= 1; by += 2) {
        if (notch.notch() + by > below && notch.notch() + by < above) {
          List<Notch> others = new ArrayList<>(notches);
          others.set(i, new Notch(notch.fromM(), notch.notch() + by));
          all.add(others);
        }
      }
      if (i > 0) {
        List<Notch> fewer = new ArrayList<>(notches);
        fewer.remove(i);
        all.add(fewer);
        List<Notch> sooner = new ArrayList<>(notches);
        sooner.remove(i);
        sooner.set(i - 1, new Notch(notches.get(i - 1).fromM(), notch.notch()));
        all.add(sooner);
      }
    }
    return all;
  }

  /**
   * Whether the guide has power on here, or the train has fallen far behind it.
   *
   * @param done the power that was taken off last, by its index
   * @param settings how far the train may be from it
   */
  public boolean wantsPower(double atM, double mps, int done, PlannerSettings settings) {
    return on(atM, done, settings) || fallen(atM, mps, settings);
  }

  /** Whether the guide has power on here, and the train is about where it should be. */
  public boolean holds(double atM, double mps, int done, PlannerSettings settings) {
    return on(atM, done, settings) && !fallen(atM, mps, settings);
  }

  /** Whether power that is on by the guide is to come off at this place, or was before it. */
  public boolean offAtPlace(double atM, int done) {
    int index = powerAt(atM);
    return index > done
        && powers.get(index).offAtPlace()
        && atM >= powers.get(index).offM() - Slack.PLACE_M;
  }

  private boolean on(double atM, int done, PlannerSettings settings) {
    int index = powerAt(atM);
    return index > done && atM < powers.get(index).offM() + settings.grid().nearM();
  }

  private boolean fallen(double atM, double mps, PlannerSettings settings) {
    return mps < settings.way().behind() * speedAt(atM);
  }

  private double speedAt(double atM) {
    int low = 0;
    int high = trace.size();
    while (high - low > 1) {
      int middle = (low + high) / 2;
      if (trace.get(middle).atM() >= atM) {
        high = middle;
      } else {
        low = middle;
      }
    }
    if (high >= trace.size()) {
      return 0;
    }
    SpeedPoint from = trace.get(high - 1);
    SpeedPoint to = trace.get(high);
    return EvenChange.speedMps(from.atM(), from.mps(), to.atM(), to.mps(), atM);
  }

  /** The place where the first power begins that the other guide does not have like this. */
  public double sameUpToM(ControlProfile other) {
    if (guides() != other.guides() || !trace.equals(other.trace)) {
      return Double.NEGATIVE_INFINITY;
    }
    int i = 0;
    while (i < powers.size()
        && i < other.powers.size()
        && powers.get(i).equals(other.powers.get(i))) {
      i++;
    }
    return Math.min(onM(i), other.onM(i)) - 1;
  }

  private double onM(int index) {
    return index < powers.size() ? powers.get(index).onM() : Double.POSITIVE_INFINITY;
  }

  /** The speed that a brake before this place is released at. */
  public Optional<Double> releaseBefore(double atM) {
    Optional<Double> found = Optional.empty();
    for (SpeedPoint release : releases) {
      if (release.atM() > atM - RELEASED_BEHIND_M && release.atM() < atM + RELEASED_BEFORE_M) {
        found = Optional.of(release.mps());
      }
    }
    return found;
  }

  /** Collects a guide. */
  static final class Maker {
    private final PlannerSettings.Way settings;
    private final List<PowerPhase> powers = new ArrayList<>();
    private final List<SpeedPoint> releases = new ArrayList<>();
    private final List<SpeedPoint> trace = new ArrayList<>();
    private final List<Notch> notches = new ArrayList<>();

    Maker(PlannerSettings.Way settings) {
      this.settings = settings;
    }

    void point(double atM, double mps) {
      trace.add(new SpeedPoint(atM, mps));
    }

    void power(double atM, int to, boolean already) {
      if (!already) {
        notches.clear();
      }
      if (notches.isEmpty() || to > notches.get(notches.size() - 1).notch()) {
        notches.add(new Notch(atM, to));
      }
    }

    /** Power comes off: at a speed, or at the place where the speed hardly rises any more. */
    void off(double atM, double mps) {
      double before = 0;
      for (SpeedPoint point : trace) {
        before = point.atM() <= atM - settings.gainsInM() ? point.mps() : before;
      }
      boolean gains =
          mps - before > settings.gainsMps() || atM - notches.get(0).fromM() < settings.gainsInM();
      powers.add(
          new PowerPhase(
              notches.get(0).fromM(), notches, atM, gains ? mps : Double.POSITIVE_INFINITY));
    }

    void released(double atM, double mps) {
      releases.add(new SpeedPoint(atM, mps));
    }

    ControlProfile guide() {
      return new ControlProfile(List.copyOf(powers), List.copyOf(releases), List.copyOf(trace));
    }
  }
}
