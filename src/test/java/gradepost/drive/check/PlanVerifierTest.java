package gradepost.drive.check;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.drive.Mill;
import gradepost.drive.Planner;
import gradepost.drive.RandomLines;
import gradepost.plan.Finding.Rule;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.plan.Telling;
import gradepost.policy.Practice;
import gradepost.policy.TaughtRules;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.told.InstructionSet;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedFinding;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTrigger;
import gradepost.told.Seen;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedSpeed;
import gradepost.told.print.PrintedTime;
import gradepost.units.Span;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: what is printed is enough to drive the run that was planned. */
@Tag("slow")
class PlanVerifierTest {
  @Test
  void theDemoPacksAreDrivenFromTheirSheetsAsPlanned() {
    SheetsDriven judge = new SheetsDriven();
    for (int i = 0; i < DemoPlans.tried().size(); i++) {
      judge.look("demo " + i, DemoPlans.plan(DemoPlans.tried().get(i)));
    }
    assertThat(judge.wrong()).isEmpty();
  }

  /** Nothing but what is printed: power notch by notch, and off at a speed. */
  private static InstructionSet byHand(Assignment assignment, long offMph) {
    PrintGrid grid = new PrintGrid(assignment.path());
    Target.OfApproach first =
        Targets.of(assignment, Ceiling.of(assignment)).get(0).ofApproach().orElseThrow();
    PrintedTrigger wait = new PrintedTrigger.After(new PrintedTime(3));
    PrintedOrder away =
        new PrintedOrder(
            new PrintedTrigger.Start(),
            new PrintedCommand.Power(0),
            List.of(
                new PrintedOrder.Further(new PrintedCommand.Power(1), wait),
                new PrintedOrder.Further(new PrintedCommand.Power(2), wait),
                new PrintedOrder.Further(new PrintedCommand.Power(3), wait)));
    PrintedSpeed off = new PrintedSpeed(offMph, UnitStyle.MILES);
    PrintedOrder shutOff =
        new PrintedOrder(
            new PrintedTrigger.SpeedUpTo(off), new PrintedCommand.ShutOff(), List.of());
    PrintedSpeed stands = new PrintedSpeed(0, UnitStyle.MILES);
    List<PrintedStep> steps =
        List.of(
            new PrintedStep(away, grid.place(0), stands, Optional.empty(), Seen.NOTHING),
            new PrintedStep(shutOff, grid.place(0), off, Optional.empty(), Seen.NOTHING),
            new PrintedStep(
                new PrintedOrder(
                    new PrintedTrigger.AtPlace(), new PrintedCommand.Release(), List.of()),
                grid.placePast(first.atM() + 40),
                off,
                Optional.empty(),
                Seen.NOTHING));
    return new InstructionSet(
        List.of(
            new InstructionSheet(
                1,
                Telling.target(grid, first),
                grid.place(0),
                Optional.empty(),
                steps,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of())));
  }

  @Test
  void sheetsThatAreMadeByHandAreDrivenAndJudged() {
    Assignment assignment = Mill.assignment(Direction.FORWARD, "4-car");
    PlanVerifier verifier = new PlanVerifier(assignment);
    assertThat(verifier.failures(byHand(assignment, 25))).isEmpty();
    assertThat(verifier.failures(byHand(assignment, 58))).anyMatch(f -> f.over().isPresent());
  }

  /** A rule of driving may be broken, but not in silence. */
  @Test
  void aRuleOfDrivingThatIsBrokenIsSaidOnItsSheetOrThePlanIsNotIssued() {
    Assignment line = RandomLines.of(3).assignment();
    TaughtRules never =
        new TaughtRules(new Span(3600), TaughtRules.USUAL.notchGives(), new Span(500), 100);
    Assignment strict = line.with(line.policy().with(Practice.USUAL.with(never)));
    Plan plan = Planner.plan(strict);
    List<PrintedFinding> said =
        plan.told().sheets().stream()
            .flatMap(s -> s.findings().stream())
            .filter(f -> f.key().equals("finding.brake-again"))
            .toList();
    assertThat(said).isNotEmpty();
    PlanVerifier verifier = new PlanVerifier(strict);
    assertThat(verifier.failures(plan.told())).isEqualTo(plan.failures());
    assertThat(plan.failures()).noneMatch(PlanFailure.RuleUntold.class::isInstance);
    InstructionSet silent =
        new InstructionSet(
            plan.told().sheets().stream().map(PlanVerifierTest::withoutFindings).toList());
    assertThat(verifier.failures(silent))
        .filteredOn(PlanFailure.RuleUntold.class::isInstance)
        .hasSize(said.size())
        .allMatch(f -> f instanceof PlanFailure.RuleUntold u && u.rule() == Rule.BRAKE_AGAIN);
  }

  private static InstructionSheet withoutFindings(InstructionSheet s) {
    return new InstructionSheet(
        s.number(),
        s.target(),
        s.from(),
        s.speed(),
        s.steps(),
        s.applications(),
        s.passing(),
        s.faster(),
        s.spread(),
        List.of());
  }
}
