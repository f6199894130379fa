package gradepost.briefing.page;

import gradepost.told.PrintedPassing;

/** Which text tells how a lower speed is met for which no brake is applied. */
final class PassingWords {

  /**
   * The key of the text for what the brake does there.
   *
   * @param key of the text for a brake that is off
   */
  static String key(String key, PrintedPassing.Brake brake) {
    return switch (brake) {
      case OFF -> key;
      case CHECKS -> key + "-checked";
      case STILL_ON -> key + "-still-on";
      case SINCE_EARLIER -> key + "-earlier";
    };
  }

  private PassingWords() {}
}
