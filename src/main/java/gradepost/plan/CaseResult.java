package gradepost.plan;

import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Rung;
import gradepost.policy.AdhesionCase;
import gradepost.stock.BrakeSystem;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * One approach in one state of the rail.
 *
 * @param plannedM planned braking point in this state, on the print grid; empty when none exists
 * @param mainPressurePa pressure of the main application there
 * @param actions the whole braking from there, as it is printed: what is done, by what, and how it
 *     comes out on this rail; empty where there is no point
 * @param ownRun whether the run is the one that the application before it leaves on this rail;
 *     false where that has no braking point there, so that the run is the planned one
 * @param ladder a rung for each brake of the stock
 * @param answers one for each brake after the service brake
 * @param protectedM planned point moved back until the first fallback still works after noticing;
 *     the planned point itself where that suffices; empty when no place will do
 * @param protectedCostS what that costs in running time; empty where the technique, begun there,
 *     does not come to its aim
 */
public record CaseResult(
    AdhesionCase adhesion,
    Optional<Double> plannedM,
    double mainPressurePa,
    List<Action> actions,
    boolean ownRun,
    List<Rung> ladder,
    List<FailureAnswer> answers,
    Optional<Double> protectedM,
    Optional<Double> protectedCostS) {
  private static final double SAME_M = 0.01;

  public CaseResult {
    actions = List.copyOf(actions);
    ladder = List.copyOf(ladder);
    answers = List.copyOf(answers);
  }

  /**
   * How far the planned point lies past the last place for the service brake itself, which counts
   * on less than the plan does; empty where it is at or before that.
   */
  public Optional<Double> pastLastM() {
    return service()
        .point()
        .map(last -> plannedM.orElse(0.0) - last.printedM())
        .filter(past -> past > SAME_M);
  }

  /** The last place for the service brake. */
  public Latest service() {
    return latest(r -> r.brake().role() == BrakeSystem.Role.SERVICE);
  }

  /** The last place for this brake of the stock. */
  public Latest latest(BrakeSystem brake) {
    return latest(r -> r.brake().equals(brake));
  }

  private Latest latest(Predicate<Rung> which) {
    return ladder.stream().filter(which).findFirst().map(Rung::latest).orElseThrow();
  }

  /** The same points with another ladder. */
  public CaseResult with(List<Rung> rungs, List<FailureAnswer> instead) {
    return new CaseResult(
        adhesion,
        plannedM,
        mainPressurePa,
        actions,
        ownRun,
        rungs,
        instead,
        protectedM,
        protectedCostS);
  }
}
