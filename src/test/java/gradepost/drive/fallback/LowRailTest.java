package gradepost.drive.fallback;

import static gradepost.drive.EvenLine.CRUSH_T;
import static gradepost.drive.EvenLine.SEATED_T;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.Action;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import gradepost.plan.fallback.Latest;
import gradepost.policy.AdhesionCase;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.ShareOf;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: braking points and last places on a rail that bears a twentieth of the
 * weight; see {@link EvenLine}.
 */
class LowRailTest {
  private static final double MPS = 20;
  private static final double STAND_M = 4000;
  private static final double MU = 0.05;
  private static final double G = 9.80665;
  private static final Target STAND = new Target.Signal("S 1", STAND_M);
  private static final AdhesionCase LOW = new AdhesionCase("low", new ConstantAdhesion(MU), "");

  private final AdhesionCase dry = EvenLine.of(0).policy().plannedAdhesion();
  private final Assignment assignment = EvenLine.of(0, List.of(dry, LOW), EvenLine.SAFE);
  private final TrainModels models = new TrainModels(assignment);
  private final Ladder ladder = new Ladder(assignment, models);

  private ApproachSolution piece(double brakingM, double mps) {
    Stepper stepper = models.plannedStepper();
    stepper.place(0, 1000, mps);
    RunStates line = new RunStates();
    line.add(stepper.save());
    return new ApproachSolution(
        STAND,
        1000,
        Optional.empty(),
        Optional.of(brakingM),
        Optional.of(brakingM),
        mps,
        Optional.of(Braking.of(assignment, models, STAND)),
        line,
        List.of(),
        STAND_M,
        true);
  }

  private CaseResult on(AdhesionCase rail, ApproachSolution piece, List<Ladder.Cases> better) {
    return ladder.on(rail, List.of(piece), STAND, 1, better).get(0).own();
  }

  /**
   * Every vehicle with a brake pulls with what its rail bears: 40, 40 and 50 t of it. A cylinder
   * grows to 33.0 kN within 2.3 s, from 0.5 s on, and each pull only up to that.
   */
  private static double safeM(double fromMps) {
    double fullKn = 0.9 * 0.85 * SEATED_T / 4;
    double[] bears = {MU * 40 * G, MU * 40 * G, MU * 50 * G};
    double kn = bears[0] + bears[1] + bears[2];
    double lostS = 0;
    for (double b : bears) {
      lostS += b / kn * (b / fullKn * 2.3) / 2;
    }
    double takesS = fromMps * CRUSH_T / kn + lostS;
    double metres = fromMps * (takesS + 0.5);
    for (double b : bears) {
      double grows = b / fullKn * 2.3;
      double rest = takesS - grows;
      metres -= b / CRUSH_T * (grows * grows / 6 + grows / 2 * rest + rest * rest / 2);
    }
    return metres;
  }

  @Test
  void theLastPlaceForFullServiceCountsWhatTheRailBears() {
    CaseResult low = on(LOW, piece(3000, MPS), List.of());
    double exact = STAND_M - safeM(MPS + 1);
    assertThat(low.service().point().orElseThrow().exactM()).isBetween(exact - 0.02, exact + 1e-3);
  }

  /** On the rail that bears more it was found for a train that comes faster, and is earlier. */
  @Test
  void aLastPlaceIsNeverLaterThanOnABetterRail() {
    List<Ladder.Cases> faster = ladder.on(dry, List.of(piece(2000, 24.9)), STAND, 1, List.of());
    Latest.Point better = faster.get(0).own().service().point().orElseThrow();
    ApproachSolution slow = piece(STAND_M - 200, 12);
    Latest.Point alone = on(LOW, slow, List.of()).service().point().orElseThrow();
    assertThat(better.exactM()).isLessThan(alone.exactM() - 10);
    CaseResult low = on(LOW, slow, faster);
    Latest.Point last = low.service().point().orElseThrow();
    assertThat(last.exactM()).isEqualTo(better.exactM());
    assertThat(last.printedM()).isEqualTo(better.printedM());
    assertThat(last.speedMps()).isEqualTo(better.speedMps());
    double plannedM = low.plannedM().orElseThrow();
    assertThat(last.afterPlannedS()).isCloseTo((better.exactM() - plannedM) / 12, within(1e-6));
    List<Ladder.Cases> slower =
        ladder.on(dry, List.of(piece(STAND_M - 100, 8)), STAND, 1, List.of());
    assertThat(on(LOW, slow, slower).service().point().orElseThrow()).isEqualTo(alone);
  }

  /**
   * A trailer of 35 t bears 1.758 bar (4 psi for the springs, and 0.05 · 35 · 9.81 kN over 0.80 kN
   * a psi), on the gauge 1.7: begun so early that this stops it, and within 5 m.
   */
  @Test
  void theBrakingPointIsEarlyAndLightEnoughForTheRail() {
    double dryM = STAND_M - technique(EvenLine.pascals(28)).distanceM() - 1;
    CaseResult low = on(LOW, piece(dryM, MPS), List.of());
    double atM = low.plannedM().orElseThrow();
    double lightM = technique(1.7e5).distanceM();
    assertThat(low.mainPressurePa()).isLessThanOrEqualTo(1.7e5 + 1e-6);
    assertThat(atM).isBetween(STAND_M - lightM - 10, STAND_M - lightM);
    assertThat((atM + 3218.688) / 10).isCloseTo(Math.rint((atM + 3218.688) / 10), within(1e-6));
    assertThat(STAND_M - atM - carriedOut(low.actions())).isBetween(-1e-3, 5.0);
    assertThat(low.actions().get(0).atM()).isEqualTo(atM);
    assertThat(low.ownRun()).isTrue();
  }

  /** On the dry rail it is the planned point, with the planned technique. */
  @Test
  void onTheRailOfThePlanItIsThePlannedPoint() {
    CaseResult own = on(dry, piece(3450, MPS), List.of());
    assertThat(own.plannedM()).hasValue(3450.0);
    assertThat(own.mainPressurePa()).isCloseTo(EvenLine.pascals(28), within(1e-6));
    assertThat(carriedOut(own.actions()))
        .isCloseTo(technique(EvenLine.pascals(28)).distanceM(), within(1e-3));
  }

  /** No later than planned, though the rail would bear it later. */
  @Test
  void itIsNeverLaterThanPlanned() {
    double early = 3250;
    CaseResult low = on(LOW, piece(early, MPS), List.of());
    assertThat(low.plannedM().orElseThrow()).isBetween(early - 10.01, early);
    assertThat(STAND_M - low.plannedM().orElseThrow() - carriedOut(low.actions()))
        .isBetween(-1e-3, 5.0);
  }

  /** 300 m are too few for 20 m/s on such a rail: no place, and nothing that is done there. */
  @Test
  void whereNoPlaceWillDoThereIsNone() {
    Target near = new Target.Signal("S 0", 1300);
    ApproachSolution p = piece(1100, MPS);
    ApproachSolution close =
        new ApproachSolution(
            near,
            1000,
            Optional.empty(),
            p.exactBrakingM(),
            p.brakingM(),
            MPS,
            p.braking(),
            p.line(),
            List.of(),
            1300,
            true);
    CaseResult low = ladder.on(LOW, List.of(close), near, 1, List.of()).get(0).own();
    assertThat(low.plannedM()).isEmpty();
    assertThat(low.actions()).isEmpty();
    assertThat(low.answers()).isEmpty();
    assertThat(low.protectedM()).isEmpty();
    assertThat(low.service()).isEqualTo(new Latest.Nowhere(Latest.Reason.APPROACH_TOO_SHORT));
  }

  /** Down to 40 km/h for a board of 12 m/s: on the board it is no faster than that. */
  @Test
  void beforeALowerSpeedThePointIsEarlyEnoughForTheBoard() {
    Target board = new Target.TerminalStep("board", STAND_M, 12, 25);
    double aimM = board.aimM(assignment.policy().margins());
    ApproachSolution dryPiece = to(board, aimM - 250);
    CaseResult low = ladder.on(LOW, List.of(dryPiece), board, 1, List.of()).get(0).own();
    double atM = low.plannedM().orElseThrow();
    assertThat(low.mainPressurePa()).isLessThanOrEqualTo(1.7e5 + 1e-6);
    List<Action> actions = low.actions();
    assertThat(actions.get(actions.size() - 1).command().isRelease()).isTrue();
    PencilBraking pencil = new PencilBraking(MPS);
    for (int i = 0; i + 1 < actions.size(); i++) {
      double pa = ((Command.Brake) actions.get(i).command()).pressurePa();
      Trigger next = actions.get(i + 1).trigger();
      if (next instanceof Trigger.After after) {
        pencil.after(pa, after.seconds());
      } else {
        pencil.downTo(pa, ((Trigger.SpeedDownTo) next).speedMps());
      }
    }
    double lastPa = ((Command.Brake) actions.get(actions.size() - 2).command()).pressurePa();
    pencil.after(0, 0.3 + lastPa / EvenLine.pascals(15));
    assertThat(atM + pencil.distanceM()).isBetween(aimM - 60, aimM + 0.01);
    assertThat(pencil.speedMps()).isLessThanOrEqualTo(12);
  }

  private ApproachSolution to(Target target, double brakingM) {
    ApproachSolution p = piece(brakingM, MPS);
    return new ApproachSolution(
        target,
        p.fromM(),
        p.shutOffM(),
        p.exactBrakingM(),
        p.brakingM(),
        MPS,
        Optional.of(Braking.of(assignment, models, target)),
        p.line(),
        p.instructions(),
        target.atM(),
        true);
  }

  /** Behind a board that it was braked for on this rail, the train comes to the stand slower. */
  @Test
  void aSecondApplicationIsWorkedOutOnTheRunThatTheFirstLeaves() {
    Target board = new Target.TerminalStep("board", 3000, 12, 25);
    ApproachSolution first = to(board, 2600);
    ApproachSolution second = piece(STAND_M - 280, 12);
    List<Ladder.Cases> all = ladder.on(LOW, List.of(first, second), STAND, 1, List.of());
    double leaves = new PencilBraking(MPS).downTo(1.7e5, 11.2).speedMps();
    Latest.Point last = all.get(1).own().service().point().orElseThrow();
    assertThat(all.get(1).own().ownRun()).isTrue();
    assertThat(last.speedMps()).isBetween(leaves - 0.8, 12.0);
    double asDry = STAND_M - safeM(12 + 1);
    double asLow = STAND_M - safeM(last.speedMps() + 1);
    assertThat(last.exactM()).isCloseTo(Math.min(asDry, asLow), within(0.02));
    Target close = new Target.TerminalStep("board", 1150, 12, 25);
    List<Ladder.Cases> none = ladder.on(LOW, List.of(to(close, 1050), second), STAND, 1, List.of());
    assertThat(none.get(0).own().plannedM()).isEmpty();
    assertThat(none.get(1).own().ownRun()).isFalse();
    List<Ladder.Cases> planned = ladder.on(dry, List.of(first, second), STAND, 1, List.of());
    assertThat(planned.get(1).own().ownRun()).isTrue();
    assertThat(planned.get(1).own().service().point().orElseThrow().speedMps())
        .isCloseTo(12, within(1e-9));
  }

  /**
   * Some 0.24 of 0.161 + 7.5 / (V + 44), V in km/h (Curtius and Kniffler 1944): at 72 km/h 0.0542,
   * which a trailer of 35 t bears with 1.9 bar at most. Slower it bears more; the fastest counts.
   */
  @Test
  void thePressureIsWhatTheRailBearsWhereTheBrakingBegins() {
    AdhesionCase wet = new AdhesionCase("wet", new ShareOf(dry.law(), 0.24), "");
    double mu = 0.24 * (0.161 + 7.5 / (72 + 44));
    double bears = 4 + mu * 35 * G / (0.85 * SEATED_T / 4 / 46);
    assertThat(EvenLine.pascals(bears)).isBetween(1.8e5, 1.9e5);
    CaseResult low = on(wet, piece(STAND_M - 537, MPS), List.of());
    assertThat(low.mainPressurePa()).isLessThanOrEqualTo(1.8e5 + 1e-6);
    assertThat(low.plannedM()).isPresent();
  }

  /** Power goes off first, at the braking point, and the braking is that of a train without it. */
  @Test
  void aTrainUnderPowerIsShutOffAtTheBrakingPoint() {
    Stepper stepper = models.plannedStepper();
    stepper.place(0, 3300, 15);
    stepper.power(3);
    RunStates line = new RunStates();
    line.add(stepper.save());
    ApproachSolution p = piece(3700, MPS);
    CaseResult low = on(LOW, p.on(line), List.of());
    double atM = low.plannedM().orElseThrow();
    stepper.advance(new StopConditions().place(atM));
    assertThat(low.actions().get(0).command()).isEqualTo(new Command.ShutOff());
    assertThat(low.actions().get(0).atM()).isEqualTo(atM);
    List<Action> braking = low.actions().subList(1, low.actions().size());
    double needs = carriedOut(stepper.speedMps(), braking);
    assertThat(STAND_M - atM - needs).isBetween(-1e-3, 5.0);
  }

  /** To a stand from 20 m/s, with the policy's eases on a gauge in bar. */
  private static PencilBraking technique(double mainPa) {
    return new PencilBraking(MPS)
        .after(1.0e5, 3)
        .downTo(mainPa, 19.0 / 3.6)
        .downTo(1.0e5, 6.0 / 3.6)
        .downTo(0.8e5, 0);
  }

  /** The braking distance of what is printed. */
  private static double carriedOut(List<Action> actions) {
    return carriedOut(MPS, actions);
  }

  private static double carriedOut(double mps, List<Action> actions) {
    PencilBraking pencil = new PencilBraking(mps);
    for (int i = 0; i + 1 < actions.size(); i++) {
      double pa = ((Command.Brake) actions.get(i).command()).pressurePa();
      Trigger next = actions.get(i + 1).trigger();
      if (next instanceof Trigger.After after) {
        pencil.after(pa, after.seconds());
      } else if (next instanceof Trigger.SpeedDownTo down) {
        pencil.downTo(pa, down.speedMps());
      } else {
        pencil.downTo(pa, 0);
      }
    }
    return pencil.distanceM();
  }
}
