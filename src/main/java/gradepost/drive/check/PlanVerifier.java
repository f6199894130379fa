package gradepost.drive.check;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.RunningTest;
import gradepost.plan.Action;
import gradepost.plan.BrakeTest.NoRoom;
import gradepost.plan.Finding;
import gradepost.plan.PlanFailure;
import gradepost.plan.Step;
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
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Drives a run from what is printed alone: the sheets, in printed units, on the train and the track
 * of an assignment. How a plan was found is not known here, so that nothing that the paper leaves
 * out can help it.
 */
public final class PlanVerifier {
  /** A train that stands no further from a mark stands at it, metres. */
  private static final double AT_MARK_M = 25;

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
   * driving that is broken, or a running brake test that is not made, without a word on the sheet.
   * Empty where nothing is wrong.
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
    failures.addAll(testsUntold(run, told));
    failures.addAll(
        new HeldSpeeds(assignment, models, ceiling)
            .failures(startM(), instructions.all(), instructions.numbers()));
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

  /** Running brake tests that are not made as they are to be, without a word on any sheet. */
  private List<PlanFailure> testsUntold(InstructionRun run, InstructionSet told) {
    TellingFindings telling = new TellingFindings(new PrintGrid(assignment.path()));
    List<PrintedFinding> said = told.sheets().stream().flatMap(s -> s.findings().stream()).toList();
    double fromM = Stops.markM(assignment, assignment.calls().get(0));
    double toM =
        run.actions().isEmpty() ? fromM : run.actions().get(run.actions().size() - 1).atM();
    List<RunningTest> tests = RunningTest.of(assignment, models, fromM, toM);
    return TestRoom.missing(run, assignment.policy(), tests).stream()
        .map(TestRoom.Missing::test)
        .filter(t -> said.stream().noneMatch(f -> saysWhy(f, t, telling)))
        .map(t -> (PlanFailure) new PlanFailure.TestUntold(t.atM()))
        .toList();
  }

  private static boolean saysWhy(PrintedFinding said, RunningTest test, TellingFindings telling) {
    return Arrays.stream(NoRoom.Reason.values())
        .map(
            reason ->
                telling.of(
                    new Finding.NoRoomForTest(test.atM(), test.aimMps(), new NoRoom(reason, 0))))
        .anyMatch(
            f -> f.key().equals(said.key()) && f.values().get(0).equals(said.values().get(0)));
  }

  /** The rules of driving that a run breaks. */
  public List<RuleBreaches.Breach> breaches(InstructionRun run) {
    List<RuleBreaches.Breach> all =
        new ArrayList<>(
            RuleBreaches.of(
                run.made(),
                run.points(),
                RuleBreaches.Limits.of(assignment.policy(), assignment.stock().traction()),
                models.plannedBalance()::effortMps2));
    all.addAll(rows(run));
    return List.copyOf(all);
  }

  /** Plates with more instructions than a driver can keep in mind. */
  private List<RuleBreaches.Breach> rows(InstructionRun run) {
    List<Double> terminals =
        Targets.of(assignment, ceiling).stream()
            .filter(t -> t.stop().filter(Target.Stop::terminal).isPresent())
            .map(Target::atM)
            .toList();
    Map<Integer, List<Action>> plates = new TreeMap<>();
    run.actions().forEach(a -> plates.computeIfAbsent(a.approach(), n -> new ArrayList<>()).add(a));
    List<RuleBreaches.Breach> over = new ArrayList<>();
    plates.forEach(
        (number, actions) -> {
          Action last = actions.get(actions.size() - 1);
          boolean terminal =
              last.command().isStand()
                  && terminals.stream().anyMatch(m -> Math.abs(m - last.atM()) < AT_MARK_M);
          long rows = Step.rows(actions);
          int most = assignment.policy().practice().taught().rows(terminal);
          if (rows > most) {
            over.add(
                new RuleBreaches.Breach(
                    number,
                    new Finding.RuleBroken(Finding.Rule.ROWS, actions.get(0).atM(), rows, most)));
          }
        });
    return over;
  }

  /** The run itself. */
  public InstructionRun run(InstructionSet told) {
    return run(ToldInstructions.of(assignment, Targets.of(assignment, ceiling), told));
  }

  private InstructionRun run(ToldInstructions instructions) {
    InstructionRun run = new InstructionRun(assignment, models, ceiling);
    run.run(startM(), instructions.all(), instructions.numbers());
    return run;
  }

  private double startM() {
    return Stops.markM(assignment, assignment.calls().get(0));
  }
}
