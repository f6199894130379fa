package gradepost.drive.leg;

import gradepost.drive.grid.DrivingStrategy;

/**
 * In what manner a leg is driven. It is no more than the choice: points, times and energy are
 * worked out from it each time.
 *
 * @param tests running brake tests that are made
 * @param plain where no speed is held
 * @param held where a speed may be
 * @param fastest the quickest that was found
 * @param allowedS the time that is allowed for the leg, seconds
 */
public record LegAnswer(
    LegTests tests,
    DrivingStrategy plain,
    DrivingStrategy held,
    DrivingStrategy fastest,
    double allowedS) {
  static LegAnswer of(DecidedLeg leg) {
    return new LegAnswer(
        leg.tests(),
        leg.plain().manner(),
        leg.held().manner(),
        leg.fastest().manner(),
        leg.allowedS());
  }
}
