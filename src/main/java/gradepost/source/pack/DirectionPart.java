package gradepost.source.pack;

import gradepost.pack.FormationRisk;
import gradepost.route.JunctionRoute;
import gradepost.route.place.Direction;
import gradepost.task.Call;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One direction of a pack, with every name resolved.
 *
 * @param lines the running lines taken, as listed
 * @param junctionRoutes by junction, in the order listed; a junction not named takes its first
 *     route
 * @param calls in order of travel
 * @param highRisk items of this direction alone
 * @param formationRisks such items of one formation
 */
public record DirectionPart(
    Direction direction,
    List<String> lines,
    Map<String, JunctionRoute> junctionRoutes,
    List<Call> calls,
    List<String> highRisk,
    List<FormationRisk> formationRisks) {
  public DirectionPart {
    lines = List.copyOf(lines);
    junctionRoutes = Collections.unmodifiableMap(new LinkedHashMap<>(junctionRoutes));
    calls = List.copyOf(calls);
    highRisk = List.copyOf(highRisk);
    formationRisks = List.copyOf(formationRisks);
  }
}
