package gradepost.app.issue;

import gradepost.text.Catalogue;
import java.util.Map;

/** Every sentence that says why a plan is not fit for issue, by its key in the catalogue. */
enum FailureText {
  STOP_SHORT("stop-outside.short"),
  STOP_PAST("stop-outside.past"),
  STALLS("stalls"),
  OVER_CEILING("over-ceiling"),
  FORBIDDEN_MOVEMENT("forbidden-movement"),
  NEVER_COMES("never-comes"),
  RULE_UNTOLD("rule-untold"),
  CANNOT_BRAKE_FALL("cannot-brake.fall"),
  CANNOT_BRAKE_FALL_FULL_SERVICE("cannot-brake.fall.full-service"),
  CANNOT_BRAKE_TOO_NEAR("cannot-brake.too-near"),
  CANNOT_BRAKE_TOO_NEAR_FULL_SERVICE("cannot-brake.too-near.full-service"),
  CANNOT_BRAKE_UNKNOWN("cannot-brake.unknown"),
  TARGET_STOP("target.stop"),
  TARGET_LOWER_SPEED("target.lower-speed"),
  TARGET_TERMINAL("target.terminal"),
  TARGET_SIGNAL("target.signal"),
  NO_END("no-end");

  static final Catalogue CATALOGUE = Catalogue.beside(FailureText.class, "failures.properties");

  private final String key;

  FailureText(String key) {
    this.key = key;
  }

  String key() {
    return key;
  }

  /** The sentence with its holes filled. */
  String with(Map<String, String> values) {
    return CATALOGUE.text(key, values);
  }
}
