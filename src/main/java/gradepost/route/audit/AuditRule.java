package gradepost.route.audit;

import java.util.Locale;

/**
 * The rules. None of them stops a file from being used: a finding is either put right in the data
 * or accepted there by name. Where no source is given a rule is common practice.
 */
public enum AuditRule {
  /** Two surveyed heights and the gradients between them disagree. */
  GRADIENT_CLOSURE("The gradients between two spot heights add up to their difference."),
  /** Steeper than 1 in 30: on adhesion railways nearly always a digit left out. */
  GRADIENT_STEEP("A gradient is not steeper than 1 in 30."),
  /** A long mile is real, but far more often one of two mileages at a seam is mistyped. */
  MILEAGE_JUMP("Sections whose mileages nearly meet meet exactly."),
  /** The policy's limit; usually 110 mm on welded track (British design practice). */
  CURVE_SPEED("The permissible speed on a curve needs no more cant deficiency than is allowed."),
  /** The policy's limits; usually 150 mm, 110 mm at platforms (British design practice). */
  CANT_HIGH("Cant is within the limit, and beside a platform within the limit for platforms."),
  /** The policy's limit; usually 110 mm (from memory). */
  CANT_EXCESS("The lowest permissible speed on a curve has no more cant excess than is allowed."),
  /** 200 m read in a secondary source; the rule from memory (GC/RT5021). */
  CHECK_RAIL_MISSING("A curve of 200 m radius or less has a check rail."),
  /** A check rail guides the inner wheels: it lies beside the low rail. */
  CHECK_RAIL_SIDE("A check rail lies beside the low rail."),
  /** What begins for one direction ends for the other, on its other hand. */
  CHECK_RAIL_LANDMARK(
      "A landmark says of a check rail what the curve says, in each direction that it is for."),
  /** {@link gradepost.route.BigDrop}. */
  BIG_DROP("A fall of the permissible speed by a third or by 20 mph has a warning board."),
  /** A board stands where a driver can obey it. */
  BOARD_PLACE("A board stands on its own side of the place that it announces."),
  /** AWS gives warning of what may be at caution or danger. */
  AWS_MISSING("A signal that can show caution has AWS where its line is fitted."),
  /** About 180 m (200 yd) before the signal. */
  AWS_PLACE("An AWS magnet lies 100 m to 300 m before its signal."),
  /** Something stands for a line where that line does not exist. */
  OFF_LINE("What stands for a line stands where the line exists."),
  /** The front of the train stops beside the platform. */
  MARK_OFF_PLATFORM("A stop mark stands within its platform."),
  /** A train cannot stop beyond the buffer stops. */
  MARK_PAST_BUFFERS("Buffer stops stand beyond the stop marks, at an end of the platform."),
  /** In a list that is kept in order, one entry that is not: usually a wrong mile. */
  OUT_OF_ORDER("An entry stands in its list where its mileage belongs."),
  /** A name and a place that do not go together. */
  NAME_PLACE("Whatever is named twice is at one place."),
  /** Two names where there is one thing. */
  TWO_NAMES("One thing has one name, spelt in one way."),
  /** One key, values in miles and in metric units. */
  UNITS_MIXED("The values of one key are all in one system of units."),
  /** Empty because nobody looked, or because there is nothing: the data must say which. */
  NOT_SUPPLIED("What is left empty is observed, with a date."),
  /** An observation without its date. */
  OBSERVATION_UNDATED("An observation says on which date it was checked."),
  /** An acceptance for which there is no finding: the data have changed since. */
  ACCEPTED_UNFOUND("What is accepted is still found."),
  /** The warning comes when the train should be braking already. */
  WARNING_LATE("A warning board stands before the braking point."),
  /** From a caution a driver can stop at the next signal, by whichever brake works. */
  SIGNAL_SPACING("From the signal at caution the train can stop at the next one."),
  /** Part of the train stands off the platform and nobody is told. */
  PLATFORM_SHORT("A platform shorter than the train has an instruction for the doors."),
  /** The driver has nothing to stop at. */
  MARK_MISSING("There is a stop mark for every formation."),
  /** Nearer to the buffer stops than the policy allows. */
  NEAR_BUFFERS("A stop mark keeps the policy's margin to the buffer stops."),
  /** Slowly over a long gap, or standing in it, a train has no power to leave it. */
  GAP_LONG("No gap in the conductor rail holds the whole train's collectors at low speed."),
  /** SUBSET-026 A.3.7.1: service braking counts no more. */
  PERCENTAGE_CUT("A braked weight percentage above 135 counts as 135 in service braking."),
  /** In one of the policy's states of the rail no braking point exists. */
  NO_BRAKING_POINT("A braking point exists in every state of the rail.");

  private final String summary;

  AuditRule(String summary) {
    this.summary = summary;
  }

  /** As it is named when a finding is accepted: "check-rail-missing". */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What is right, in a sentence. */
  public String summary() {
    return summary;
  }

  /** A note tells what the data do not hold, or how they count; anything else is a warning. */
  public boolean isNote() {
    return this == NOT_SUPPLIED || this == PERCENTAGE_CUT;
  }
}
