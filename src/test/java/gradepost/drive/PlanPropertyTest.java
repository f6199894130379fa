package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.stock.BrakeSystem;
import gradepost.stock.BrakeSystem.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PlanPropertyTest {
  @Test
  void everyMadeUpLineIsPlannedWithinTheRules() {
    int first = Integer.getInteger("gradepost.first", 1);
    int lines = Integer.getInteger("gradepost.lines", 50);
    List<String> wrong = new ArrayList<>();
    for (int seed = first; seed < first + lines; seed++) {
      long t0 = System.nanoTime();
      List<String> faults = faults(RandomLines.of(seed));
      System.out.printf("%d %.2f s %s%n", seed, (System.nanoTime() - t0) / 1e9, faults);
      for (String fault : faults) {
        wrong.add("seed " + seed + ": " + fault);
      }
    }
    assertThat(wrong).isEmpty();
  }

  static List<String> faults(RandomLine line) {
    Plan plan;
    try {
      plan = Planner.plan(line.assignment());
    } catch (RuntimeException e) {
      return List.of("threw " + e + " at " + e.getStackTrace()[0]);
    }
    List<String> faults = new ArrayList<>();
    for (Finding failure : plan.failures()) {
      faults.add(failure.toString());
    }
    ceiling(plan, faults);
    for (Approach approach : plan.approaches()) {
      points(approach, faults);
      ladder(approach, faults);
    }
    return faults;
  }

  private static final double SLACK_MPS = 0.02;

  /** The restrictions of the route themselves against every part of the train. */
  private static void ceiling(Plan plan, List<String> faults) {
    Assignment assignment = plan.assignment();
    Path path = assignment.path();
    double train = assignment.formation().lengthM();
    List<Trace.Point> points = plan.trace().points();
    for (PermanentRestriction r : assignment.route().restrictions()) {
      double a = path.metresAt(r.extent().from());
      double b = path.metresAt(r.extent().to());
      double from = Math.min(a, b);
      double to = Math.max(a, b) + train;
      double most = r.speed().metresPerSecond() + SLACK_MPS;
      double worst = 0;
      double worstAt = 0;
      for (int i = 1; i < points.size(); i++) {
        Trace.Point p = points.get(i - 1);
        Trace.Point q = points.get(i);
        double low = Math.max(from, p.atM());
        double high = Math.min(to, q.atM());
        if (low > high) {
          continue;
        }
        for (double x : new double[] {low, high}) {
          double v = speedAt(p, q, x);
          if (v - most > worst) {
            worst = v - most;
            worstAt = x;
          }
        }
      }
      if (worst > 0) {
        faults.add(
            String.format(
                "over %s (%.1f to %.1f m with the tail, %.3f m/s) by %.3f m/s at %.1f m",
                r.name(), from, to, most - SLACK_MPS, worst, worstAt));
      }
    }
  }

  private static double speedAt(Trace.Point p, Trace.Point q, double x) {
    if (q.atM() - p.atM() < 1e-9) {
      return Math.max(p.speedMps(), q.speedMps());
    }
    double share = (x - p.atM()) / (q.atM() - p.atM());
    double square =
        p.speedMps() * p.speedMps()
            + share * (q.speedMps() * q.speedMps() - p.speedMps() * p.speedMps());
    return Math.sqrt(Math.max(0, square));
  }

  private static final double ROOT_M = 0.05;

  private static void points(Approach approach, List<String> faults) {
    String name = "approach " + approach.number() + " " + approach.target().name();
    if (approach.brakingPointM().isPresent() != approach.exactBrakingPointM().isPresent()) {
      faults.add(name + ": printed without exact");
    }
    if (approach.brakingPointM().isPresent()
        && approach.brakingPointM().get() > approach.exactBrakingPointM().get() + 1e-6) {
      faults.add(
          name
              + ": printed "
              + approach.brakingPointM().get()
              + " after exact "
              + approach.exactBrakingPointM().get());
    }
    for (CaseResult result : approach.cases()) {
      for (Rung rung : result.ladder()) {
        if (rung.latest() instanceof Latest.Point p && p.printedM() > p.exactM() + 1e-6) {
          faults.add(
              name + " " + result.adhesion().name() + " " + rung.brake().shortName() + ": " + p);
        }
      }
      if (result.protectedM().isPresent()
          && result.plannedM().isPresent()
          && result.protectedM().get() > result.plannedM().get() + 1e-6) {
        faults.add(name + " " + result.adhesion().name() + ": protected after planned");
      }
    }
  }

  private static void ladder(Approach approach, List<String> faults) {
    String name = "approach " + approach.number() + " " + approach.target().name();
    for (CaseResult result : approach.cases()) {
      double service = latest(result, Role.FALLBACK);
      double emergency = latest(result, Role.EMERGENCY);
      if (service > emergency + ROOT_M) {
        faults.add(
            name
                + " "
                + result.adhesion().name()
                + ": automatic "
                + service
                + " later than emergency "
                + emergency);
      }
    }
    for (int i = 1; i < approach.cases().size(); i++) {
      for (Role role : Role.values()) {
        double more = latest(approach.cases().get(i - 1), role);
        double less = latest(approach.cases().get(i), role);
        if (less > more + ROOT_M) {
          faults.add(
              name
                  + " "
                  + role
                  + ": "
                  + approach.cases().get(i).adhesion().name()
                  + " "
                  + less
                  + " later than "
                  + more);
        }
      }
    }
  }

  private static double latest(CaseResult result, Role role) {
    Optional<Latest.Point> point =
        result.ladder().stream()
            .filter(r -> has(r.brake(), role))
            .map(Rung::latest)
            .filter(Latest.Point.class::isInstance)
            .map(Latest.Point.class::cast)
            .findFirst();
    return point.map(Latest.Point::exactM).orElse(Double.NEGATIVE_INFINITY);
  }

  private static boolean has(BrakeSystem brake, Role role) {
    return brake.role() == role;
  }
}
