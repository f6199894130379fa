package gradepost.drive.fallback;

import gradepost.motion.LowAdhesionRail;
import gradepost.policy.AdhesionCase;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;

/** The states of the rail of which one may be the poorest for a braking. */
final class PoorestRail {
  /** Laws of adhesion are compared so often up to the highest speed, m/s. */
  private static final double STEP_MPS = 1;

  private final boolean hasSites;
  private final double mostMps;

  private PoorestRail(boolean hasSites, double mostMps) {
    this.hasSites = hasSites;
    this.mostMps = mostMps;
  }

  /**
   * All but the planned one and those that another bears no more than, at every speed, on the sites
   * that the route lists and off them; most often only one. In the order of the policy.
   */
  static List<AdhesionCase> of(Assignment assignment) {
    boolean sites = !LowAdhesionRail.stretches(assignment.path(), assignment.lines()).isEmpty();
    double most = assignment.stock().maximum().metresPerSecond();
    return new PoorestRail(sites, most)
        .of(
            assignment.policy().adhesion().stream()
                .filter(c -> !c.equals(assignment.policy().plannedAdhesion()))
                .toList());
  }

  private List<AdhesionCase> of(List<AdhesionCase> all) {
    List<AdhesionCase> out = new ArrayList<>(all);
    for (AdhesionCase one : all) {
      if (out.stream().anyMatch(other -> !other.equals(one) && noBetter(other, one))) {
        out.remove(one);
      }
    }
    return out;
  }

  private boolean noBetter(AdhesionCase one, AdhesionCase than) {
    boolean poorer = true;
    for (double mps = 0; mps < mostMps + STEP_MPS; mps += STEP_MPS) {
      poorer &= one.law().mu(mps) <= than.law().mu(mps);
      poorer &= !hasSites || onSite(one, mps) <= onSite(than, mps);
    }
    return poorer;
  }

  private static double onSite(AdhesionCase rail, double mps) {
    double off = rail.law().mu(mps);
    return rail.sites().map(law -> Math.min(off, law.mu(mps))).orElse(off);
  }
}
