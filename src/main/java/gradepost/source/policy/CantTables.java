package gradepost.source.policy;

import static gradepost.source.policy.PolicyTables.said;

import gradepost.route.audit.CantLimits;
import gradepost.source.policy.PolicyTables.Said;
import gradepost.units.Length;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ObjectSchema;
import java.util.List;

/** Key table of what a policy allows of cant. */
final class CantTables {
  static final Key<Said<Length>> CANT = limit("cant", "Highest cant away from platforms.");
  static final Key<Said<Length>> AT_PLATFORM =
      limit("cant-at-platform", "Highest cant beside a platform.");
  static final Key<Said<Length>> DEFICIENCY =
      limit("cant-deficiency", "Highest cant deficiency at the highest permissible speed.");
  static final Key<Said<Length>> EXCESS =
      limit("cant-excess", "Highest cant excess at the lowest permissible speed.");

  static final Key<CantLimits> TRACK =
      Key.optional(
          "track",
          ObjectSchema.of(
              "the limits of cant",
              List.of(CANT, AT_PLATFORM, DEFICIENCY, EXCESS),
              v ->
                  new CantLimits(
                      v.get(CANT).value(),
                      v.get(AT_PLATFORM).value(),
                      v.get(DEFICIENCY).value(),
                      v.get(EXCESS).value())),
          "Limits of cant on the routes. If left out: cant 150 mm, at platforms 110 mm,"
              + " deficiency 110 mm and excess 110 mm.");

  private static Key<Said<Length>> limit(String name, String description) {
    return said(name, Common.length("0 mm", "300 mm"), description);
  }

  private CantTables() {}
}
