package gradepost.source.policy;

import gradepost.source.stock.BrakeChecks;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Five;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.units.Pressure;
import gradepost.yaml.Holes;
import gradepost.yaml.Key;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * What can be wrong with a policy, by itself or for a train. Its sentences stand in {@code
 * mistakes.properties}.
 */
final class PolicyMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(PolicyMistakes.class);

  static final Three<String, Collection<String>, Optional<String>> NO_EARLIER_CASE =
      MISTAKES.declare(
          "no-earlier-case", Holes.quoted("case"), Hole.list("earlier"), Hole.perhaps("near"));
  static final One<String> FIRST_CASE_IS_A_SHARE =
      MISTAKES.declare("first-case-is-a-share", Holes.quoted("case"));
  static final Two<Integer, String> ALL_ISOLATED =
      MISTAKES.declare("all-isolated", Hole.count("braked"), Hole.word("formation"));
  static final One<String> CANNOT_BE_EASED =
      MISTAKES.declare("cannot-be-eased", Hole.word("stock"));
  static final Four<String, Pressure, String, Pressure> ABOVE_FULL_SERVICE =
      MISTAKES.declare(
          "above-full-service",
          Hole.word("key"),
          BrakeChecks.pressure("pressure"),
          Hole.word("stock"),
          BrakeChecks.pressure("full"));
  static final Five<String, Pressure, String, List<Pressure>, Pressure> NO_STEP =
      MISTAKES.declare(
          "no-step",
          Hole.word("key"),
          BrakeChecks.pressure("pressure"),
          Hole.word("stock"),
          BrakeChecks.pressures("steps"),
          BrakeChecks.pressure("nearest"));
  static final Two<Key<?>, Key<?>> NOT_MORE_THAN =
      MISTAKES.declare("not-more-than", Holes.key("far"), Holes.key("near"));
  static final Mistake FIRST_ABOVE_MAIN = MISTAKES.declare("first-above-main");
  static final Mistake FIRST_IS_NO_APPLICATION = MISTAKES.declare("first-is-no-application");
  static final Mistake EASE_SPEEDS_DO_NOT_FALL = MISTAKES.declare("ease-speeds-do-not-fall");
  static final Mistake EASE_PRESSURES_DO_NOT_FALL = MISTAKES.declare("ease-pressures-do-not-fall");
  static final Mistake FIRST_EASE_NOT_BELOW_MAIN = MISTAKES.declare("first-ease-not-below-main");
  static final Mistake NO_RELEASE_AT_THE_END = MISTAKES.declare("no-release-at-the-end");
  static final Mistake STEP_DISTANCES_DO_NOT_FALL = MISTAKES.declare("step-distances-do-not-fall");
  static final Mistake STEP_SPEEDS_DO_NOT_FALL = MISTAKES.declare("step-speeds-do-not-fall");
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_CASE =
      MISTAKES.declare(
          "unknown-case", Holes.quoted("case"), Hole.list("known"), Hole.perhaps("near"));
  static final One<String> SITES_BETTER_THAN_THE_LINE =
      MISTAKES.declare("sites-better-than-the-line", Holes.quoted("case"));

  private PolicyMistakes() {}
}
