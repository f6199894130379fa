package gradepost.drive;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.BrakeTests;
import gradepost.drive.check.FigureTables;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.PlanVerifier;
import gradepost.drive.check.Signals;
import gradepost.drive.fallback.EarlierPoints;
import gradepost.drive.fallback.Recharges;
import gradepost.drive.fallback.Spreads;
import gradepost.drive.grid.Places;
import gradepost.drive.leg.ApproachSolution;
import gradepost.drive.leg.ChosenRun;
import gradepost.drive.leg.DrivenLeg;
import gradepost.drive.leg.RunChooser;
import gradepost.motion.NoEnd;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Instruction;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.plan.Telling;
import gradepost.plan.Trace;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.told.InstructionSet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Makes the plan of one assignment. */
public final class Planner {

  /**
   * A run, with the fallbacks of its approaches.
   *
   * @param pieces with those that are met without a brake
   */
  private record Worked(
      ChosenRun chosen,
      List<ApproachSolution> pieces,
      InstructionRun rerun,
      Trace trace,
      List<BrakeTest> tests,
      List<Approach> approaches) {}

  /**
   * Works out the run, its approaches and their fallbacks, and runs it again. The plan that comes
   * back may hold {@link Plan#failures()}; it is then not fit for issue.
   *
   * @throws NoEnd if the stop marks are not in the order of the calls, or a search reaches its
   *     bound
   */
  public static Plan plan(Assignment assignment) {
    return plan(assignment, PlannerSettings.usual());
  }

  /** The same, searched for with other settings than papers are made with. */
  public static Plan plan(Assignment assignment, PlannerSettings settings) {
    return plan(assignment, settings, new PlannedBefore());
  }

  /** The same, by whoever has planned such runs before: the same plan, sooner. */
  public static Plan plan(Assignment assignment, PlannedBefore before) {
    return plan(assignment, PlannerSettings.usual(), before);
  }

  /** Where legs that are each right do not add up to a run that is, with legs that surely are. */
  private static Plan plan(Assignment assignment, PlannerSettings settings, PlannedBefore before) {
    Plan plan = new Planner(assignment, settings, before).plan();
    if (plan.failures().isEmpty()) {
      return plan;
    }
    Plan surely = new Planner(assignment, settings.surely(), before).plan();
    return surely.failures().isEmpty() ? surely : plan;
  }

  private final Assignment assignment;
  private final Ceiling ceiling;
  private final TrainModels bench;
  private final List<Target> targets;
  private final double startM;
  private final TestPlaces testPlaces;
  private final Applications applications;
  private final PermittedRun permitted;
  private final Spreads spreads;
  private final PlannedBefore before;

  private Planner(Assignment assignment, PlannerSettings settings, PlannedBefore before) {
    inOrder(assignment);
    this.before = before;
    this.assignment = assignment;
    this.ceiling = Ceiling.of(assignment);
    this.bench = new TrainModels(assignment, settings);
    this.targets = Targets.of(assignment, ceiling);
    this.startM = Stops.markM(assignment, assignment.calls().get(0));
    this.testPlaces = new TestPlaces(assignment, bench, ceiling);
    this.applications = new Applications(assignment, bench, ceiling);
    this.permitted = new PermittedRun(assignment, bench, ceiling, new Places(assignment));
    this.spreads = new Spreads(assignment, bench, ceiling, before.spreads());
  }

  /** A mark that stands at another platform may lie behind the train. */
  private static void inOrder(Assignment assignment) {
    List<Call> calls = assignment.calls();
    for (int i = 1; i < calls.size(); i++) {
      Call from = calls.get(i - 1);
      Call to = calls.get(i);
      if (Stops.markM(assignment, to) <= Stops.markM(assignment, from)) {
        throw new NoEnd(
            "the train stands at %s, and its mark at %s is not ahead of it"
                .formatted(from.station().name(), to.station().name()));
      }
    }
  }

  private Plan plan() {
    Worked worked = held(new RunChooser(assignment, bench, before.legs()));
    InstructionRun rerun = worked.rerun();
    InstructionSet told =
        new Telling(assignment, worked.approaches(), rerun.actions(), worked.trace()).all();
    return new Plan(
        assignment,
        ceiling.steps(),
        worked.approaches(),
        rerun.actions(),
        worked.trace(),
        rerun.timeS(),
        rerun.energyJ(),
        rerun.movements(),
        worked.chosen().fastest(),
        failures(worked, told),
        new Signals(assignment, bench, ceiling, worked.trace()).all(),
        worked.tests(),
        new FigureTables(assignment, bench).figures(),
        told);
  }

  /**
   * With speeds held as one instruction, as far as the run takes hardly more energy with it than
   * without when all points are as early as they have to be.
   */
  private Worked held(RunChooser chooser) {
    Worked with = moved(chooser);
    if (with.chosen().driven().stream().noneMatch(DrivenLeg::holds)) {
      return with;
    }
    Worked without = moved(chooser.without(Set.copyOf(targets)));
    Set<Target> dear = dear(with.chosen().driven(), without.chosen().driven());
    if (dear.isEmpty()) {
      return with;
    }
    boolean all =
        with.chosen().driven().stream()
            .filter(d -> d.holds())
            .allMatch(d -> dear.contains(d.stop()));
    return all ? without : moved(chooser.without(dear));
  }

  /** The stops of legs that hold a speed at too much energy, the dearest first. */
  private Set<Target> dear(List<DrivenLeg> with, List<DrivenLeg> without) {
    Map<Target, Double> plainJ = new HashMap<>();
    without.forEach(leg -> plainJ.put(leg.stop(), leg.energyJ()));
    double mostJ =
        bench.settings().choice().runHoldEnergy()
            * without.stream().mapToDouble(DrivenLeg::energyJ).sum();
    double isJ = with.stream().mapToDouble(DrivenLeg::energyJ).sum();
    Set<Target> dear = new HashSet<>();
    for (DrivenLeg leg :
        with.stream()
            .filter(DrivenLeg::holds)
            .sorted(
                Comparator.comparingDouble(d -> plainJ.getOrDefault(d.stop(), 0.0) - d.energyJ()))
            .toList()) {
      double moreJ = leg.energyJ() - plainJ.getOrDefault(leg.stop(), 0.0);
      if (isJ > mostJ && moreJ > 0) {
        dear.add(leg.stop());
        isJ -= moreJ;
      }
    }
    return dear;
  }

  /** The run that is chosen, with every point as early as it has to be. */
  private Worked moved(RunChooser chooser) {
    EarlierPoints points = new EarlierPoints(assignment, bench, ceiling);
    Map<Target, EarlierPoints.Earlier> earlier = new HashMap<>();
    Set<Target> refused = new HashSet<>();
    Worked worked = worked(chooser.choose(startM, targets), earlier);
    for (int i = 0; i < bench.settings().fallback().moves(); i++) {
      Map<Target, EarlierPoints.Earlier> more = points.of(worked.approaches(), worked.pieces());
      more.keySet().removeAll(refused);
      if (more.isEmpty()) {
        return worked;
      }
      Map<Target, EarlierPoints.Earlier> before = Map.copyOf(earlier);
      earlier.putAll(more);
      ChosenRun run = chooser.within(EarlierPoints.limits(earlier), worked.chosen());
      if (!run.limits().byM().keySet().containsAll(more.keySet())) {
        // Where the rules of driving do not bear it, the point stays as it was.
        more.keySet().removeAll(run.limits().byM().keySet());
        refused.addAll(more.keySet());
        earlier.keySet().removeAll(refused);
        before.forEach(earlier::putIfAbsent);
        run = chooser.within(EarlierPoints.limits(earlier), run);
      }
      worked = worked(run, earlier);
    }
    return worked;
  }

  private Worked worked(ChosenRun chosen, Map<Target, EarlierPoints.Earlier> earlier) {
    InstructionRun first = rerun(chosen.pieces());
    List<ApproachSolution> pieces =
        Unbraked.with(chosen.pieces(), targets, first.actions(), new Trace(first.points()));
    Map<Target, Integer> numbers = numbers(pieces);
    InstructionRun rerun = rerun(pieces);
    Trace trace = new Trace(rerun.points());
    List<BrakeTest> tests = BrakeTests.of(assignment, bench, rerun, testPlaces.without(chosen));
    List<Approach> approaches =
        new Approaches(
                assignment,
                bench,
                ceiling,
                numbers,
                rerun.actions(),
                tests,
                new PlanVerifier(assignment, bench, ceiling).breaches(rerun),
                Recharges.of(assignment.stock().service(), rerun.made(), rerun.refillS(), trace),
                earlier,
                applications,
                permitted,
                spreads)
            .of(pieces, trace);
    return new Worked(chosen, pieces, rerun, trace, tests, approaches);
  }

  private InstructionRun rerun(List<ApproachSolution> pieces) {
    InstructionRun rerun = new InstructionRun(assignment, bench, ceiling);
    List<Instruction> instructions = new ArrayList<>();
    pieces.forEach(p -> instructions.addAll(p.instructions()));
    rerun.run(startM, instructions, numbers(pieces));
    return rerun;
  }

  /** What goes wrong when the run is driven from its sheets, with the cause of it where known. */
  private List<PlanFailure> failures(Worked worked, InstructionSet told) {
    List<PlanFailure> failures =
        new ArrayList<>(new PlanVerifier(assignment, bench, ceiling).failures(told));
    Optional<Double> stallsM = worked.chosen().stallsM();
    if (stallsM.isEmpty()) {
      Unbrakeable.of(assignment, bench, ceiling, worked.pieces(), failures)
          .ifPresent(why -> failures.add(0, why));
    }
    stallsM.ifPresent(at -> failures.add(new PlanFailure.Stalls(at)));
    return failures;
  }

  /** Terminal ceilings belong to the approach of the stop behind them. */
  private static Map<Target, Integer> numbers(List<ApproachSolution> pieces) {
    Map<Target, Integer> numbers = new HashMap<>();
    int next = 1;
    for (ApproachSolution piece : pieces) {
      numbers.put(piece.target(), next);
      if (piece.target().ofApproach().isPresent()) {
        next++;
      }
    }
    return numbers;
  }
}
