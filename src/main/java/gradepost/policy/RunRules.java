package gradepost.policy;

import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.units.Span;
import gradepost.units.Speed;

/**
 * How the train is driven between targets.
 *
 * @param offBelow power is taken off this much below the permissible speed
 * @param onBelow power is taken again this much below it; more than {@code offBelow}
 * @param leastPower power is not taken for less than this
 * @param coastBeforeBraking power is off at least this long before a braking point
 * @param checkFrom a falling grade's speed is checked with the brake this much below the ceiling
 * @param checkTo the checking application is released this much below the ceiling
 * @param checkPressure of the checking application
 * @param timeAllowance over the fastest run, as a share (0.05 is 5 %)
 * @param landmarkReach how far before a computed point a landmark may stand in for it
 */
public record RunRules(
    Speed offBelow,
    Speed onBelow,
    Span leastPower,
    Span coastBeforeBraking,
    Speed checkFrom,
    Speed checkTo,
    Pressure checkPressure,
    double timeAllowance,
    Length landmarkReach) {

  /** The same with another band under the ceiling and another coasting before a braking point. */
  public RunRules with(Speed otherOff, Speed otherOn, Span otherCoast) {
    return new RunRules(
        otherOff,
        otherOn,
        leastPower,
        otherCoast,
        checkFrom,
        checkTo,
        checkPressure,
        timeAllowance,
        landmarkReach);
  }

  /** The same with another pressure of a checking application. */
  public RunRules checkedWith(Pressure other) {
    return new RunRules(
        offBelow,
        onBelow,
        leastPower,
        coastBeforeBraking,
        checkFrom,
        checkTo,
        other,
        timeAllowance,
        landmarkReach);
  }
}
