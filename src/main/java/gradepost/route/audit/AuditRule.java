package gradepost.route.audit;

import gradepost.text.Mistake;
import java.util.Locale;

/**
 * The rules. None of them stops a file from being used: a finding is either put right in the data
 * or accepted there by name. Where no source is given a rule is common practice.
 */
public enum AuditRule {
  /** Two surveyed heights and the gradients between them disagree. */
  GRADIENT_CLOSURE,
  /** Steeper than 1 in 30: on adhesion railways nearly always a digit left out. */
  GRADIENT_STEEP,
  /** A long mile is real, but far more often one of two mileages at a seam is mistyped. */
  MILEAGE_JUMP,
  /** The policy's limit; usually 110 mm on welded track (British design practice). */
  CURVE_SPEED,
  /** The policy's limits; usually 150 mm, 110 mm at platforms (British design practice). */
  CANT_HIGH,
  /** The policy's limit; usually 110 mm (from memory). */
  CANT_EXCESS,
  /** 200 m read in a secondary source; the rule from memory (GC/RT5021). */
  CHECK_RAIL_MISSING,
  /** A check rail guides the inner wheels: it lies beside the low rail. */
  CHECK_RAIL_SIDE,
  /** What begins for one direction ends for the other, on its other hand. */
  CHECK_RAIL_LANDMARK,
  /** {@link gradepost.route.BigDrop}. */
  BIG_DROP,
  /** A board stands where a driver can obey it. */
  BOARD_PLACE,
  /** AWS gives warning of what may be at caution or danger. */
  AWS_MISSING,
  /** About 180 m (200 yd) before the signal. */
  AWS_PLACE,
  /** Something stands for a line where that line does not exist. */
  OFF_LINE,
  /** The front of the train stops beside the platform. */
  MARK_OFF_PLATFORM,
  /** A train cannot stop beyond the buffer stops. */
  MARK_PAST_BUFFERS,
  /** In a list that is kept in order, one entry that is not: usually a wrong mile. */
  OUT_OF_ORDER,
  /** A name and a place that do not go together. */
  NAME_PLACE,
  /** Two names where there is one thing. */
  TWO_NAMES,
  /** One key, values in miles and in metric units. */
  UNITS_MIXED,
  /** Empty because nobody looked, or because there is nothing: the data must say which. */
  NOT_SUPPLIED,
  /** An observation without its date. */
  OBSERVATION_UNDATED,
  /** An acceptance for which there is no finding: the data have changed since. */
  ACCEPTED_UNFOUND,
  /** The warning comes when the train should be braking already. */
  WARNING_LATE,
  /** From a caution a driver can stop at the next signal, by whichever brake works. */
  SIGNAL_SPACING,
  /** Part of the train stands off the platform and nobody is told. */
  PLATFORM_SHORT,
  /** The driver has nothing to stop at. */
  MARK_MISSING,
  /** Nearer to the buffer stops than the policy allows. */
  NEAR_BUFFERS,
  /** Slowly over a long gap, or standing in it, a train has no power to leave it. */
  GAP_LONG,
  /** A plan is made for the train, not for its booked times: one or the other has to give. */
  BOOKED_TIME,
  /** A driver counts from a cue to the braking point, and counts no longer than the policy says. */
  CUE_MISSING,
  /** SUBSET-026 A.3.7.1: service braking counts no more. */
  PERCENTAGE_CUT,
  /** In one of the policy's states of the rail no braking point exists. */
  NO_BRAKING_POINT;

  /** As it is named when a finding is accepted: "check-rail-missing". */
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * The rule under whose code the sentences of a finding stand.
   *
   * @throws IllegalArgumentException when they are of another catalogue
   */
  public static AuditRule of(Mistake finding) {
    String code = finding.key().split("\\.", 2)[0];
    return valueOf(code.toUpperCase(Locale.ROOT).replace('-', '_'));
  }

  /** What is right, in a sentence. */
  public String summary() {
    return AuditText.summary(this);
  }

  /** A note tells what the data do not hold, or how they count; anything else is a warning. */
  public boolean isNote() {
    return this == NOT_SUPPLIED || this == PERCENTAGE_CUT || this == CUE_MISSING;
  }
}
