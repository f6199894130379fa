package gradepost.drive;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.BrakeTests;
import gradepost.drive.check.FigureTables;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.PlanVerifier;
import gradepost.drive.check.Signals;
import gradepost.drive.fallback.Recharges;
import gradepost.drive.leg.ApproachSolution;
import gradepost.drive.leg.RunChooser;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Instruction;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.plan.Telling;
import gradepost.plan.Trace;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.told.InstructionSet;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes the plan of one assignment. */
public final class Planner {

  /** What a run comes to, before the fallbacks are worked out. */
  private record Worked(
      Ceiling ceiling,
      TrainModels bench,
      List<ApproachSolution> pieces,
      Map<Target, Integer> numbers,
      InstructionRun rerun,
      Optional<Double> stallsM,
      Plan.Cost fastest) {}

  /**
   * Works out the run, its approaches and their fallbacks, and runs it again. The plan that comes
   * back may hold {@link Plan#failures()}; it is then not fit for issue.
   */
  public static Plan plan(Assignment assignment) {
    return plan(assignment, PlannerSettings.usual());
  }

  /** The same, searched for with other settings than papers are made with. */
  public static Plan plan(Assignment assignment, PlannerSettings settings) {
    Worked worked = run(assignment, settings);
    InstructionRun rerun = worked.rerun();
    Trace trace = new Trace(rerun.points());
    List<BrakeTest> tests = BrakeTests.of(assignment, worked.bench(), trace);
    List<Approach> approaches =
        new Approaches(
                assignment,
                worked.bench(),
                worked.ceiling(),
                worked.numbers(),
                rerun.actions(),
                tests,
                new PlanVerifier(assignment, worked.bench(), worked.ceiling()).breaches(rerun),
                Recharges.of(assignment.stock().service(), rerun.actions(), rerun.refillS(), trace))
            .of(worked.pieces(), trace);
    return new Plan(
        assignment,
        worked.ceiling().steps(),
        approaches,
        rerun.actions(),
        trace,
        rerun.timeS(),
        rerun.energyJ(),
        rerun.movements(),
        worked.fastest(),
        failures(
            assignment, worked, new Telling(assignment, approaches, rerun.actions(), trace).all()),
        new Signals(assignment, worked.bench(), worked.ceiling(), trace).all(),
        tests,
        new FigureTables(assignment, worked.bench()).figures());
  }

  private static Worked run(Assignment assignment, PlannerSettings settings) {
    Ceiling ceiling = Ceiling.of(assignment);
    TrainModels bench = new TrainModels(assignment, settings);
    List<Target> targets = Targets.of(assignment, ceiling);
    double start = Stops.markM(assignment, assignment.calls().get(0));
    RunChooser.Chosen chosen = new RunChooser(assignment, bench, ceiling).choose(start, targets);
    InstructionRun first = rerun(assignment, bench, ceiling, start, chosen.pieces());
    List<ApproachSolution> pieces =
        Unbraked.with(chosen.pieces(), targets, first.actions(), new Trace(first.points()));
    Map<Target, Integer> numbers = numbers(pieces);
    InstructionRun rerun = rerun(assignment, bench, ceiling, start, pieces);
    return new Worked(ceiling, bench, pieces, numbers, rerun, chosen.stallsM(), chosen.fastest());
  }

  private static InstructionRun rerun(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      double startM,
      List<ApproachSolution> pieces) {
    InstructionRun rerun = new InstructionRun(assignment, bench, ceiling);
    List<Instruction> instructions = new ArrayList<>();
    pieces.forEach(p -> instructions.addAll(p.instructions()));
    rerun.run(startM, instructions, numbers(pieces));
    return rerun;
  }

  /** What goes wrong when the run is driven from its sheets, with the cause of it where known. */
  private static List<PlanFailure> failures(
      Assignment assignment, Worked worked, InstructionSet told) {
    List<PlanFailure> failures =
        new ArrayList<>(
            new PlanVerifier(assignment, worked.bench(), worked.ceiling()).failures(told));
    if (worked.stallsM().isEmpty()) {
      Unbrakeable.of(assignment, worked.bench(), worked.ceiling(), worked.pieces(), failures)
          .ifPresent(why -> failures.add(0, why));
    }
    worked.stallsM().ifPresent(at -> failures.add(new PlanFailure.Stalls(at)));
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

  private Planner() {}
}
