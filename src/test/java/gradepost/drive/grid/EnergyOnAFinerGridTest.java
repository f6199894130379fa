package gradepost.drive.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import gradepost.drive.Changed;
import gradepost.drive.DemoPlans;
import gradepost.drive.PlannedBefore;
import gradepost.drive.Planner;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.RunChooser;
import gradepost.motion.Train;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.plan.Trigger;
import gradepost.policy.CorrectionPractice;
import gradepost.policy.RunRules;
import gradepost.stock.law.AdhesionLaw;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.units.Exact;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How the energy of the plans compares with what another search finds on a finer grid of places and
 * speeds, leg by leg at their own running time and with two handle movements more: {@link
 * FinerGrid}. It brakes as the policy says, and towards what the plan brakes for with the plan's
 * pressures. Neither is the least possible: both are found on grids.
 *
 * <p>Property: on the whole run between 2 % below and 5 % above, to the percent.
 */
@Tag("long")
class EnergyOnAFinerGridTest {
  private static final double GRID = 0.98;
  private static final double MOST = 1.055;
  private static final int MORE_MOVES = 2;

  /**
   * The kept valley packs and the coast. Up the last platform of the demo valley (8-car, Down) the
   * grid finds no way with so few movements that is near any other, so it compares nothing there.
   */
  private static final int COMPARED = 8;

  /** One stop-to-stop run of a plan. */
  private record Leg(double metres, double seconds, int moves, double energyJ, double leastJ) {}

  @Test
  void theEnergyOfThePlansIsNearWhatAFinerGridFinds() {
    for (Assignment kept : DemoPlans.assignments().subList(0, COMPARED)) {
      Assignment assignment = withoutTests(withPointsAsComputed(kept));
      Plan plan = Planner.plan(assignment, unheld());
      assertThat(plan.failures()).isEmpty();
      List<Leg> legs = legs(plan, techniques(assignment));
      double energyJ = legs.stream().mapToDouble(Leg::energyJ).sum();
      double leastJ = legs.stream().mapToDouble(Leg::leastJ).sum();
      assertThat(energyJ).isCloseTo(plan.energyJ(), withinPercentage(0.5));
      assertThat(energyJ / leastJ).as(legs.toString()).isBetween(GRID, MOST);
    }
  }

  /** The grid knows nothing of points that are moved towards the train. */
  private static Assignment withPointsAsComputed(Assignment a) {
    CorrectionPractice usual = a.policy().practice().correction();
    CorrectionPractice off =
        Changed.in(Changed.in(usual, "leavesNextBrake", false), "lateShare", 1.0);
    return a.with(a.policy().with(a.policy().practice().with(off)));
  }

  /** Nor of a speed to which the train is brought for a running brake test. */
  private static Assignment withoutTests(Assignment a) {
    return Changed.route(a, "brakeTests", List.of());
  }

  private static List<Leg> legs(Plan plan, Map<Target, Braking> techniques) {
    List<Leg> legs = new ArrayList<>();
    Action start = plan.actions().get(0);
    int moves = 0;
    for (Action action : plan.actions()) {
      if (action.trigger() instanceof Trigger.Start) {
        start = action;
        moves = 0;
      }
      if (action.command() instanceof Command.Stand) {
        legs.add(leg(plan, techniques, start, action, moves));
      } else {
        moves++;
      }
    }
    return legs;
  }

  private static Leg leg(
      Plan plan, Map<Target, Braking> techniques, Action start, Action stand, int moves) {
    Assignment assignment = plan.assignment();
    TrainModels bench = new TrainModels(assignment, finer());
    Ceiling ceiling = Ceiling.of(assignment);
    List<Target> targets =
        Targets.of(assignment, ceiling).stream()
            .filter(t -> t.atM() > start.atM() + 10 && t.atM() < stand.atM() + 20)
            .toList();
    RunRules run = assignment.policy().run();
    DriverRules rules =
        new DriverRules(assignment, bench, ceiling, start.atM(), DrivingStrategy.of(run));
    LegGrid grid =
        new LegGrid(
            assignment,
            bench,
            rules,
            targets,
            start.atM(),
            t -> techniques.getOrDefault(t, Braking.of(assignment, bench, t)));
    LegSteps steps = new LegSteps(assignment, grid);
    double seconds = stand.timeS() - start.timeS();
    return new Leg(
        stand.atM() - start.atM(),
        seconds,
        moves,
        energyJ(plan, start.timeS(), stand.timeS()),
        new FinerGrid(grid, steps, moves + MORE_MOVES).leastJ(seconds));
  }

  /** Nor of a speed that is held, which is one movement however often it needs power. */
  private static PlannerSettings unheld() {
    PlannerSettings usual = PlannerSettings.usual();
    return Changed.in(usual, "choice", Changed.in(usual.choice(), "holds", 0));
  }

  private static PlannerSettings finer() {
    PlannerSettings usual = PlannerSettings.usual();
    PlannerSettings.Grid grid = Changed.in(usual.grid(), "stepM", 25.0);
    return Changed.in(usual, "grid", Changed.in(grid, "stepMps", 0.1));
  }

  /** What the plan brakes with, target by target. */
  private static Map<Target, Braking> techniques(Assignment assignment) {
    Ceiling ceiling = Ceiling.of(assignment);
    double start = Stops.markM(assignment, assignment.calls().get(0));
    Map<Target, Braking> all = new HashMap<>();
    new RunChooser(assignment, new TrainModels(assignment, unheld()), new PlannedBefore().legs())
        .choose(start, Targets.of(assignment, ceiling))
        .pieces()
        .forEach(p -> p.braking().ifPresent(b -> all.put(p.target(), b)));
    return all;
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
