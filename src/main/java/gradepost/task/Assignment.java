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
import java.util.Optional;
import java.util.Set;

/**
 * What one plan is made for: this train, on these lines, calling here.
 *
 * @param formation as it stands in the direction of travel, leading vehicle first
 * @param lines the running lines taken
 * @param junctionRoutes by junction name, the way taken; the first of its routes where not named
 * @param calls in order of travel; the first is where the train starts, the last where it ends
 * @param stock with the brakes that are in use
 * @param restrictions the temporary ones that stand within the validity of the paper
 * @param degraded what is special where the brake is not whole; empty for the ordinary run
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
    List<TemporaryRestriction> restrictions,
    Optional<DegradedRun> degraded) {
  public Assignment {
    lines = Collections.unmodifiableSet(new LinkedHashSet<>(lines));
    junctionRoutes = Collections.unmodifiableMap(new LinkedHashMap<>(junctionRoutes));
    calls = List.copyOf(calls);
    restrictions = List.copyOf(restrictions);
    if (calls.size() < 2) {
      throw new IllegalArgumentException("a train calls where it starts and where it ends");
    }
  }

  /** An ordinary run. */
  public Assignment(
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
    this(
        route,
        direction,
        lines,
        junctionRoutes,
        calls,
        stock,
        formation,
        load,
        policy,
        restrictions,
        Optional.empty());
  }

  /** The same run under other temporary restrictions. */
  public Assignment withRestrictions(List<TemporaryRestriction> other) {
    return with(stock, formation, policy, other, degraded);
  }

  /** The same run under another policy. */
  public Assignment with(Policy other) {
    return with(stock, formation, other, restrictions, degraded);
  }

  /**
   * The same run with a brake that is not whole.
   *
   * @throws IllegalArgumentException if no brake stands behind one that is out of use
   */
  public Assignment with(DegradedRun run) {
    boolean forward = direction == Direction.FORWARD;
    Formation on = forward ? run.on(formation) : run.on(formation.reversed()).reversed();
    Stock other =
        run.on(stock)
            .orElseThrow(() -> new IllegalArgumentException("no brake behind the service brake"));
    return with(other, on, run.on(policy), restrictions, Optional.of(run));
  }

  private Assignment with(
      Stock otherStock,
      Formation otherFormation,
      Policy otherPolicy,
      List<TemporaryRestriction> otherRestrictions,
      Optional<DegradedRun> otherRun) {
    return new Assignment(
        route,
        direction,
        lines,
        junctionRoutes,
        calls,
        otherStock,
        otherFormation,
        load,
        otherPolicy,
        otherRestrictions,
        otherRun);
  }

  /** What the papers call the train: its formation, and its edition where it has one. */
  public String trainName() {
    return degraded
        .map(run -> formation.name() + ", " + run.edition().name())
        .orElse(formation.name());
  }

  /** The route as this run meets it. */
  public Path path() {
    return new Path(route, direction);
  }
}
