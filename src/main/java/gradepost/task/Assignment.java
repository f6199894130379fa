package gradepost.task;

import gradepost.pack.TemporaryRestriction;
import gradepost.policy.Policy;
import gradepost.route.JunctionRoute;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.RoutePart;
import gradepost.route.Stretch;
import gradepost.route.place.Direction;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.stock.WorkingBrakes;
import java.util.ArrayList;
import java.util.Collection;
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
 * @param period the part of the validity that its paper is for; empty where it is for the whole
 * @param elsewhere parts of the validity for which the same run has papers of their own
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
    Optional<DegradedRun> degraded,
    Optional<PaperPeriod> period,
    List<PaperPeriod> elsewhere) {
  public Assignment {
    elsewhere = List.copyOf(elsewhere);
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
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  /** The same run under other temporary restrictions. */
  public Assignment withRestrictions(List<TemporaryRestriction> other) {
    return with(stock, formation, policy, other, degraded);
  }

  /** The same run under another policy. */
  public Assignment with(Policy other) {
    return with(stock, formation, other, restrictions, degraded);
  }

  /** The same run with another load, as planned; the safe side has a load of its own. */
  public Assignment with(LoadCase other) {
    return new Assignment(
        route,
        direction,
        lines,
        junctionRoutes,
        calls,
        stock,
        formation,
        other,
        policy,
        restrictions,
        degraded,
        period,
        elsewhere);
  }

  /**
   * The same run with the brakes of some vehicles isolated, besides those that do not work already.
   *
   * @param numbers of those vehicles, the leading one is 1
   */
  public Assignment withIsolated(Collection<Integer> numbers) {
    return with(stock, formation.with(WorkingBrakes.NONE, numbers), policy, restrictions, degraded);
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
        otherRun,
        period,
        elsewhere);
  }

  /** The same run in a part of the validity alone. */
  public Assignment in(PaperPeriod part) {
    return with(part.restrictions(), Optional.of(part), List.of());
  }

  /** The same run, knowing the parts of the validity that have papers of their own. */
  public Assignment beside(List<PaperPeriod> parts) {
    return with(restrictions, period, parts);
  }

  private Assignment with(
      List<TemporaryRestriction> otherRestrictions,
      Optional<PaperPeriod> part,
      List<PaperPeriod> parts) {
    return new Assignment(
        route,
        direction,
        lines,
        junctionRoutes,
        calls,
        stock,
        formation,
        load,
        policy,
        otherRestrictions,
        degraded,
        part,
        parts);
  }

  /** Whether it is the run of every day: a whole brake, and the whole validity. */
  public boolean ordinary() {
    return degraded.isEmpty() && period.isEmpty();
  }

  /** The names of what makes it another run than the ordinary one; none for that. */
  public List<String> editionNames() {
    List<String> names = new ArrayList<>();
    degraded.ifPresent(run -> names.add(run.edition().name()));
    period.ifPresent(part -> names.add(part.name()));
    return names;
  }

  /**
   * What the papers call the train: its formation, and its edition and period where it has them.
   */
  public String trainName() {
    List<String> names = new ArrayList<>(List.of(formation.name()));
    names.addAll(editionNames());
    return String.join(", ", names);
  }

  /**
   * The same run, of which nothing is known but what it meets along a stretch of its path. Places,
   * calls and the rules stay as they are; there is no restriction, curve or landmark elsewhere.
   */
  public Assignment along(Stretch stretch) {
    Path path = path();
    return new Assignment(
        RoutePart.of(path, stretch),
        direction,
        lines,
        junctionRoutes,
        calls,
        stock,
        formation,
        load,
        policy,
        restrictions.stream().filter(r -> stretch.overlaps(path.span(r.extent()))).toList(),
        degraded,
        Optional.empty(),
        List.of());
  }

  /** The route as this run meets it. */
  public Path path() {
    return new Path(route, direction);
  }
}
