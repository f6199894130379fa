package gradepost.route.audit;

import gradepost.text.Catalogue;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Every way in which a rule finds something. Its sentences stand in {@code findings.properties}
 * under the code of the rule and, where the rule has several ways, the word of this one.
 */
public enum AuditText {
  GRADIENT_CLOSURE(AuditRule.GRADIENT_CLOSURE),
  GRADIENT_STEEP(AuditRule.GRADIENT_STEEP),
  MILEAGE_JUMP(AuditRule.MILEAGE_JUMP),
  CURVE_SPEED(AuditRule.CURVE_SPEED),
  CANT_HIGH(AuditRule.CANT_HIGH),
  CANT_HIGH_AT_PLATFORM(AuditRule.CANT_HIGH, "at-platform"),
  CANT_EXCESS(AuditRule.CANT_EXCESS),
  CHECK_RAIL_MISSING(AuditRule.CHECK_RAIL_MISSING),
  CHECK_RAIL_SIDE(AuditRule.CHECK_RAIL_SIDE),
  CHECK_RAIL_LANDMARK_SIDE(AuditRule.CHECK_RAIL_LANDMARK, "side"),
  CHECK_RAIL_LANDMARK_BEGINS(AuditRule.CHECK_RAIL_LANDMARK, "begins"),
  CHECK_RAIL_LANDMARK_ENDS(AuditRule.CHECK_RAIL_LANDMARK, "ends"),
  BIG_DROP(AuditRule.BIG_DROP),
  BIG_DROP_NOTICE(AuditRule.BIG_DROP, "notice"),
  BOARD_PLACE_BEFORE(AuditRule.BOARD_PLACE, "before"),
  BOARD_PLACE_AT(AuditRule.BOARD_PLACE, "at"),
  AWS_MISSING(AuditRule.AWS_MISSING),
  AWS_PLACE_BEFORE(AuditRule.AWS_PLACE, "before"),
  AWS_PLACE_BEYOND(AuditRule.AWS_PLACE, "beyond"),
  OFF_LINE_SIGNAL(AuditRule.OFF_LINE, "signal"),
  OFF_LINE_PLATFORM(AuditRule.OFF_LINE, "platform"),
  MARK_OFF_PLATFORM(AuditRule.MARK_OFF_PLATFORM),
  MARK_PAST_BUFFERS_WITHIN(AuditRule.MARK_PAST_BUFFERS, "within"),
  MARK_PAST_BUFFERS_MARK(AuditRule.MARK_PAST_BUFFERS, "mark"),
  OUT_OF_ORDER_BEFORE(AuditRule.OUT_OF_ORDER, "before"),
  OUT_OF_ORDER_AFTER(AuditRule.OUT_OF_ORDER, "after"),
  OUT_OF_ORDER_BETWEEN(AuditRule.OUT_OF_ORDER, "between"),
  NAME_PLACE_FAR(AuditRule.NAME_PLACE, "far"),
  NAME_PLACE_AGAIN(AuditRule.NAME_PLACE, "again"),
  TWO_NAMES_SPELT(AuditRule.TWO_NAMES, "spelt"),
  TWO_NAMES_AT_ONE_PLACE(AuditRule.TWO_NAMES, "at-one-place"),
  UNITS_MIXED(AuditRule.UNITS_MIXED),
  NOT_SUPPLIED(AuditRule.NOT_SUPPLIED),
  OBSERVATION_UNDATED(AuditRule.OBSERVATION_UNDATED),
  ACCEPTED_UNFOUND(AuditRule.ACCEPTED_UNFOUND),
  WARNING_LATE(AuditRule.WARNING_LATE),
  SIGNAL_SPACING(AuditRule.SIGNAL_SPACING),
  PLATFORM_SHORT(AuditRule.PLATFORM_SHORT),
  MARK_MISSING(AuditRule.MARK_MISSING),
  NEAR_BUFFERS(AuditRule.NEAR_BUFFERS),
  GAP_LONG_AT_STATION(AuditRule.GAP_LONG, "at-station"),
  GAP_LONG_BEFORE_SIGNAL(AuditRule.GAP_LONG, "before-signal"),
  GAP_LONG_SLOWLY(AuditRule.GAP_LONG, "slowly"),
  CUE_MISSING_NONE(AuditRule.CUE_MISSING, "none"),
  CUE_MISSING_AT_NIGHT(AuditRule.CUE_MISSING, "at-night"),
  CUE_MISSING_MAGNET(AuditRule.CUE_MISSING, "magnet"),
  CUE_MISSING_NO_SURVEY(AuditRule.CUE_MISSING, "no-survey"),
  CUE_MISSING_NO_SURVEY_AT_NIGHT(AuditRule.CUE_MISSING, "no-survey-at-night"),
  PERCENTAGE_CUT(AuditRule.PERCENTAGE_CUT),
  NO_BRAKING_POINT_FULL_SERVICE(AuditRule.NO_BRAKING_POINT, "full-service"),
  NO_BRAKING_POINT_TOO_STEEP(AuditRule.NO_BRAKING_POINT, "too-steep"),
  NO_BRAKING_POINT_TOO_SHORT(AuditRule.NO_BRAKING_POINT, "too-short");

  static final Catalogue CATALOGUE = Catalogue.beside(AuditText.class, "findings.properties");

  private final AuditRule rule;
  private final String way;

  AuditText(AuditRule rule) {
    this(rule, "");
  }

  AuditText(AuditRule rule, String way) {
    this.rule = rule;
    this.way = way;
  }

  /** The rule that finds it. */
  public AuditRule rule() {
    return rule;
  }

  /** Where its sentences stand in the catalogue. */
  String key() {
    return way.isEmpty() ? rule.code() : rule.code() + "." + way;
  }

  /** The names of all its holes. */
  Set<String> holes() {
    Set<String> holes = new TreeSet<>();
    for (Sentence sentence : Sentence.values()) {
      holes.addAll(CATALOGUE.holes(key() + sentence.ending));
    }
    return holes;
  }

  /** What was found, as a sentence without its full stop. */
  public String what(Map<String, String> values) {
    return words(Sentence.WHAT, values);
  }

  /** What would be right, with its unit; empty text where the sentence says it. */
  public String bound(Map<String, String> values) {
    return words(Sentence.BOUND, values);
  }

  /** What may have been meant; empty text where nothing comes near. */
  public String maybe(Map<String, String> values) {
    return words(Sentence.MAYBE, values);
  }

  private enum Sentence {
    WHAT,
    BOUND,
    MAYBE;

    private final String ending = "." + name().toLowerCase(Locale.ROOT);
  }

  private String words(Sentence sentence, Map<String, String> values) {
    String text = key() + sentence.ending;
    return CATALOGUE.has(text) ? CATALOGUE.text(text, values) : "";
  }
}
