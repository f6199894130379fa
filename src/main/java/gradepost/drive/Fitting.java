package gradepost.drive;

import gradepost.motion.Stepper;
import gradepost.motion.Until;

/** Finds printable places for a shut-off and a braking point that keep the computed speed. */
final class Fitting {
  /** A printed place may cost so much of the speed that the computed one has. */
  private static final double SPEED_KEPT = 0.8;

  private final DriverRules rules;
  private final Places places;
  private final RunIn runIn;
  private final Stepper stepper;
  private final Until until = new Until();

  Fitting(DriverRules rules, Places places, RunIn runIn, Stepper stepper) {
    this.rules = rules;
    this.places = places;
    this.runIn = runIn;
    this.stepper = stepper;
  }

  /**
   * Where it is done in print.
   *
   * @param dropFromM power taken from here on is done without
   */
  record Fit(double brakingM, double shutOffM, boolean powered, double dropFromM) {}

  /** At a landmark where that costs little speed; else on the grid; else to the yard. */
  Fit fit(Choice choice, LegStart start, Target target) {
    double exact = choice.brakingM();
    if (choice.coastOnly() || choice.tooLate()) {
      return fit(choice, start, places.onGrid(choice.atM(), target.atM()), exact);
    }
    runIn.approach(choice.line(), choice.atM());
    double wanted = SPEED_KEPT * stepper.speedMps();
    double[] points = {
      places.printed(exact, target.atM(), lastOffM(choice, start)),
      places.onGrid(exact, target.atM()),
      places.toTheUnit(exact, target.atM())
    };
    Fit fit = null;
    for (double point : points) {
      double shutOff = choice.atM() - (exact - point);
      boolean fine = point == points[points.length - 1];
      fit =
          fit(
              choice,
              start,
              fine
                  ? places.toTheUnit(choice.atM(), target.atM())
                  : places.onGrid(Math.min(shutOff, point), target.atM()),
              point);
      if (speedAt(choice, fit) >= wanted) {
        return fit;
      }
    }
    return fit;
  }

  private Fit fit(Choice choice, LegStart start, double shutOffM, double brakingM) {
    choice.line().pickUp(stepper, choice.atM());
    boolean powered = stepper.notch() >= 0;
    double lastOn = lastOnM(choice, start);
    if (!powered || shutOffM >= lastOn + 1) {
      return new Fit(brakingM, shutOffM, powered, Double.POSITIVE_INFINITY);
    }
    // Hardly worth taking power: done without where the speed allows.
    choice.line().pickUp(stepper, lastOn);
    boolean spared = stepper.speedMps() > 0.6 * rules.ceilingAt(lastOn);
    return new Fit(
        brakingM,
        Math.max(lastOn, shutOffM),
        !spared,
        spared ? lastOn - 1e-3 : Double.POSITIVE_INFINITY);
  }

  /** Speed at the printed braking point when power comes off at the printed place. */
  private double speedAt(Choice choice, Fit fit) {
    double off = fit.powered() ? Math.min(fit.shutOffM(), fit.brakingM()) : fit.brakingM();
    choice.line().pickUp(stepper, Math.min(off, fit.dropFromM()));
    stepper.shutOff();
    stepper.advance(until.clear().place(fit.brakingM()));
    return stepper.atM() < fit.brakingM() - 1e-6 ? 0 : stepper.speedMps();
  }

  /** The last place before the choice where power was taken off, or the start. */
  private double lastOffM(Choice choice, LegStart start) {
    double at = start.state().atM();
    for (FreeRun.Step step : choice.free().steps()) {
      if (step.after().atM() <= choice.atM() && step.command() instanceof Command.ShutOff) {
        at = step.after().atM();
      }
    }
    return at;
  }

  private double lastOnM(Choice choice, LegStart start) {
    double at = start.state().atM();
    for (FreeRun.Step step : choice.free().steps()) {
      boolean on = step.command() instanceof Command.Power power && power.notch() == 0;
      if (on && step.after().atM() <= choice.atM()) {
        at = step.after().atM();
      }
    }
    return at;
  }
}
