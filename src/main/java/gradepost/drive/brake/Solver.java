package gradepost.drive.brake;

import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.policy.BrakePractice;
import gradepost.task.Assignment;
import java.util.List;

/** Solves a technique again for the place that is printed. */
public final class Solver {
  /** So often the next pressure is guessed by how the last ones came out, before it is halved. */
  private static final int GUESSES = 8;

  private final Assignment assignment;
  private final PlannerSettings.Brake settings;
  private final double toleranceM;
  private final double leastHeldS;
  private final double longerS;

  /** For a train and its track. */
  public Solver(Assignment assignment, PlannerSettings.Brake settings) {
    this.assignment = assignment;
    this.settings = settings;
    this.toleranceM = assignment.policy().margins().stopTolerance().metres();
    BrakePractice practice = assignment.policy().practice().brake();
    this.leastHeldS = practice.firstHeldLeast().seconds();
    this.longerS = practice.firstHeldLonger().seconds();
  }

  private record Tried(Braking braking, double shortM) {}

  /** Brakings from one place for one aim. */
  private record Trials(Stepper stepper, RunTree runs, double aimM) {
    Tried of(Braking braking) {
      return new Tried(braking, braking.run(stepper, runs).shortOf(aimM));
    }
  }

  /**
   * The technique that, begun in this state, comes nearest short of {@code aimM}: the main pressure
   * in steps that the gauge shows, then the speeds of easing in whole units.
   */
  public Braking forPlace(
      Braking nominal, Stepper stepper, Snapshot start, double aimM, boolean stop) {
    double step = assignment.route().units().pressureStepPa();
    List<Double> mains =
        Pressures.mains(
            assignment.stock().service(),
            lightest(nominal, start.speedMps()),
            nominal.mainPa() + 3 * step,
            step);
    Trials trials = new Trials(stepper, new RunTree(stepper, start), aimM);
    // More pressure stops shorter: between the lightest, which runs over, and the heaviest.
    Tried holds = null;
    Tried over = null;
    int light = mains.size();
    int heavy = -1;
    int next = lightestFrom(mains, nominal.mainPa());
    int last = -1;
    double lastShortM = Double.NaN;
    for (int i = 0; light - heavy > 1; i++) {
      int middle =
          i < GUESSES ? Math.min(Math.max(next, heavy + 1), light - 1) : (light + heavy) / 2;
      Tried tried = trials.of(nominal.withMain(mains.get(middle)));
      double shortM = tried.shortM();
      if (shortM >= 0) {
        holds = tried;
        heavy = middle;
      } else {
        over = tried;
        light = middle;
      }
      double perStepM = (lastShortM - shortM) / (middle - last);
      next =
          last < 0
              ? lightestFrom(mains, mains.get(middle) * (1 - shortM / (aimM - start.atM())))
              : perStepM > 0 ? middle + (int) Math.floor(shortM / perStepM) : light - 1;
      last = middle;
      lastShortM = shortM;
    }
    if (holds == null) {
      return nominal;
    }
    if (mains.size() < settings.fewPressures()) {
      for (int more = 1; more <= longerS && holds.shortM() > 0; more++) {
        Braking longer = holds.braking().withFirstHeld(holds.braking().firstHeldS() + 1);
        Tried tried = trials.of(longer);
        if (tried.shortM() < 0) {
          over = tried;
          break;
        }
        holds = tried;
      }
    }
    if (!stop || holds.shortM() <= toleranceM / 4) {
      return holds.braking();
    }
    Tried best = holds;
    for (Tried base : over == null ? List.of(holds) : List.of(holds, over)) {
      if (best.shortM() > toleranceM / 4) {
        best = eased(base, best, trials);
      }
    }
    return (best.shortM() > toleranceM ? heldAndEased(nominal, best, trials) : best).braking();
  }

  /** Index of the lightest pressure that is not below one; −1 where all are. */
  private static int lightestFrom(List<Double> falling, double pressurePa) {
    int i = -1;
    while (i + 1 < falling.size() && falling.get(i + 1) >= pressurePa) {
      i++;
    }
    return i;
  }

  /** The time of the first application and the speed of easing together, where one alone fails. */
  private Tried heldAndEased(Braking nominal, Tried bestYet, Trials trials) {
    double unit = assignment.route().units().speedUnitMps();
    Tried best = bestYet;
    for (int ease = 0; ease < nominal.easeAtMps().length; ease++) {
      for (int k = 0; k <= settings.easeSteps(); k++) {
        Braking moved = nominal.withEaseMoved(ease, -k, unit);
        boolean holds = true;
        for (int more = 0; more <= longerS && holds && best.shortM() > toleranceM / 4; more++) {
          Braking longer = moved.withFirstHeld(nominal.firstHeldS() + more);
          Tried tried = trials.of(longer);
          best = better(best, tried);
          holds = tried.shortM() >= 0;
        }
      }
    }
    return best;
  }

  /** The first application where a main one follows it; else what the brake is eased to. */
  private double lightest(Braking nominal, double fromMps) {
    double lightest = nominal.firstPa();
    if (fromMps <= nominal.mainAboveMps()) {
      for (double pressure : nominal.easePa()) {
        lightest = pressure > 0 ? Math.min(lightest, pressure) : lightest;
      }
    }
    return lightest;
  }

  private Tried eased(Tried base, Tried bestYet, Trials trials) {
    double unit = assignment.route().units().speedUnitMps();
    double step = assignment.route().units().pressureStepPa();
    boolean anyPressure = assignment.stock().service().control().steps().isEmpty();
    int sign = base.shortM() >= 0 ? 1 : -1;
    Tried best = bestYet;
    for (int ease = 0; ease < base.braking().easeAtMps().length; ease++) {
      double movedMps = base.braking().easeAtMps()[ease];
      double pressedPa = base.braking().easePa()[ease];
      boolean moves = true;
      boolean presses = anyPressure && sign < 0;
      for (int k = 1; k <= settings.easeSteps() && (moves || presses); k++) {
        // One that goes no further than the last comes out the same.
        Braking moved = base.braking().withEaseMoved(ease, sign * k, unit);
        moves = moves && moved.easeAtMps()[ease] != movedMps;
        if (moves) {
          movedMps = moved.easeAtMps()[ease];
          Tried tried = trials.of(moved);
          best = better(best, tried);
          moves = !crossed(base, tried);
        }
        if (best.shortM() <= toleranceM / 4) {
          return best;
        }
        Braking pressed = base.braking().withEasePressed(ease, k * step);
        presses = presses && pressed.easePa()[ease] != pressedPa;
        if (presses) {
          pressedPa = pressed.easePa()[ease];
          Tried tried = trials.of(pressed);
          best = better(best, tried);
          presses = !crossed(base, tried);
        }
      }
    }
    boolean holds = true;
    for (int k = 1; k <= settings.easeSteps() && holds && best.shortM() > toleranceM / 4; k++) {
      double held = base.braking().firstHeldS() + sign * k;
      if (held >= leastHeldS) {
        Tried tried = trials.of(base.braking().withFirstHeld(held));
        best = better(best, tried);
        holds = !crossed(base, tried);
      }
    }
    return best;
  }

  /** Whether one ends short of the aim and one past it: to go on only leads further away. */
  private static boolean crossed(Tried base, Tried tried) {
    return base.shortM() >= 0 != tried.shortM() >= 0;
  }

  private static Tried better(Tried best, Tried tried) {
    return tried.shortM() >= 0 && tried.shortM() < best.shortM() - 0.2 ? tried : best;
  }
}
