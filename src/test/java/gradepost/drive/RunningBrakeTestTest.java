package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.briefing.Messages;
import gradepost.briefing.page.FindingWords;
import gradepost.briefing.word.Words;
import gradepost.drive.check.PlanVerifier;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.BrakeTest.NoRoom;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.Finding;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.policy.LinePractice;
import gradepost.policy.Practice;
import gradepost.reissue.ApproachChange;
import gradepost.reissue.Comparison;
import gradepost.route.BrakeTestPlace;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.told.InstructionSet;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedFinding;
import gradepost.told.PrintedStep;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A running brake test is in the plan where there is room; see {@link EvenLine}. */
@Tag("slow")
class RunningBrakeTestTest {
  /** The mark; a stop may end 5 m short of it. */
  private static final double MARK_M = 5795;

  private static BrakeTestPlace place(double atM, double mps) {
    return new BrakeTestPlace(EvenLine.at(atM), Direction.FORWARD, new Speed(mps), "");
  }

  private static Assignment line(double... places) {
    List<BrakeTestPlace> tests = new ArrayList<>();
    for (double atM : places) {
      tests.add(place(atM, 18));
    }
    return EvenLine.tested(EvenLine.of(0), tests);
  }

  private static Plan plan(double... places) {
    return Planner.plan(line(places));
  }

  private static int applied(Plan plan) {
    return IntStream.range(0, plan.actions().size())
        .filter(i -> plan.actions().get(i).command().testsBrake())
        .findFirst()
        .orElseThrow();
  }

  private static List<String> findings(Plan plan) {
    FindingWords words = new FindingWords(new Words(Messages.english(), plan.assignment().path()));
    return plan.told().sheets().stream()
        .flatMap(s -> s.findings().stream())
        .filter(f -> f.key().startsWith("finding.test-"))
        .map(words::of)
        .toList();
  }

  /**
   * Validation, with a pencil. Without resistance the train coasts to the test at an even speed, is
   * slowed by 1.0 bar for 5 s and while that is let go, coasts on, and is braked to the mark from
   * the speed that is left: the braking point is that of the run with the test in it.
   */
  @Test
  void theFiguresBehindTheTestAreThoseOfTheRunWithIt() {
    Plan plan = plan(4700);
    assertThat(plan.failures()).isEmpty();
    List<Action> actions = plan.actions();
    int i = applied(plan);
    Action on = actions.get(i);
    Action off = actions.get(i + 1);
    assertThat(on.atM()).isCloseTo(4691.312, within(1e-6));
    assertThat(on.speedMps()).isBetween(18 - 2.3, 18 + 0.5);
    assertThat(actions.get(i - 1).command()).isEqualTo(new Command.ShutOff());
    PencilBraking test = new PencilBraking(on.speedMps()).after(100_000, 5);
    assertThat(off.command()).isEqualTo(new Command.Release());
    assertThat(off.speedMps()).isCloseTo(test.speedMps(), within(1e-4));
    double leftMps = test.after(0, 2).speedMps();
    assertThat(leftMps).isLessThan(on.speedMps() - 0.9);
    Approach approach = plan.approaches().get(0);
    assertThat(approach.brakingSpeedMps()).isCloseTo(leftMps, within(1e-4));
    List<Action> braking = actions.subList(i + 2, actions.size());
    assertThat(braking.get(0).command().brakesForTarget()).isTrue();
    double pointM = approach.brakingPointM().orElseThrow();
    double standsM = pointM + braked(leftMps, braking);
    assertThat(standsM).isBetween(MARK_M - 5, MARK_M).isCloseTo(approach.endM(), within(0.05));
    double untestedM = pointM + braked(on.speedMps(), braking);
    assertThat(untestedM).isGreaterThan(MARK_M + 10);
  }

  /** How far a train of this speed runs with these applications, up to the stand. */
  private static double braked(double mps, List<Action> braking) {
    PencilBraking pencil = new PencilBraking(mps);
    for (int i = 0; i + 1 < braking.size(); i++) {
      double pa = braking.get(i).command().brake().orElseThrow().pressurePa();
      braking
          .get(i + 1)
          .trigger()
          .match(
              place -> pencil,
              up -> pencil,
              down -> pencil.downTo(pa, down.speedMps()),
              after -> pencil.after(pa, after.seconds()),
              start -> pencil,
              stand -> pencil.downTo(pa, 0));
    }
    return pencil.distanceM();
  }

  /** The speed of the test is met by power from a start, or by coasting from a higher one. */
  @ParameterizedTest
  @CsvSource({"1500, 18", "1500, 12", "3000, 21", "900, 15"})
  void theRunIsBroughtToTheSpeedOfTheTest(double atM, double mps) {
    Plan plan = Planner.plan(EvenLine.tested(EvenLine.of(0), List.of(place(atM, mps))));
    assertThat(plan.failures()).isEmpty();
    BrakeTest test = plan.brakeTests().get(0);
    assertThat(test.noRoom()).isEmpty();
    assertThat(test.plannedMps()).isBetween(mps - 2.24, mps + 0.6);
    Action on = plan.actions().get(applied(plan));
    Action before = plan.actions().get(applied(plan) - 1);
    double coastS = plan.assignment().policy().run().coastBeforeBraking().seconds();
    assertThat(before.command().isShutOff()).isTrue();
    assertThat(on.timeS() - before.timeS()).isGreaterThan(coastS - 0.01);
    assertThat(test.speedAfterMps())
        .isCloseTo(new PencilBraking(on.speedMps()).after(100_000, 5).speedMps(), within(1e-3));
  }

  @Test
  void itIsHeldAsLongAsThePolicySays() {
    Assignment line = line(3000);
    Practice longer = Practice.USUAL.with(Changed.in(LinePractice.USUAL, "testHeld", new Span(9)));
    Plan plan = Planner.plan(line.with(line.policy().with(longer)));
    int i = applied(plan);
    assertThat(plan.actions().get(i + 1).timeS() - plan.actions().get(i).timeS())
        .isCloseTo(9, within(1e-6));
  }

  /** From a stand at 195 m the train is at 10 m/s after 100 m, and at 16 m/s after 500. */
  @Test
  void whereTheTrainIsTooSlowThePageSaysSoAndNamesTheNextPlace() {
    Plan plan = plan(300);
    assertThat(plan.failures()).isEmpty();
    assertThat(plan.actions()).noneMatch(a -> a.command().testsBrake());
    assertThat(findings(plan))
        .hasSize(2)
        .first(InstanceOfAssertFactories.STRING)
        .matches(
            "No room for the running brake test at 3\\.51 km\\. With power off it is down to"
                + " 3\\d km/h there\\. The test needs at least 56 km/h\\.");
    NoRoom why = plan.brakeTests().get(0).noRoom().orElseThrow();
    double insteadM = why.instead().orElseThrow().atM();
    assertThat(insteadM).isBetween(500.0, 900.0);
    assertThat(findings(plan).get(1))
        .matches(
            "Make the test at 3\\.\\d\\d km, at about 5\\d km/h\\. This page’s figures do not include it\\.");
    assertThat(plan(insteadM).brakeTests().get(0).made()).isTrue();
    assertThat(plan(insteadM - 200).brakeTests().get(0).made()).isFalse();
  }

  /** From 18 m/s the brake for the stop goes on some 400 m before the mark. */
  @Test
  void whereTheBrakeForTheStopIsOnOrGoesOnAtOnceThePageSaysSo() {
    assertThat(findings(plan(5500)))
        .containsExactly(
            "No room for the running brake test at 8.71 km. Braking for the next target begins before the test is over.",
            "No other place with room was found before the next stop. This page’s figures do not include the"
                + " test. Follow the operator’s instructions.");
    assertThat(findings(plan(5300)).get(0))
        .matches(
            "No room for the running brake test at 8\\.51 km\\. After it the brake would be off for"
                + " only \\d+ s\\.");
    assertThat(plan(5500).actions()).isEqualTo(plan().actions());
  }

  /** The test of 12 psi takes the reservoirs some seconds at 0.5 psi/s, and minutes at a tenth. */
  @Test
  void aBrakeThatOnlyReleasesFullyIsFullAgainBeforeTheNextPointOrThereIsNoRoom() {
    Plan made = released(0.5);
    assertThat(made.failures()).isEmpty();
    assertThat(made.brakeTests().get(0).noRoom()).isEmpty();
    Action off = made.actions().get(applied(made) + 1);
    double pointM = made.approaches().get(0).brakingPointM().orElseThrow();
    Action again =
        made.actions().stream()
            .filter(a -> a.command().brakesForTarget())
            .findFirst()
            .orElseThrow();
    assertThat(again.atM()).isCloseTo(pointM, within(0.01));
    double psi = 12;
    double refillS = (psi + 14.7) / EditionLine.VOLUMES / 0.5;
    assertThat(again.timeS() - off.timeS()).isGreaterThan(refillS);
    Plan none = released(0.05);
    assertThat(none.brakeTests().get(0).noRoom().map(NoRoom::reason))
        .contains(NoRoom.Reason.RECHARGE);
    assertThat(findings(none).get(0))
        .matches(
            "No room for the running brake test at .* The next application comes before the brake has recharged,"
                + " which takes .*\\.");
  }

  private static Plan released(double rechargePsiPerS) {
    Assignment level = EditionLine.level(rechargePsiPerS, false, EvenLine.SAFE);
    return Planner.plan(EvenLine.tested(level, List.of(place(4000, 17))).with(EditionLine.out(20)));
  }

  /** In miles too, on the frozen valley: down and up. */
  @Test
  void aPlanInMilesMakesItsTestsOrSaysWhyNot() {
    for (int paper : new int[] {0, 2}) {
      Plan plan = DemoPlans.plan(paper);
      assertThat(plan.failures()).isEmpty();
      assertThat(plan.brakeTests()).anyMatch(BrakeTest::made);
      for (BrakeTest test : plan.brakeTests()) {
        boolean done =
            plan.actions().stream()
                .anyMatch(a -> a.command().testsBrake() && Math.abs(a.atM() - test.atM()) < 0.01);
        assertThat(done).isEqualTo(test.made());
      }
      long without = plan.brakeTests().stream().filter(t -> !t.made()).count();
      assertThat(findings(plan)).hasSize((int) (2 * without));
    }
  }

  /** Moved to around the braking point of each rail: before it, over at it, and on at it. */
  @Test
  void aPoorerRailOnWhichTheBrakeGoesOnBeforeTheTestIsOverIsFound() {
    BrakeTest test = plan(4700).brakeTests().get(0);
    List<Application> applications =
        DemoPlans.plan(0).approaches().stream()
            .map(Approach::applications)
            .filter(a -> !a.isEmpty() && earlier(a).isPresent())
            .findFirst()
            .orElseThrow();
    CaseResult rail = earlier(applications).orElseThrow();
    double pointM = rail.plannedM().orElseThrow();
    assertThat(onRails(moved(test, pointM - 90, pointM - 10), applications)).isEmpty();
    assertThat(onRails(moved(test, pointM - 10, pointM + 1), applications))
        .contains(new Finding.TestOnRail(rail.adhesion().name(), pointM - 10, pointM));
    double laterM = pointM + 1;
    assertThat(onRails(moved(test, laterM, laterM + 80), applications))
        .contains(new Finding.TestOnRail(rail.adhesion().name(), laterM, pointM));
    BrakeTest none =
        moved(test, laterM, laterM + 80, Optional.of(new NoRoom(NoRoom.Reason.NO_WAY, 0)));
    assertThat(onRails(none, applications)).isEmpty();
  }

  private static List<Finding> onRails(BrakeTest test, List<Application> applications) {
    return Findings.testsOnOtherRails(List.of(test), test.atM() - 1, test.atM() + 1, applications);
  }

  /** A rail on which the first brake goes on well before the planned point. */
  private static Optional<CaseResult> earlier(List<Application> applications) {
    double byM = applications.get(0).brakingPointM() - 5;
    return applications.get(0).cases().stream()
        .filter(c -> c.plannedM().filter(at -> at < byM).isPresent())
        .findFirst();
  }

  private static BrakeTest moved(BrakeTest test, double atM, double endM) {
    return moved(test, atM, endM, Optional.empty());
  }

  private static BrakeTest moved(BrakeTest test, double atM, double endM, Optional<NoRoom> noRoom) {
    return new BrakeTest(
        test.place(),
        atM,
        test.plannedMps(),
        test.pressurePa(),
        test.heldS(),
        test.speedAfterMps(),
        test.decelerationMps2(),
        endM,
        noRoom);
  }

  /** The sheets alone have to drive it. */
  @Test
  void aTestThatIsLeftOutOfTheSheetsIsFound() {
    Plan plan = plan(3000);
    PlanVerifier verifier = new PlanVerifier(plan.assignment());
    assertThat(verifier.failures(plan.told())).isEmpty();
    InstructionSet without = sheets(plan, RunningBrakeTestTest::untested);
    assertThat(verifier.failures(without)).anyMatch(PlanFailure.TestUntold.class::isInstance);
    Plan none = plan(5500);
    PlanVerifier other = new PlanVerifier(none.assignment());
    assertThat(other.failures(none.told())).isEmpty();
    InstructionSet silent = sheets(none, s -> sheet(s, s.steps(), List.of()));
    assertThat(other.failures(silent))
        .containsExactly(new PlanFailure.TestUntold(none.brakeTests().get(0).atM()));
  }

  private static InstructionSet sheets(Plan plan, UnaryOperator<InstructionSheet> other) {
    return new InstructionSet(plan.told().sheets().stream().map(other).toList());
  }

  private static InstructionSheet untested(InstructionSheet sheet) {
    List<PrintedStep> steps = new ArrayList<>(sheet.steps());
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).order().does() instanceof PrintedCommand.Brake b
          && b.stage() == PrintedCommand.Stage.TEST) {
        // With its release, which is told in the same row.
        steps.remove(i);
      }
    }
    return sheet(sheet, steps, sheet.findings());
  }

  private static InstructionSheet sheet(
      InstructionSheet s, List<PrintedStep> steps, List<PrintedFinding> findings) {
    return new InstructionSheet(
        s.number(),
        s.target(),
        s.from(),
        s.speed(),
        steps,
        List.of(),
        s.passing(),
        s.faster(),
        s.spread(),
        findings);
  }

  /** A driver who has learnt the way without the test has something new to learn. */
  @Test
  void anIssueWithATestDiffersFromOneWithout() {
    Comparison with = Comparison.of(plan(), plan(3000));
    assertThat(with.approaches()).noneMatch(ApproachChange::renumberedOnly).isNotEmpty();
    Comparison unmade = Comparison.of(plan(), plan(5500));
    assertThat(unmade.approaches()).noneMatch(ApproachChange::renumberedOnly).isNotEmpty();
    assertThat(Comparison.of(plan(3000), plan(3000)).approaches())
        .allMatch(ApproachChange::renumberedOnly);
  }
}
