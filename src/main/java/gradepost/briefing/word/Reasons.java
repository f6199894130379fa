package gradepost.briefing.word;

import gradepost.told.Reason;

/** The text for the reason why a brake is not enough. */
public final class Reasons {

  /** Why there is no such place. */
  public static String key(Reason reason) {
    return switch (reason) {
      case GRADIENT_DEFEATS_BRAKE -> "reason.fall";
      case APPROACH_TOO_SHORT -> "reason.too-short";
      case TRACK_ENDS -> "reason.track-ends";
      case BUFFER_STOPS -> "reason.buffers";
    };
  }

  private Reasons() {}
}
