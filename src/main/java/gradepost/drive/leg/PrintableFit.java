package gradepost.drive.leg;

import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.Slack;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.Places;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.policy.Practice;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;

/** Finds printable places for a shut-off and a braking point that keep the computed speed. */
final class PrintableFit {
  private final Practice practice;
  private final DriverRules rules;
  private final Places places;
  private final CoastThenBrake runIn;
  private final Stepper stepper;
  private final StopConditions until = new StopConditions();

  PrintableFit(
      Practice practice, DriverRules rules, Places places, CoastThenBrake runIn, Stepper stepper) {
    this.practice = practice;
    this.rules = rules;
    this.places = places;
    this.runIn = runIn;
    this.stepper = stepper;
  }

  /**
   * Where it is done in print.
   *
   * @param dropFromM power taken from here on is done without
   * @param hardlyUsedS a higher notch is not taken so shortly before power comes off, seconds
   */
  record Fit(
      double brakingM, double shutOffM, boolean powered, double dropFromM, double hardlyUsedS) {
    Fit withEveryNotch() {
      return new Fit(brakingM, shutOffM, powered, dropFromM, 0);
    }

    /** Where power comes off, or where the brake goes on if it is off before. */
    double upToM() {
      return powered ? shutOffM : brakingM;
    }
  }

  /**
   * At a landmark where that costs little speed; else on the grid; else to the yard; else with
   * every notch that was computed: on a rising grade a train that shut off a chain sooner, or a
   * notch lower, may come to a stand before the target.
   */
  Fit fit(NextBraking choice, LegStart start, Target target) {
    double exact = choice.brakingM();
    if (choice.tooLate()) {
      return fit(choice, start, places.onGrid(choice.atM(), target), exact);
    }
    double wanted = practice.coast().placeKeeps() * computedMps(choice);
    List<Fit> fits =
        choice.coastOnly() ? offs(choice, start, target) : points(choice, start, target);
    for (Fit fit : fits) {
      if (speedAt(choice, start, fit) >= wanted) {
        return fit;
      }
    }
    return fits.get(fits.size() - 1).withEveryNotch();
  }

  /** To the yard, and as computed. */
  Fit toTheUnit(NextBraking choice, LegStart start, Target target) {
    List<Fit> points = points(choice, start, target);
    return points.get(points.size() - 1).withEveryNotch();
  }

  private List<Fit> offs(NextBraking choice, LegStart start, Target target) {
    double exact = choice.brakingM();
    return List.of(
        fit(choice, start, places.onGrid(choice.atM(), target), exact),
        fit(choice, start, places.toTheUnit(choice.atM(), target), exact));
  }

  private List<Fit> points(NextBraking choice, LegStart start, Target target) {
    double exact = choice.brakingM();
    List<Fit> fits = new ArrayList<>();
    double fine = places.toTheUnit(exact, target);
    for (double point :
        new double[] {
          places.printed(exact, target, lastOffM(choice, start)), places.onGrid(exact, target), fine
        }) {
      double shutOff = choice.atM() - (exact - point);
      fits.add(
          fit(
              choice,
              start,
              point == fine
                  ? places.toTheUnit(choice.atM(), target)
                  : places.onGrid(Math.min(shutOff, point), target),
              point));
    }
    return fits;
  }

  /** Speed as computed: at the braking point, or where the target is met coasting. */
  private double computedMps(NextBraking choice) {
    if (!choice.coastOnly()) {
      runIn.approach(choice.line(), choice.atM());
      return stepper.speedMps();
    }
    choice.line().pickUp(stepper, choice.atM());
    return coastedTo(choice.aimM());
  }

  /** The same when all is done as printed. */
  private double speedAt(NextBraking choice, LegStart start, Fit fit) {
    run(choice, start, fit);
    return coastedTo(choice.coastOnly() ? choice.aimM() : fit.brakingM());
  }

  /** Speed at a place when the train coasts there from where the stepper is; 0 if it stands. */
  private double coastedTo(double atM) {
    stepper.shutOff();
    StopReason ended = stepper.advance(until.clear().place(atM));
    return ended == StopReason.PLACE ? stepper.speedMps() : 0;
  }

  /**
   * Runs to where power comes off in print, or to the braking point, and tells what is done on the
   * way.
   */
  List<FreeRun.Step> run(NextBraking choice, LegStart start, Fit fit) {
    choice.line().pickUp(stepper, fit.upToM());
    double offS = fit.powered() ? stepper.timeS() : Double.POSITIVE_INFINITY;
    RunStates line = new RunStates();
    line.addAll(start.line());
    List<FreeRun.Step> done = new ArrayList<>();
    for (FreeRun.Step step : choice.free().steps()) {
      boolean higher = step.command().power().filter(p -> p.notch() > 0).isPresent();
      boolean hardlyUsed = higher && step.after().timeS() > offS - fit.hardlyUsedS();
      boolean dropped = step.after().atM() >= fit.dropFromM();
      if (step.after().atM() <= fit.upToM() + Slack.PLACE_M && !hardlyUsed && !dropped) {
        done.add(step);
        line.add(step.after());
      }
    }
    line.pickUp(stepper, fit.upToM());
    return done;
  }

  private Fit fit(NextBraking choice, LegStart start, double shutOffM, double brakingM) {
    choice.line().pickUp(stepper, choice.atM());
    boolean powered = stepper.notch() >= 0;
    double lastOn = lastOnM(choice, start);
    if (!powered || shutOffM >= lastOn + 1) {
      return new Fit(
          brakingM,
          shutOffM,
          powered,
          Double.POSITIVE_INFINITY,
          practice.handles().notchAtLeast().seconds());
    }
    // Hardly worth taking power: done without where the speed allows.
    choice.line().pickUp(stepper, lastOn);
    boolean spared = stepper.speedMps() > 0.6 * rules.ceilingAt(lastOn);
    return new Fit(
        brakingM,
        Math.max(lastOn, shutOffM),
        !spared,
        spared ? lastOn - Slack.JUST_BEFORE_M : Double.POSITIVE_INFINITY,
        practice.handles().notchAtLeast().seconds());
  }

  /**
   * The last place before the choice where power was taken off, or the start. Where the run was
   * only looked at so far, that may lie before it.
   */
  private double lastOffM(NextBraking choice, LegStart start) {
    double at = start.goesOn() ? start.line().idleFromM() : start.state().atM();
    for (FreeRun.Step step : choice.free().steps()) {
      if (step.after().atM() <= choice.atM() && step.command().isShutOff()) {
        at = step.after().atM();
      }
    }
    return at;
  }

  private double lastOnM(NextBraking choice, LegStart start) {
    double at = start.state().atM();
    for (FreeRun.Step step : choice.free().steps()) {
      boolean on = step.command().takesPower();
      if (on && step.after().atM() <= choice.atM()) {
        at = step.after().atM();
      }
    }
    return at;
  }
}
