package gradepost.drive.fallback;

import static gradepost.drive.EvenLine.SEATED_T;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.Solver;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.plan.Action;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import gradepost.policy.AdhesionCase;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Validation, with a pencil: a braking that is no good on a poor rail is not told; see {@link
 * EvenLine}.
 */
class PlannedPointsTest {
  private static final double G = 9.80665;
  private static final double BOARD_M = 4000;
  private static final Target BOARD = new Target.TerminalStep("board", BOARD_M, 12, 25);
  private static final AdhesionCase LOW = low(0.05);

  private static AdhesionCase low(double mu) {
    return new AdhesionCase("low", new ConstantAdhesion(mu), "");
  }

  /** A run that coasts from a place on, with nothing but its speed. */
  private static RunStates coasting(TrainModels models, double fromM, double mps) {
    Stepper stepper = models.plannedStepper();
    stepper.place(0, fromM, mps);
    RunStates line = new RunStates();
    line.add(stepper.save());
    return line;
  }

  private static ApproachSolution piece(
      Target target, double brakingM, double mps, Braking braking, RunStates line) {
    return new ApproachSolution(
        target,
        line.startM(),
        Optional.empty(),
        Optional.of(brakingM),
        Optional.of(brakingM),
        mps,
        Optional.of(braking),
        line,
        List.of(),
        target.atM(),
        true);
  }

  private static CaseResult on(
      AdhesionCase rail, Assignment assignment, TrainModels models, ApproachSolution piece) {
    return new Ladder(assignment, models)
        .on(rail, List.of(piece), piece.target(), 1, List.of())
        .get(0)
        .own();
  }

  /**
   * Blocks of cast iron hold more the slower they are: what the rail bears in the last stage is
   * less than in the first. Over the distance from 60 mph (96.56 km/h) their friction {@code (V +
   * 100)/(5V + 100)} is a mean {@code V²/2} over its inverse's integral, see {@link
   * gradepost.drive.HandWorkedTest}; a quarter of the brake is each vehicle's.
   *
   * <p>Where the rail bears 0.065, eases that are pressed to stop at the mark are too heavy for it.
   * Where it bears 0.0425, so is a first application that is held on below the speed of an ease; no
   * other one from the mileages stops near enough, and the yard or metre is told. From 5.5 m/s the
   * first ease comes too soon and is left out: one pressure for the rest of it.
   */
  @ParameterizedTest
  @CsvSource({"0.05, 20, 1", "0.065, 15, 1", "0.0425, 12, 7", "0.0425, 5.5, 8"})
  void noStageOfCastIronAsksMoreThanTheRailBearsAndTheStopIsGood(double mu, double mps, int every) {
    AdhesionCase rail = low(mu);
    Assignment iron = EvenLine.castIron(List.of(EvenLine.of(0).policy().plannedAdhesion(), rail));
    TrainModels models = new TrainModels(iron);
    double sixty = 96.56064;
    double integral = 2.5 * sixty * sixty - 400 * sixty + 40_000 * Math.log(1 + sixty / 100);
    double mean = sixty * sixty / 2 / integral;
    double knPerPsi = 0.85 * SEATED_T / 4 / 46 / mean;
    int stages = 0;
    for (int k = 0; k < 40; k += every) {
      Target stand = new Target.Signal("S 1", 4000 + 0.37 * k);
      Braking usual = Braking.of(iron, models, stand);
      ApproachSolution p =
          piece(stand, 4000 - 0.75 * mps * mps, mps, usual, coasting(models, 1000, mps));
      List<Action> actions = on(rail, iron, models, p).actions();
      if (!actions.isEmpty()) {
        double shortM = stand.atM() - actions.get(actions.size() - 1).atM();
        assertThat(shortM).as("%s", actions).isBetween(-1e-3, 5.0);
      }
      for (int i = 0; i + 1 < actions.size(); i++) {
        double kmh = actions.get(i + 1).speedMps() * 3.6;
        double friction = (kmh + 100) / (5 * kmh + 100);
        double bears = EvenLine.pascals(4 + mu * 35 * G / (knPerPsi * friction));
        double asked = ((Command.Brake) actions.get(i).command()).pressurePa();
        assertThat(asked).as("%s of %s", i, actions).isLessThanOrEqualTo(bears + 1);
        stages++;
      }
    }
    assertThat(stages).isGreaterThan(60 / every);
  }

  /**
   * Planned 400 m before the board, on a fall of 10 ‰ up to it: the planned pressure would bring
   * the train down to 42 km/h so early that it comes to the board with more than 12 m/s again.
   */
  @Test
  void aTrainThatGathersSpeedAgainIsBrakedSoLightlyThatItIsSlowEnoughAtTheBoard() {
    Assignment fall = EvenLine.broken(-10, BOARD_M, 0);
    TrainModels models = new TrainModels(fall);
    Braking usual = Braking.of(fall, models, BOARD);
    assertThat(usual.releases()).isTrue();
    CaseResult low =
        on(LOW, fall, models, piece(BOARD, 3600, 15, usual, coasting(models, 3500, 15)));
    List<Action> actions = low.actions();
    Action off = actions.get(actions.size() - 1);
    double pa = ((Command.Brake) actions.get(actions.size() - 2).command()).pressurePa();
    assertThat(off.command()).isEqualTo(new Command.Release());
    assertThat(off.trigger()).isEqualTo(new Trigger.SpeedDownTo(off.speedMps()));
    assertThat(atBoardMps(off.atM(), off.speedMps(), pa / EvenLine.pascals(1)))
        .isLessThanOrEqualTo(12);
    assertThat(atBoardMps(3813, 42 / 3.6, 1.7e5 / EvenLine.pascals(1))).isGreaterThan(12.5);
  }

  /**
   * The brake holds for 0.3 s and goes down by 15 psi a second until only the springs are left, all
   * the while against the fall, which then has the train to itself.
   */
  private static double atBoardMps(double offM, double mps, double psi) {
    double pulls = -EvenLine.gravityMps2(-10, 162, SEATED_T);
    double brake = EvenLine.plannedMps2(psi);
    double emptiesS = (psi - 4) / 15;
    double held = mps - (brake - pulls) * 0.3;
    double free = held - (brake / 2 - pulls) * emptiesS;
    double metres =
        (mps + held) / 2 * 0.3
            + held * emptiesS
            - brake * emptiesS * emptiesS / 3
            + pulls * emptiesS * emptiesS / 2;
    return Math.sqrt(free * free + 2 * pulls * (BOARD_M - offM - metres));
  }

  /** Behind another application too: the run meets the board from the planned place or before. */
  @Test
  void behindAnotherApplicationItIsNoLaterThanPlanned() {
    Assignment level = EvenLine.of(0);
    TrainModels models = new TrainModels(level);
    double aimM = BOARD.aimM(level.policy().margins());
    for (int early = 0; early < 12; early++) {
      RunStates line = coasting(models, 1000, 20);
      RailLine behind = new RailLine(line, models.plannedStepper(), 1000);
      behind.addAll(line);
      double plannedM = aimM - 505 - 8 * early;
      Braking planned = solved(level, models, plannedM);
      assertThat(planned.mainPa()).isLessThan(1.7e5);
      CaseResult low = on(LOW, level, models, piece(BOARD, plannedM, 20, planned, behind));
      double atM = low.plannedM().orElseThrow();
      assertThat(atM).isBetween(plannedM - 10.01, plannedM);
      assertThat(atM + carriedOut(low.actions())).isBetween(aimM - 70, aimM + 1e-3);
    }
  }

  /** From where the application before began, so close to the board, it cannot be met any more. */
  @Test
  void noPlaceLiesBeforeTheApplicationBefore() {
    Assignment level = EvenLine.of(0);
    TrainModels models = new TrainModels(level);
    double plannedM = BOARD.aimM(level.policy().margins()) - 505;
    Braking planned = solved(level, models, plannedM);
    RunStates line = coasting(models, 1000, 20);
    double beganM = BOARD.atM() - 40;
    RailLine behind = new RailLine(line, models.plannedStepper(), beganM);
    behind.addAll(coasting(models, beganM, 20));
    CaseResult low = on(LOW, level, models, piece(BOARD, plannedM, 20, planned, behind));
    assertThat(low.plannedM()).isEmpty();
  }

  private static Braking solved(Assignment a, TrainModels models, double atM) {
    Stepper stepper = models.plannedStepper();
    stepper.place(0, atM, 20);
    return new Solver(a, models.settings().brake())
        .forPlace(
            Braking.of(a, models, BOARD),
            stepper,
            stepper.save(),
            BOARD.aimM(a.policy().margins()),
            false);
  }

  /** How far it is until the brake is off again. */
  private static double carriedOut(List<Action> actions) {
    PencilBraking pencil = new PencilBraking(20);
    double pa = 0;
    for (int i = 0; i + 1 < actions.size(); i++) {
      pa = ((Command.Brake) actions.get(i).command()).pressurePa();
      Trigger next = actions.get(i + 1).trigger();
      if (next instanceof Trigger.After after) {
        pencil.after(pa, after.seconds());
      } else {
        pencil.downTo(pa, ((Trigger.SpeedDownTo) next).speedMps());
      }
    }
    return pencil.after(0, 0.3 + pa / EvenLine.pascals(15)).distanceM();
  }
}
