package gradepost.source.policy;

import gradepost.policy.DegradedRules.AutomaticTechnique;
import gradepost.policy.Policy;
import gradepost.policy.SafeSide;
import gradepost.policy.Technique;
import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Formation;
import gradepost.stock.Stock;
import gradepost.units.Pressure;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Whether the stock's service brake can do what the policy asks of it. */
public final class PolicyAgainstStock {
  private static final double SAME_PA = 100;

  private final Stock stock;
  private final BrakeSystem service;
  private final Reader in;

  private PolicyAgainstStock(Stock stock, Reader in) {
    this.stock = stock;
    this.service = stock.service();
    this.in = in;
  }

  /** Reports on the places of the policy file, which {@code in} has read. */
  public static void check(Policy policy, Stock stock, List<Formation> formations, Reader in) {
    PolicyAgainstStock check = new PolicyAgainstStock(stock, in);
    check.technique(policy.stopping());
    check.technique(policy.restriction());
    check.pressure(
        policy.run().checkPressure(),
        PolicyTable.CHECK_PRESSURE.name(),
        in.spot(policy.run(), PolicyTable.CHECK_PRESSURE));
    formations.forEach(formation -> check.isolated(policy.safeSide(), formation));
  }

  /** The same for the technique of a brake that cannot be eased, with the brakes in use. */
  public static void check(AutomaticTechnique technique, Stock inUse, Reader in) {
    PolicyAgainstStock check = new PolicyAgainstStock(inUse, in);
    check.technique(technique.stopping());
    check.technique(technique.restriction());
    check.pressure(
        technique.check(), DegradedTable.CHECK.name(), in.spot(technique, DegradedTable.CHECK));
  }

  /** Latest places need at least one brake that is not isolated. */
  private void isolated(SafeSide safe, Formation formation) {
    int braked = (int) formation.vehicles().stream().filter(v -> v.brakeWeight() > 0).count();
    int isolated = formation.wholeVehicles(safe.isolatedShare());
    if (isolated >= braked) {
      in.error(
          in.spot(safe, PolicyTable.ISOLATED),
          PolicyMistakes.ALL_ISOLATED.with(braked, formation.name()));
    }
  }

  private void technique(Technique technique) {
    pressure(technique.first(), "first", in.spot(technique, PolicyTables.FIRST));
    pressure(technique.main(), "main", in.spot(technique, PolicyTables.MAIN));
    for (Technique.Ease ease : technique.eases()) {
      SourcePosition spot = in.spot(ease, PolicyTables.EASE_TO);
      if (ease.to().pascals() > 0) {
        pressure(ease.to(), "ease", spot);
        if (!service.gradualRelease()) {
          in.error(spot, PolicyMistakes.CANNOT_BE_EASED.with(stock.name()));
        }
      }
    }
  }

  private void pressure(Pressure pressure, String what, SourcePosition spot) {
    if (pressure.pascals() > service.full().pascals() + SAME_PA) {
      in.error(
          spot,
          PolicyMistakes.ABOVE_FULL_SERVICE.with(what, pressure, stock.name(), service.full()));
      return;
    }
    Optional<BrakeControl.Steps> steps = service.control().steps();
    if (steps.isPresent()) {
      List<Pressure> all = steps.get().pressures();
      Comparator<Pressure> nearness =
          Comparator.comparingDouble(p -> Math.abs(p.pascals() - pressure.pascals()));
      Pressure nearest = all.stream().min(nearness).orElse(service.full());
      if (Math.abs(nearest.pascals() - pressure.pascals()) > SAME_PA) {
        in.error(spot, PolicyMistakes.NO_STEP.with(what, pressure, stock.name(), all, nearest));
      }
    }
  }
}
