package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.PlanVerifier;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Finding;
import gradepost.plan.Instruction;
import gradepost.plan.Plan;
import gradepost.plan.PlanFailure;
import gradepost.plan.Trigger;
import gradepost.stock.BrakeSystem.Role;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.told.InstructionSet;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedStep;
import gradepost.told.print.PrintedPressure;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * A train whose electro-pneumatic brake is out of use. Validation: its brakings on the level are
 * worked out with a pencil ({@link PencilAlong}); the rest are properties of such a run.
 */
class DegradedBrakingTest {
  private static final double PSI = 6894.757293168;

  /** Of the standard atmosphere: 101,325 Pa. */
  private static final double ATMOSPHERE_PSI = 14.6959;

  private static final double RECHARGE_PSI = 0.8;

  private static final Plan PLAN =
      Planner.plan(EditionLine.level(RECHARGE_PSI, true, EvenLine.SAFE).with(EditionLine.out(20)));

  private static List<Action> braking(String kind) {
    Approach approach =
        PLAN.approaches().stream()
            .filter(a -> a.target().isStop() == kind.equals("stop"))
            .filter(a -> a.brakingPointM().isPresent())
            .findFirst()
            .orElseThrow();
    return approach.actions().stream()
        .filter(a -> a.atM() > approach.brakingPointM().orElseThrow() - 0.01)
        .toList();
  }

  private static double psi(Action action) {
    return ((Command.Brake) action.command()).pressurePa() / PSI;
  }

  @Test
  void itIsFitAndNoFasterThanItsClausePermits() {
    assertThat(PLAN.failures()).isEmpty();
    assertThat(PLAN.trace().points()).allMatch(p -> p.speedMps() <= 20 + 0.05);
    assertThat(PLAN.ceiling()).anyMatch(s -> s.cause().equals("EP out of use"));
    assertThat(PLAN.ceiling()).allMatch(s -> s.speedMps() <= 20);
  }

  @Test
  void aStopIsBrakedOnceAndHeldUntilTheStand() {
    List<Action> acts = braking("stop");
    assertThat(acts).extracting(a -> a.command().isBrake()).containsExactly(true, true, false);
    assertThat(acts.get(2).command().isStand()).isTrue();
    assertThat(psi(acts.get(1))).isGreaterThan(psi(acts.get(0)));
    double heldS = ((Trigger.After) acts.get(1).trigger()).seconds();
    PencilAlong pencil =
        new PencilAlong(acts.get(0).speedMps())
            .ask(psi(acts.get(0)))
            .forS(heldS)
            .ask(psi(acts.get(1)))
            .downTo(0);
    assertThat(acts.get(2).atM() - acts.get(0).atM()).isCloseTo(pencil.metres(), within(0.1));
    assertThat(acts.get(2).timeS() - acts.get(0).timeS()).isCloseTo(pencil.seconds(), within(0.05));
  }

  @Test
  void forALowerSpeedItIsReleasedOnceAndFullAgainWhenBoyleSays() {
    List<Action> acts = braking("lower");
    assertThat(acts).extracting(a -> a.command().isBrake()).startsWith(true, true, false);
    assertThat(acts.stream().filter(a -> a.command().isRelease())).hasSize(1);
    Action released = acts.get(2);
    double mainPsi = psi(acts.get(1));
    PencilAlong pencil =
        new PencilAlong(acts.get(0).speedMps())
            .ask(psi(acts.get(0)))
            .forS(((Trigger.After) acts.get(1).trigger()).seconds())
            .ask(mainPsi)
            .downTo(released.speedMps());
    assertThat(released.atM() - acts.get(0).atM()).isCloseTo(pencil.metres(), within(0.1));
    double releasedM = pencil.metres();

    // p V is what a cylinder holds; the reservoir, of 3.25 cylinders, has lost as much.
    double refillS = (mainPsi + ATMOSPHERE_PSI) / EditionLine.VOLUMES / RECHARGE_PSI;
    Finding.FullAgain full =
        PLAN.approaches().stream()
            .flatMap(a -> a.findings().stream())
            .filter(Finding.FullAgain.class::isInstance)
            .map(Finding.FullAgain.class::cast)
            .findFirst()
            .orElseThrow();
    assertThat(full.releasedM()).isEqualTo(released.atM());
    assertThat(full.afterS()).isCloseTo(refillS, within(0.01));
    pencil.ask(0).forS(refillS);
    assertThat(full.fullM() - released.atM()).isCloseTo(pencil.metres() - releasedM, within(0.3));
    assertThat(PLAN.told().sheets())
        .flatExtracting(InstructionSheet::findings)
        .extracting(f -> f.key())
        .contains("finding.full-again");
  }

  /**
   * On 45 ‰ a checking application of a brake that fills so slowly comes too late to hold the speed
   * of the clause; on 110 ‰, which put 1.0 m/s² on the train, full service with its 0.85 does not
   * slow it.
   */
  @Test
  void whereItCannotBeBrakedOrHeldItIsFoundNotFit() {
    assertThat(Planner.plan(EvenLine.of(-45).with(EditionLine.out(20))).failures())
        .isNotEmpty()
        .allMatch(f -> f.over().isPresent());
    assertThat(Planner.plan(EvenLine.of(-110).with(EditionLine.out(20))).failures())
        .anyMatch(PlanFailure::isCause);
  }

  @Test
  void whatIsLeftIsTheEmergencyBrakeAlone() {
    assertThat(PLAN.approaches())
        .flatExtracting(Approach::applications)
        .isNotEmpty()
        .flatExtracting(a -> a.told())
        .allSatisfy(
            c -> {
              assertThat(c.ladder())
                  .extracting(r -> r.brake().role())
                  .containsExactly(Role.SERVICE, Role.EMERGENCY);
              assertThat(c.ladder().get(0).brake().shortName()).isEqualTo("Auto");
              assertThat(c.answers()).allMatch(answer -> answer.brake().role() == Role.EMERGENCY);
            });
  }

  @Test
  void thePaperThatEasesTheAutomaticBrakeIsRefused() {
    PlanVerifier verifier = new PlanVerifier(PLAN.assignment());
    assertThat(verifier.failures(PLAN.told())).isEmpty();
    InstructionSet eased =
        new InstructionSet(PLAN.told().sheets().stream().map(DegradedBrakingTest::eased).toList());
    assertThat(eased).isNotEqualTo(PLAN.told());
    assertThat(verifier.failures(eased)).anyMatch(PlanFailure.ForbiddenMovement.class::isInstance);
  }

  private static PrintedCommand eased(PrintedCommand command) {
    return command
        .brake()
        .filter(b -> b.stage() == PrintedCommand.Stage.MAIN)
        .<PrintedCommand>map(
            b ->
                new PrintedCommand.Brake(
                    new PrintedPressure(2, b.pressure().units()), PrintedCommand.Stage.EASE))
        .orElse(command);
  }

  /** The main application is asked for with less than the first. */
  private static InstructionSheet eased(InstructionSheet s) {
    List<PrintedStep> steps = new ArrayList<>();
    for (PrintedStep step : s.steps()) {
      PrintedOrder order = step.order();
      List<PrintedOrder.Further> further =
          order.further().stream()
              .map(f -> new PrintedOrder.Further(eased(f.does()), f.on()))
              .toList();
      steps.add(
          new PrintedStep(
              new PrintedOrder(order.on(), eased(order.does()), further),
              step.where(),
              step.speed(),
              step.sinceLast(),
              step.seen()));
    }
    return new InstructionSheet(
        s.number(),
        s.target(),
        s.from(),
        s.speed(),
        steps,
        s.applications(),
        s.passing(),
        s.faster(),
        s.spread(),
        s.findings());
  }

  @Test
  void aBrakeIsNotAskedForMoreThanItsReservoirsHave() {
    assertThat(again(60)).isEmpty();
    assertThat(again(10))
        .singleElement()
        .isInstanceOfSatisfying(
            PlanFailure.NotRecharged.class,
            not -> {
              // 25 psi in the cylinder cost the reservoir (25 + 14.7) / 3.25 of its 70 psi.
              double left = 70 - (25 + ATMOSPHERE_PSI) / 3.25 + 10 * 0.5;
              double equal = (3.25 * (left + ATMOSPHERE_PSI)) / 4.25 - ATMOSPHERE_PSI;
              assertThat(not.givesPa() / PSI).isCloseTo(equal, within(0.1));
              assertThat(not.askedPa()).isEqualTo(50 * PSI);
            });
  }

  /** An application, a release, and full service so long after it. */
  private static List<PlanFailure> again(double afterS) {
    Assignment assignment = EditionLine.level(0.5, false, EvenLine.SAFE).with(EditionLine.out(20));
    Ceiling ceiling = Ceiling.of(assignment);
    Target stop = Targets.of(assignment, ceiling).get(0);
    InstructionRun run = new InstructionRun(assignment, new TrainModels(assignment), ceiling);
    List<Command> commands =
        List.of(
            new Command.Power(0),
            new Command.Power(1),
            new Command.Power(2),
            new Command.ShutOff(),
            new Command.Brake(25 * PSI, Command.Stage.MAIN),
            new Command.Release(),
            new Command.Brake(50 * PSI, Command.Stage.MAIN));
    double[] waits = {0, 3, 3, 30, 5, 4, afterS};
    List<Instruction> told = new ArrayList<>();
    for (int i = 0; i < waits.length; i++) {
      Trigger trigger = i == 0 ? new Trigger.Start() : new Trigger.After(waits[i]);
      told.add(new Instruction(stop, trigger, commands.get(i)));
    }
    run.run(200, told, Map.of(stop, 1));
    return run.failures();
  }
}
