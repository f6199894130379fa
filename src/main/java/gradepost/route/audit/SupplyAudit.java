package gradepost.route.audit;

import gradepost.route.Observation;
import gradepost.route.Route;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** What a route does not hold, and whether anyone says that there is nothing to hold. */
final class SupplyAudit {
  private static final Pattern DATE = Pattern.compile("\\b\\d{4}-\\d\\d-\\d\\d\\b");

  private final Route route;
  private final List<AuditFinding> out;

  SupplyAudit(Route route, List<AuditFinding> out) {
    this.route = route;
    this.out = out;
  }

  void run() {
    field("curves", "curves", "curve", route.curves());
    field("junctions", "junctions", "junction", route.junctions());
    field("signals", "signals", "signal", route.signals());
    field("landmarks", "landmarks", "landmark", route.landmarks());
    field("structures", "structures", "structure", route.structures());
    field("rail-gaps", "rail gaps", "gap", route.railGaps());
    field("low-adhesion", "low-adhesion sites", "adhesion", route.lowAdhesion());
    field("brake-tests", "brake test places", "brake test", route.brakeTests());
    for (Observation observation : route.observations()) {
      if (!DATE.matcher(observation.statement()).find()) {
        out.add(
            new AuditFinding(
                AuditText.OBSERVATION_UNDATED.with(observation.subject()),
                observation,
                "statement"));
      }
    }
  }

  private void field(String key, String nouns, String word, List<?> entries) {
    boolean observed =
        route.observations().stream()
            .map(o -> o.subject().toLowerCase(Locale.ROOT))
            .anyMatch(subject -> subject.contains(word));
    if (entries.isEmpty() && !observed) {
      out.add(new AuditFinding(AuditText.NOT_SUPPLIED.with(nouns), route, key));
    }
  }
}
