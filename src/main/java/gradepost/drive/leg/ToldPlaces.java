package gradepost.drive.leg;

import gradepost.drive.brake.Slack;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.route.Path;
import gradepost.told.print.PrintGrid;

/** Where a driver can be told to do something: on the print grid, or so far short of the end. */
final class ToldPlaces {
  /** A train so near a whole number of units short of the end is told by that number. */
  private static final double WHOLE_UNITS = 1e-4;

  private final Path path;
  private final PrintGrid grid;
  private final Stepper stepper;
  private final Stepper probe;
  private final double endM;
  private final StopConditions until = new StopConditions();

  /**
   * @param probe a second stepper of the same train, to try things out
   * @param endM the stop that the run leads to
   */
  ToldPlaces(Path path, Stepper stepper, Stepper probe, double endM) {
    this.path = path;
    this.grid = new PrintGrid(path);
    this.stepper = stepper;
    this.probe = probe;
    this.endM = endM;
  }

  /** Whether the train is on the print grid. */
  boolean printed() {
    return Math.abs(path.printedAtOrBefore(stepper.atM()) - stepper.atM()) < Slack.PLACE_M;
  }

  /** Runs to the next place on the print grid, or to the edge if that is nearer. */
  StopReason toNextPrinted(double edge) {
    return toNextPrinted(edge, Double.POSITIVE_INFINITY);
  }

  /** The same, but no further than where the train is up to a speed. */
  StopReason toNextPrinted(double edge, double mostMps) {
    double place = path.printedAtOrAfter(stepper.atM() + Slack.PLACE_M);
    if (place <= stepper.atM() + Slack.PLACE_M) {
      place = stepper.atM() + path.units().placeStepM();
    }
    return stepper.advance(until.clear().place(Math.min(place, edge)).speedUp(mostMps));
  }

  /** So much faster the train is one place of the print grid further on, as it goes now, m/s. */
  double gainedByNextMps() {
    double v = stepper.speedMps();
    double square = v * v + 2 * stepper.accelerationMps2() * path.units().placeStepM();
    return Math.sqrt(Math.max(0, square)) - v;
  }

  /** Near the end: whether the train reaches a speed before the next place on the grid. */
  boolean tooLate(double edge, double mps) {
    if (!grid.isNear(endM - stepper.atM())) {
      return false;
    }
    double place = path.printedAtOrAfter(stepper.atM() + Slack.PLACE_M);
    probe.restore(stepper.save());
    StopConditions there = new StopConditions().place(Math.min(place, edge)).speedUp(mps);
    return stepper.speedMps() >= mps || probe.advance(there) != StopReason.PLACE;
  }

  /** Whether the train is a whole number of units of length short of the end. */
  boolean fromTheEnd() {
    double units = (endM - stepper.atM()) / path.units().lengthUnitM();
    return Math.abs(units - Math.rint(units)) < WHOLE_UNITS;
  }

  /** Runs to the next place that is told from the end. */
  StopReason toNextFromTheEnd(double edge) {
    double unit = path.units().lengthUnitM();
    double place = endM - Math.floor((endM - stepper.atM()) / unit - WHOLE_UNITS) * unit;
    return stepper.advance(until.clear().place(Math.min(place, edge)));
  }
}
