package gradepost.route.audit;

import gradepost.route.Route;
import java.util.ArrayList;
import java.util.List;

/** Every rule that needs no train. */
public final class RouteAudit {

  /**
   * What is found, rule by rule; the same route gives the same findings in the same order.
   *
   * @param limits what the operator allows of cant
   */
  public static List<AuditFinding> of(Route route, CantLimits limits) {
    List<AuditFinding> out = new ArrayList<>();
    Ground ground = new Ground(route);
    new TrackAudit(ground, out).run();
    new CantAudit(ground, limits, out).run();
    new SpeedAudit(ground, out).run();
    new StationAudit(ground, out).run();
    new SignalAudit(ground, out).run();
    new OrderAudit(ground, out).run();
    new NameAudit(ground, out).run();
    new LandmarkAudit(ground, out).run();
    new SupplyAudit(route, out).run();
    return List.copyOf(out);
  }

  private RouteAudit() {}
}
