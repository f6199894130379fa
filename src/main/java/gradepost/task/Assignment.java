package gradepost.task;

import gradepost.pack.TemporaryRestriction;
import gradepost.policy.Policy;
import gradepost.route.JunctionRoute;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.place.Direction;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What one plan is made for: this train, on these lines, calling here.
 *
 * @param formation as it stands in the direction of travel, leading vehicle first
 * @param lines the running lines taken
 * @param junctionRoutes by junction name, the way taken; the first of its routes where not named
 * @param calls in order of travel; the first is where the train starts, the last where it ends
 * @param restrictions the temporary ones that stand within the validity of the paper
 */
public record Assignment(
    Route route,
    Direction direction,
    Set<String> lines,
    Map<String, JunctionRoute> junctionRoutes,
    List<Call> calls,
    Stock stock,
    Formation formation,
    LoadCase load,
    Policy policy,
    List<TemporaryRestriction> restrictions) {
  public Assignment {
    lines = Collections.unmodifiableSet(new LinkedHashSet<>(lines));
    junctionRoutes = Collections.unmodifiableMap(new LinkedHashMap<>(junctionRoutes));
    calls = List.copyOf(calls);
    restrictions = List.copyOf(restrictions);
    if (calls.size() < 2) {
      throw new IllegalArgumentException("a train calls where it starts and where it ends");
    }
  }

  /** The same run under other temporary restrictions. */
  public Assignment withRestrictions(List<TemporaryRestriction> other) {
    return new Assignment(
        route, direction, lines, junctionRoutes, calls, stock, formation, load, policy, other);
  }

  /** The same run under another policy. */
  public Assignment with(Policy other) {
    return new Assignment(
        route,
        direction,
        lines,
        junctionRoutes,
        calls,
        stock,
        formation,
        load,
        other,
        restrictions);
  }

  /** The route as this run meets it. */
  public Path path() {
    return new Path(route, direction);
  }
}
