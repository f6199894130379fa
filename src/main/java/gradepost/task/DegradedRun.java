package gradepost.task;

import gradepost.policy.DegradedRules;
import gradepost.policy.Policy;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Formation;
import gradepost.stock.Stock;
import gradepost.stock.WorkingBrakes;
import java.util.Optional;

/**
 * What is special in a run with a brake that is not whole, and what permits it. A train that runs
 * so is one with other brakes, driven by other rules: whoever plans, judges or prints the run sees
 * only those.
 *
 * @param clause where the rule stands that permits it
 * @param permit how far and how fast
 */
public record DegradedRun(Edition edition, String clause, DegradedRules.Permit permit) {

  /** The run that a policy permits; empty where it does not. */
  public static Optional<DegradedRun> of(Edition edition, Policy policy) {
    return policy
        .degraded()
        .flatMap(edition::clause)
        .flatMap(c -> c.permit().map(p -> new DegradedRun(edition, c.reference(), p)));
  }

  /**
   * The train without what is out of use: the brake that stands behind the service brake is then
   * the one that plans are made with. Empty where nothing stands behind it.
   */
  public Optional<Stock> on(Stock stock) {
    return switch (edition.kind()) {
      case EP_OUT_OF_USE -> withoutService(stock);
      case EP_ON_PART, BRAKES_ISOLATED -> Optional.of(stock);
    };
  }

  private static Optional<Stock> withoutService(Stock stock) {
    return stock.brakes().stream()
        .filter(b -> b.role() == BrakeSystem.Role.FALLBACK)
        .findFirst()
        .map(
            next ->
                stock.with(
                    stock.brakes().stream()
                        .filter(b -> b.role() != BrakeSystem.Role.SERVICE)
                        .map(b -> b.equals(next) ? b.as(BrakeSystem.Role.SERVICE) : b)
                        .toList()));
  }

  /** The formation with what works of its brakes; both in the forward direction. */
  public Formation on(Formation formation) {
    return switch (edition.kind()) {
      case EP_OUT_OF_USE -> formation;
      case EP_ON_PART -> formation.with(WorkingBrakes.ALL_BUT_SERVICE, edition.vehicles());
      case BRAKES_ISOLATED -> formation.with(WorkingBrakes.NONE, edition.vehicles());
    };
  }

  /** The rules by which it is driven. */
  public Policy on(Policy policy) {
    return permit.technique().map(policy::with).orElseGet(policy::ordinary);
  }
}
