package gradepost.drive.bound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.DemoPlans;
import gradepost.drive.OpenLine;
import gradepost.drive.Planner;
import gradepost.drive.RandomLines;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.ForceBalance;
import gradepost.plan.Action;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: no leg of a plan that stands does less work than the bound for its running time, on the
 * packs that are kept, those of the demo, the two open lines and lines that {@link RandomLines}
 * makes up. How far above it plans are is not judged here: the bound knows no rule of driving.
 */
@Tag("slow")
class PlansAboveTheBoundTest {
  private static final int LINES = 6;
  private static final int MANY_LINES = 200;

  @Test
  void plansOfPacksDoMoreWorkThanTheBound() {
    DemoPlans.tried().forEach(assignment -> judge(DemoPlans.plan(assignment)));
  }

  @Test
  void plansOfTheOpenLinesDoMoreWorkThanTheBound() {
    judge(Planner.plan(OpenLine.assignment("one")));
    judge(Planner.plan(OpenLine.assignment("two")));
  }

  @Test
  void plansOfMadeUpLinesDoMoreWorkThanTheBound() {
    for (int seed = 1; seed <= LINES; seed++) {
      judge(Planner.plan(RandomLines.of(seed).assignment()));
    }
  }

  @Test
  @Tag("long")
  void plansOfManyMadeUpLinesDoMoreWorkThanTheBound() {
    for (int seed = LINES + 1; seed <= MANY_LINES; seed++) {
      judge(Planner.plan(RandomLines.of(seed).assignment()));
    }
  }

  private static void judge(Plan plan) {
    Assignment assignment = plan.assignment();
    TrainModels models = new TrainModels(assignment);
    Ceiling ceiling = Ceiling.of(assignment);
    double kg = models.plannedTrain().inertiaKg();
    double bounds = 0;
    double works = 0;
    Action start = plan.actions().get(0);
    List<String> told = new ArrayList<>();
    for (Action action : plan.actions()) {
      if (action.trigger() instanceof Trigger.Start) {
        start = action;
      }
      if (action.command().isStand()) {
        RelaxedLeg leg = RelaxedLeg.between(assignment, models, ceiling, start.atM(), action.atM());
        double seconds = action.timeS() - start.timeS();
        double bound = kg * EnergyBound.of(leg, seconds).joulesPerKg();
        double work = workJ(plan, models.plannedBalance(), start.timeS(), action.timeS());
        told.add("%.0f s: %.2f MJ, bound %.2f".formatted(seconds, work / 1e6, bound / 1e6));
        assertThat(work).as(told.toString()).isGreaterThan(bound);
        bounds += bound;
        works += work;
      }
    }
    // The legs are read from the trace; the whole is what the simulation has added up.
    assertThat(works / plan.energyJ()).isCloseTo(1, within(0.005));
    assertThat(plan.energyJ()).as(told.toString()).isGreaterThan(bounds);
    assertThat(bounds).isPositive();
  }

  /** Work of the power between two times, by Simpson's rule on each step of the trace. */
  private static double workJ(Plan plan, ForceBalance balance, double fromS, double toS) {
    List<Trace.Point> points = plan.trace().points();
    double sum = 0;
    for (int i = 1; i < points.size(); i++) {
      Trace.Point p = points.get(i - 1);
      Trace.Point q = points.get(i);
      if (p.timeS() < fromS - 1e-9 || q.timeS() > toS + 1e-9 || p.notch() < 0) {
        continue;
      }
      double middle = (p.speedMps() + q.speedMps()) / 2;
      double power =
          balance.effortN(p.notch(), p.speedMps()) * p.speedMps()
              + 4 * balance.effortN(p.notch(), middle) * middle
              + balance.effortN(p.notch(), q.speedMps()) * q.speedMps();
      sum += power / 6 * (q.timeS() - p.timeS());
    }
    return sum;
  }
}
