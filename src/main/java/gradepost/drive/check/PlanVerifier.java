package gradepost.drive.check;

import gradepost.drive.brake.TrainModels;
import gradepost.plan.PlanFailure;
import gradepost.plan.TellingFindings;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.told.InstructionSet;
import gradepost.told.PrintedFinding;
import gradepost.told.print.PrintGrid;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Drives a run from what is printed alone: the sheets, in printed units, on the train and the track
 * of an assignment. How a plan was found is not known here, so that nothing that the paper leaves
 * out can help it.
 */
public final class PlanVerifier {
  private final Assignment assignment;
  private final TrainModels models;
  private final Ceiling ceiling;

  /** For a train and a track. */
  public PlanVerifier(Assignment assignment) {
    this(assignment, new TrainModels(assignment), Ceiling.of(assignment));
  }

  /** The same, where the models of the train and the ceiling are known. */
  public PlanVerifier(Assignment assignment, TrainModels models, Ceiling ceiling) {
    this.assignment = assignment;
    this.models = models;
    this.ceiling = ceiling;
  }

  /**
   * Why what is told is not fit for issue: a permissible speed that is broken, a handle movement
   * that the stock forbids, a stop that is missed, something waited for that never comes, a rule of
   * driving that is broken without a word on the sheet. Empty where nothing is wrong.
   *
   * @throws IllegalArgumentException for a sheet whose target this run does not have
   */
  public List<PlanFailure> failures(InstructionSet told) {
    ToldInstructions instructions =
        ToldInstructions.of(assignment, Targets.of(assignment, ceiling), told);
    InstructionRun run = run(instructions);
    List<PlanFailure> failures = new ArrayList<>(run.failures());
    for (Target target : instructions.numbers().keySet()) {
      int number = instructions.numberOf(target);
      boolean stood =
          run.actions().stream().anyMatch(a -> a.approach() == number && a.command().isStand());
      if (target.isStop() && !stood) {
        failures.add(new PlanFailure.NeverComes(target.atM(), new Trigger.Standstill()));
      }
    }
    failures.addAll(untold(run, told));
    return List.copyOf(failures);
  }

  /** Rules of driving that are broken without a word on the sheet. */
  private List<PlanFailure> untold(InstructionRun run, InstructionSet told) {
    TellingFindings telling = new TellingFindings(new PrintGrid(assignment.path()));
    Map<Integer, List<String>> says = new HashMap<>();
    told.sheets()
        .forEach(
            sheet ->
                says.put(
                    sheet.number(), sheet.findings().stream().map(PrintedFinding::key).toList()));
    return breaches(run).stream()
        .filter(
            b -> !says.getOrDefault(b.approach(), List.of()).contains(telling.of(b.what()).key()))
        .map(b -> (PlanFailure) new PlanFailure.RuleUntold(b.what().atM(), b.what().broken()))
        .toList();
  }

  /** The rules of driving that a run breaks. */
  public List<RuleBreaches.Breach> breaches(InstructionRun run) {
    return RuleBreaches.of(
        run.actions(),
        run.points(),
        RuleBreaches.Limits.of(assignment.policy()),
        models.plannedBalance()::effortMps2);
  }

  /** The run itself. */
  public InstructionRun run(InstructionSet told) {
    return run(ToldInstructions.of(assignment, Targets.of(assignment, ceiling), told));
  }

  private InstructionRun run(ToldInstructions instructions) {
    InstructionRun run = new InstructionRun(assignment, models, ceiling);
    double startM = Stops.markM(assignment, assignment.calls().get(0));
    run.run(startM, instructions.all(), instructions.numbers());
    return run;
  }
}
