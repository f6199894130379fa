package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.briefing.Messages;
import gradepost.briefing.page.FindingWords;
import gradepost.briefing.word.Words;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.PlanVerifier;
import gradepost.drive.check.RuleBreaches;
import gradepost.plan.Finding.Rule;
import gradepost.plan.PlanFailure;
import gradepost.plan.PlanFailure.NotHeld;
import gradepost.plan.PlanFailure.RuleUntold;
import gradepost.plan.Telling;
import gradepost.plan.TellingFindings;
import gradepost.plan.Trace;
import gradepost.policy.Practice;
import gradepost.policy.TaughtRules;
import gradepost.route.BrakeTestPlace;
import gradepost.route.place.Direction;
import gradepost.stock.Notch;
import gradepost.stock.Stock;
import gradepost.stock.Traction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.told.InstructionSet;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedCommand.Stage;
import gradepost.told.PrintedFinding;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTrigger;
import gradepost.told.Seen;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedPressure;
import gradepost.told.print.PrintedSpeed;
import gradepost.told.print.PrintedTime;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Property: what a driver is told and breaks a rule of the policy is found from the printed sheets
 * alone, and is not issued in silence; the sentence names the place, the figure and the limit. The
 * sheets are made by hand, for a level line in kilometres on which nothing slows the train.
 *
 * <p>The policy: power for 10 s and off for 5 s, 12 s of coasting before the brake, the first
 * application held for 3 s, a brake off for 20 s, 5 s in a dead notch, 3 s before a gap.
 */
class RulesByHandTest {
  private static final PrintedCommand POWER = new PrintedCommand.Power(0);
  private static final PrintedCommand OFF = new PrintedCommand.ShutOff();
  private static final PrintedCommand BRAKE = brake(Stage.FIRST);
  private static final PrintedCommand RELEASE = new PrintedCommand.Release();

  private final List<PrintedStep> steps = new ArrayList<>();
  private Assignment line = EvenLine.of(0);

  private static PrintedCommand brake(Stage stage) {
    return new PrintedCommand.Brake(new PrintedPressure(10, UnitStyle.METRIC), stage);
  }

  private void starts() {
    step(new PrintedTrigger.Start(), 0, POWER);
  }

  private void after(long seconds, PrintedCommand does) {
    step(new PrintedTrigger.After(new PrintedTime(seconds)), 0, does);
  }

  private void at(double metres, PrintedCommand does) {
    step(new PrintedTrigger.AtPlace(), metres, does);
  }

  private void step(PrintedTrigger on, double metres, PrintedCommand does) {
    PrintedSpeed any = new PrintedSpeed(0, UnitStyle.METRIC);
    steps.add(
        new PrintedStep(
            new PrintedOrder(on, does, List.of()),
            new PrintGrid(line.path()).place(metres),
            any,
            Optional.empty(),
            Seen.NOTHING));
  }

  private InstructionSet sheets(List<PrintedFinding> findings) {
    Target.OfApproach stop = Targets.of(line, Ceiling.of(line)).get(0).ofApproach().orElseThrow();
    PrintGrid grid = new PrintGrid(line.path());
    return new InstructionSet(
        List.of(
            new InstructionSheet(
                1,
                Telling.target(grid, stop),
                grid.place(0),
                Optional.empty(),
                steps,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                findings)));
  }

  private InstructionRun run() {
    return new PlanVerifier(line).run(sheets(List.of()));
  }

  private List<Rule> untold(List<PrintedFinding> findings) {
    return new PlanVerifier(line)
        .failures(sheets(findings)).stream()
            .filter(RuleUntold.class::isInstance)
            .map(f -> ((RuleUntold) f).rule())
            .toList();
  }

  /**
   * That this rule alone is broken, is not passed over, and is said in these words.
   *
   * @param place of which the sentence tells, distance run in metres
   */
  private void says(Rule rule, double place, String sentence) {
    List<RuleBreaches.Breach> found = new PlanVerifier(line).breaches(run());
    assertThat(found).extracting(b -> b.what().broken()).containsExactly(rule);
    assertThat(untold(List.of())).containsExactly(rule);
    PrintGrid grid = new PrintGrid(line.path());
    PrintedFinding finding = new TellingFindings(grid).of(found.get(0).what());
    assertThat(untold(List.of(finding))).isEmpty();
    String told = line.path().text(line.path().printedAtOrBefore(place));
    assertThat(new FindingWords(new Words(Messages.english(), line.path())).of(finding))
        .isEqualTo(sentence.formatted(told));
  }

  private double doneAt(int action) {
    return run().actions().get(action).atM();
  }

  @Test
  void powerForTooShort() {
    starts();
    after(6, OFF);
    says(
        Rule.POWER_SHORT,
        doneAt(1),
        "Power is shut off at %s after only 6 s. The policy wants at least 10 s.");
  }

  @Test
  void powerAgainTooSoon() {
    starts();
    after(12, OFF);
    after(3, POWER);
    after(12, OFF);
    says(
        Rule.POWER_AGAIN,
        doneAt(2),
        "Power is taken again at %s, 3 s after shutting off. The policy wants at least 5 s.");
  }

  /** Notch 1 gives 1.728 kN, which are 0.01 m/s² of 172.8 t, at 16.32 mph, and less above. */
  @Test
  void powerInANotchThatGivesNothing() {
    starts();
    after(400, OFF);
    double deadMps = Speed.ofMph(15 + 3 * (1 - 1.728 / (2 * 22 * 0.16 * 0.4375))).metresPerSecond();
    double fromS =
        run().points().stream()
            .filter(p -> p.speedMps() >= deadMps)
            .mapToDouble(Trace.Point::timeS)
            .min()
            .orElseThrow();
    assertThat(fromS).isBetween(40.0, 390.0);
    says(
        Rule.DEAD_NOTCH,
        doneAt(1),
        "Up to %s the notch in use does not pull for "
            + (long) Math.ceil(400 - fromS)
            + " s. The policy allows at most 5 s.");
  }

  @Test
  void aNotchThatIsNoRunningNotchIsKept() {
    Stock stock = line.stock();
    List<Notch> notches = new ArrayList<>(stock.traction().notches());
    notches.set(0, new Notch("shunt", notches.get(0).effort(), Optional.of(new Span(9))));
    line =
        Changed.in(
            line,
            "stock",
            Changed.in(stock, "traction", new Traction(notches, new Span(3), false)));
    starts();
    after(14, OFF);
    says(
        Rule.NOTCH_KEPT,
        doneAt(1),
        "Up to %s a non-running notch is kept for 14 s. The train’s limit is 9 s.");
  }

  @Test
  void theBrakeTooSoonAfterPower() {
    starts();
    after(12, OFF);
    after(4, BRAKE);
    says(
        Rule.BRAKE_AT_ONCE,
        doneAt(2),
        "Braking begins at %s, 4 s after shutting off. The policy wants at least 12 s.");
  }

  @Test
  void theBrakeAgainTooSoon() {
    starts();
    after(20, OFF);
    after(13, BRAKE);
    after(3, RELEASE);
    after(11, BRAKE);
    says(
        Rule.BRAKE_AGAIN,
        doneAt(4),
        "The brake is applied again at %s, 11 s after release. The policy wants at least 20 s.");
  }

  @Test
  void theFirstApplicationIsNotHeld() {
    starts();
    after(20, OFF);
    after(13, BRAKE);
    after(2, RELEASE);
    says(
        Rule.BRAKE_SHORT,
        doneAt(3),
        "The brake is released at %s after only 2 s. The policy wants at least 3 s.");
  }

  @Test
  void moreMovementsInAMile() {
    TaughtRules two =
        new TaughtRules(
            TaughtRules.USUAL.appliedAgain(),
            TaughtRules.USUAL.notchGives(),
            TaughtRules.USUAL.deadNotch(),
            2);
    line = line.with(line.policy().with(Practice.USUAL.with(two)));
    starts();
    after(12, OFF);
    after(6, POWER);
    after(12, OFF);
    says(
        Rule.MOVEMENTS,
        doneAt(0),
        "In the mile from %s the handles move 4 times. The policy allows at most 2.");
  }

  /** Four times power and off are eight; notching up, or a test with its release, would be one. */
  @Test
  void moreInstructionsOnAPlate() {
    starts();
    after(10, OFF);
    for (int i = 0; i < 3; i++) {
      after(6, POWER);
      after(10, OFF);
    }
    says(
        Rule.ROWS,
        doneAt(0),
        "From %s on there are 8 instructions up to this target. The policy allows at most 7.");
  }

  /** A running brake test that no sheet tells of. */
  @Test
  void aRunningBrakeTestIsNotMade() {
    line =
        EvenLine.tested(
            line,
            List.of(new BrakeTestPlace(EvenLine.at(1000), Direction.FORWARD, new Speed(8), "")));
    starts();
    after(20, OFF);
    at(1500, POWER);
    after(12, OFF);
    assertThat(new PlanVerifier(line).failures(sheets(List.of())))
        .filteredOn(PlanFailure.TestUntold.class::isInstance)
        .singleElement()
        .isInstanceOfSatisfying(
            PlanFailure.TestUntold.class,
            t -> assertThat(t.atM()).isCloseTo(991.312, within(1e-6)));
  }

  /** A speed held up to 90 km/h, where 90 km/h is permissible. */
  @Test
  void aSpeedIsHeldTooNearThePermissibleOne() {
    starts();
    after(20, OFF);
    step(
        new PrintedTrigger.AtPlace(),
        800,
        new PrintedCommand.Hold(
            new PrintedCommand.InNotch(3),
            new PrintedSpeed(20, UnitStyle.METRIC),
            new PrintedSpeed(90, UnitStyle.METRIC),
            new PrintGrid(line.path()).place(1500)));
    assertThat(new PlanVerifier(line).failures(sheets(List.of())))
        .filteredOn(NotHeld.class::isInstance)
        .extracting(f -> ((NotHeld) f).why())
        .contains(NotHeld.Why.TOP);
  }
}
