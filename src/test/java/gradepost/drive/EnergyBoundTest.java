package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import gradepost.motion.Train;
import gradepost.stock.AdhesionLaw;
import gradepost.units.Exact;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * How much more than the least possible energy the plans of both demonstration routes take, leg by
 * leg at their own running time; see {@link EnergyBound} for the bound. The brake of the bound is
 * that of the planned technique: at no speed more pressure than the planned leg has there.
 *
 * <p>Property: no plan needs less than the bound (but for 3 %, the grid of the bound). Regression:
 * the ratio measured on 25 November 2026 was 1.46 for the Down run of the valley line and 1.09 to
 * 1.15 for the others, 1.20 on average. Legs without a reduction are mostly within 10 %; in the
 * others a plan of few movements, with a band instead of a held speed, loses time at each reduction
 * that the bound spends coasting.
 */
class EnergyBoundTest {
  private static final double GRID = 0.97;
  private static final double MOST = 1.48;
  private static final double MOST_ON_AVERAGE = 1.22;

  /** One stop-to-stop run of a plan. */
  private record Leg(double metres, double seconds, double energyJ, double leastJ) {}

  @Test
  void theEnergyOfThePlansIsNearTheLeastForTheirTime() {
    double sum = 0;
    int plans = 0;
    for (Assignment assignment : DemoPlans.assignments()) {
      if (assignment.formation().cars() > 4) {
        continue;
      }
      Plan plan = Planner.plan(assignment);
      assertThat(plan.failures()).isEmpty();
      List<Leg> legs = legs(plan);
      double energyJ = legs.stream().mapToDouble(Leg::energyJ).sum();
      double ratio = energyJ / legs.stream().mapToDouble(Leg::leastJ).sum();
      System.out.printf(
          "%s %s: %.1f MJ, %.3f of the bound%n",
          assignment.direction(), assignment.formation().name(), energyJ / 1e6, ratio);
      for (Leg leg : legs) {
        System.out.printf(
            "  %.0f m in %.0f s: %.2f MJ, bound %.2f MJ, %.3f%n",
            leg.metres(),
            leg.seconds(),
            leg.energyJ() / 1e6,
            leg.leastJ() / 1e6,
            leg.energyJ() / leg.leastJ());
        assertThat(leg.energyJ()).isGreaterThan(GRID * leg.leastJ());
      }
      assertThat(energyJ).isCloseTo(plan.energyJ(), withinPercentage(0.5));
      assertThat(ratio).isLessThan(MOST);
      sum += ratio;
      plans++;
    }
    assertThat(sum / plans).isLessThan(MOST_ON_AVERAGE);
  }

  private static List<Leg> legs(Plan plan) {
    List<Leg> legs = new ArrayList<>();
    Action start = plan.actions().get(0);
    for (Action action : plan.actions()) {
      if (action.trigger() instanceof Trigger.Start) {
        start = action;
      } else if (action.command() instanceof Command.Stand) {
        double seconds = action.timeS() - start.timeS();
        EnergyBound bound =
            new EnergyBound(
                plan.assignment(),
                plan.ceiling(),
                start.atM(),
                action.atM(),
                technique(plan, start.timeS(), action.timeS()));
        legs.add(
            new Leg(
                action.atM() - start.atM(),
                seconds,
                energyJ(plan, start.timeS(), action.timeS()),
                bound.leastJ(seconds)));
      }
    }
    return legs;
  }

  /**
   * The heaviest pressure that the planned run has at a speed, or below it, or 0.3 m/s above it.
   */
  private static DoubleUnaryOperator technique(Plan plan, double fromS, double toS) {
    double[] most = new double[500];
    List<Trace.Point> points = plan.trace().points();
    for (int k = 1; k < points.size(); k++) {
      Trace.Point p = points.get(k - 1);
      Trace.Point q = points.get(k);
      if (p.timeS() > fromS && q.timeS() <= toS) {
        double pressure = Math.max(p.pressurePa(), q.pressurePa());
        int low = (int) (Math.min(p.speedMps(), q.speedMps()) / 0.1);
        int high = (int) (Math.max(p.speedMps(), q.speedMps()) / 0.1);
        for (int i = low; i <= high; i++) {
          most[i] = Math.max(most[i], pressure);
        }
      }
    }
    for (int i = 1; i < most.length; i++) {
      most[i] = Math.max(most[i], most[i - 1]);
    }
    return v -> most[Math.min(most.length - 1, (int) (v / 0.1) + 3)];
  }

  /**
   * Work of the traction between two times, from the trace: Simpson's rule on each of its steps.
   */
  private static double energyJ(Plan plan, double fromS, double toS) {
    Assignment assignment = plan.assignment();
    Train train = Train.of(assignment.stock(), assignment.formation(), assignment.load());
    AdhesionLaw adhesion = assignment.policy().plannedAdhesion().law();
    List<Trace.Point> points = plan.trace().points();
    double sum = 0;
    for (int i = 1; i < points.size(); i++) {
      Trace.Point p = points.get(i - 1);
      Trace.Point q = points.get(i);
      if (p.timeS() < fromS - 1e-9 || q.timeS() > toS + 1e-9 || p.notch() < 0) {
        continue;
      }
      double middle = (p.speedMps() + q.speedMps()) / 2;
      double work = 0;
      double[] weights = {1, 4, 1};
      double[] speeds = {p.speedMps(), middle, q.speedMps()};
      for (int j = 0; j < 3; j++) {
        double grip = adhesion.mu(speeds[j]) * train.motoredKg() * Exact.G;
        double force = Math.min(train.effort().get(p.notch()).at(speeds[j]), grip);
        work += weights[j] / 6 * force * speeds[j];
      }
      sum += work * (q.timeS() - p.timeS());
    }
    return sum;
  }
}
