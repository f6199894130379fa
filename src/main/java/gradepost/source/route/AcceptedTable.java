package gradepost.source.route;

import gradepost.route.Accepted;
import gradepost.route.audit.AuditRule;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The key table of a finding for which somebody answers. */
public final class AcceptedTable {
  public static final String DESCRIPTION =
      "Findings of the check for which somebody answers by name. They are not reported again, and"
          + " are printed in every pack.";

  static final Key<String> RULE =
      Key.required("rule", new Scalar.Choice<>(codes()), "The rule, as the check names it in [ ].");
  static final Key<String> FINDING =
      Key.required(
          "finding",
          Common.prose("the words of the finding"),
          "What was found, word for word as the check prints it: when the data change, so do the"
              + " words, and the finding comes back.");
  static final Key<String> BY =
      Key.required("by", Common.text("a person by office"), "Who accepts it.");
  static final Key<LocalDate> ON = Key.required("on", new Moment.Day(), "When it was accepted.");
  static final Key<String> REASON =
      Key.required("reason", Common.prose("a reason in words"), "Why it may stay as it is.");
  public static final ObjectSchema<Accepted> ACCEPTED =
      ObjectSchema.of(
          "an accepted finding",
          List.of(RULE, FINDING, BY, ON, REASON),
          v -> new Accepted(v.get(RULE), v.get(FINDING), v.get(BY), v.get(ON), v.get(REASON)));

  private static Map<String, String> codes() {
    Map<String, String> codes = new LinkedHashMap<>();
    for (AuditRule rule : AuditRule.values()) {
      codes.put(rule.code(), rule.code());
    }
    return codes;
  }

  private AcceptedTable() {}
}
