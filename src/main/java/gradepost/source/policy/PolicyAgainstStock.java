package gradepost.source.policy;

import gradepost.policy.Policy;
import gradepost.policy.SafeSide;
import gradepost.policy.Technique;
import gradepost.source.stock.BrakeChecks;
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
import java.util.stream.Collectors;

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

  /** Latest places need at least one brake that is not isolated. */
  private void isolated(SafeSide safe, Formation formation) {
    long braked = formation.vehicles().stream().filter(v -> v.brakeWeight() > 0).count();
    int isolated = formation.wholeVehicles(safe.isolatedShare());
    if (isolated >= braked) {
      in.error(
          in.spot(safe, PolicyTable.ISOLATED),
          "isolated-share isolates %d of the %d braked vehicles of %s: no brake is left"
              .formatted(braked, braked, formation.name()),
          "a share that, rounded up to whole vehicles, leaves at least one of them",
          "");
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
          in.error(
              spot,
              "the service brake of %s cannot be eased: every release is a full release"
                  .formatted(stock.name()),
              "an ease to 0 only",
              "");
        }
      }
    }
  }

  private void pressure(Pressure pressure, String what, SourcePosition spot) {
    if (pressure.pascals() > service.full().pascals() + SAME_PA) {
      in.error(
          spot,
          "%s %s is above full service of %s, which is %s"
              .formatted(
                  what, BrakeChecks.text(pressure), stock.name(), BrakeChecks.text(service.full())),
          "full service or less",
          "");
      return;
    }
    Optional<BrakeControl.Steps> steps = service.control().steps();
    if (steps.isPresent()) {
      List<Pressure> all = steps.get().pressures();
      Comparator<Pressure> nearness =
          Comparator.comparingDouble(p -> Math.abs(p.pascals() - pressure.pascals()));
      Pressure nearest = all.stream().min(nearness).orElse(service.full());
      if (Math.abs(nearest.pascals() - pressure.pascals()) > SAME_PA) {
        in.error(
            spot,
            "%s %s is no step of the service brake of %s"
                .formatted(what, BrakeChecks.text(pressure), stock.name()),
            all.stream().map(BrakeChecks::text).collect(Collectors.joining(", ")),
            BrakeChecks.text(nearest));
      }
    }
  }
}
