package gradepost.drive.fallback;

import static gradepost.drive.EvenLine.SAFE_MPS2;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.plan.Action;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.SpeedRow;
import gradepost.plan.Trigger;
import gradepost.policy.AdhesionCase;
import gradepost.policy.SafeSide;
import gradepost.stock.LoadCase;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.task.Target;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Validation, with a pencil: braking points by speed on the level; see {@link EvenLine}. */
class SpeedRowsTest {
  private static final double STAND_M = 4000;
  private static final double PLANNED_MPS = 20;
  private static final Target STAND = new Target.Signal("S 1", STAND_M);
  private static final Target BOARD = new Target.TerminalStep("board", STAND_M, 15, 25);
  private static final AdhesionCase LOW = new AdhesionCase("low", new ConstantAdhesion(0.05), "");

  private static final Ceiling NINETY = ceiling(new CeilingStep(0, EvenLine.LENGTH_M, 25, "line"));

  private final AdhesionCase dry = EvenLine.of(0).policy().plannedAdhesion();
  private final Assignment level = EvenLine.of(0, List.of(dry, LOW), EvenLine.SAFE);

  private static Ceiling ceiling(CeilingStep... steps) {
    return new Ceiling(List.of(steps));
  }

  private List<SpeedRow> rows(Target target, double plannedM, Ceiling ceiling) {
    return rows(level, target, plannedM, ceiling);
  }

  private List<SpeedRow> rows(Assignment on, Target target, double plannedM, Ceiling ceiling) {
    TrainModels models = new TrainModels(on);
    Stepper stepper = models.plannedStepper();
    stepper.place(0, 1000, PLANNED_MPS);
    RunStates line = new RunStates();
    line.add(stepper.save());
    ApproachSolution piece =
        new ApproachSolution(
            target,
            1000,
            Optional.empty(),
            Optional.of(plannedM),
            Optional.of(plannedM),
            PLANNED_MPS,
            Optional.of(Braking.of(on, models, target)),
            line,
            List.of(),
            target.atM(),
            true);
    Ladder ladder = new Ladder(on, models);
    List<Ladder.Cases> onDry = ladder.on(dry, List.of(piece), target, 1, List.of());
    List<Ladder.Cases> onLow = ladder.on(LOW, List.of(piece), target, 1, onDry);
    List<CaseResult> cases = List.of(onDry.get(0).own(), onLow.get(0).own());
    return new SpeedRows(on, models, ceiling).of(List.of(piece), 0, cases, 1);
  }

  private List<SpeedRow> toStand() {
    return rows(STAND, plannedM(), NINETY);
  }

  /** Where the policy's own technique begins to stop the train of the plan just so, on the grid. */
  private static double plannedM() {
    return onGrid(STAND_M - technique(PLANNED_MPS, EvenLine.pascals(28)).distanceM());
  }

  /** By the mileage, whose first figure is 3218.688 m, to 10 m at or before. */
  private static double onGrid(double atM) {
    return Math.floor((atM + 3218.688) / 10) * 10 - 3218.688;
  }

  private static long kmh(SpeedRow row) {
    return Math.round(row.speedMps() * 3.6);
  }

  private static SpeedRow at(List<SpeedRow> rows, long kmh) {
    return rows.stream().filter(r -> kmh(r) == kmh).findFirst().orElseThrow();
  }

  /** Ninety are permissible: down to 45, in tens, and the 72 of the plan. */
  @Test
  void fromThePermissibleSpeedDownToHalfOfIt() {
    assertThat(toStand().stream().map(SpeedRowsTest::kmh))
        .containsExactly(90L, 80L, 72L, 70L, 60L, 50L);
  }

  /** 75 as it stands, tens below, and the 72 of the plan; half of it is 37.5. */
  @Test
  void aPermissibleSpeedBetweenTheTensIsTheFirstRow() {
    Ceiling ceiling = ceiling(new CeilingStep(0, EvenLine.LENGTH_M, 75 / 3.6, "line"));
    assertThat(rows(STAND, plannedM(), ceiling).stream().map(SpeedRowsTest::kmh))
        .containsExactly(75L, 72L, 70L, 60L, 50L, 40L);
  }

  /**
   * The place is where the policy's technique, with 28 psi, stops just short, to ten metres; what
   * is told there, done with the pencil, stops within five metres of the signal and never past it.
   */
  @Test
  void aRowIsWhereTheTechniqueStopsTheTrainOfThatSpeed() {
    int looked = 0;
    for (SpeedRow row : toStand()) {
      SpeedRow.Point point = row.planned().orElseThrow();
      double needs = technique(row.speedMps(), EvenLine.pascals(28)).distanceM();
      assertThat(point.atM()).as("%s", row).isCloseTo(onGrid(STAND_M - needs), within(0.011));
      if (!point.asPlanned()) {
        assertThat(STAND_M - point.atM() - carriedOut(row.speedMps(), point.actions()))
            .as("%s", row)
            .isBetween(-1e-3, 5.0);
        assertThat(point.brakeOnPa()).isZero();
        looked++;
      }
    }
    assertThat(looked).isEqualTo(5);
  }

  /** The plan's own point is a row as it stands: place, speed and what is done there. */
  @Test
  void theRowAtThePlannedSpeedIsThePlannedPoint() {
    SpeedRow.Point point = at(toStand(), 72).planned().orElseThrow();
    assertThat(point.asPlanned()).isTrue();
    assertThat(point.atM()).isEqualTo(plannedM());
    assertThat(point.speedMps()).isEqualTo(PLANNED_MPS);
    assertThat(point.mostPa()).isCloseTo(EvenLine.pascals(28), within(1e-6));
    assertThat(toStand().stream().filter(SpeedRow::holdsPlanned)).hasSize(1);
  }

  /** On a rail that bears a twentieth: 1.7 bar at most, see {@link LowRailTest}. */
  @Test
  void onThePoorestRailItIsEarlierAndAsLightAsThatBears() {
    for (SpeedRow row : toStand()) {
      SpeedRow.Point low = row.poorest().orElseThrow();
      assertThat(low.rail()).isEqualTo("low");
      assertThat(low.atM()).isLessThan(row.planned().orElseThrow().atM());
      assertThat(low.mostPa()).isLessThanOrEqualTo(1.7e5 + 1e-6);
      double needs = technique(row.speedMps(), 1.7e5).distanceM();
      assertThat(low.atM()).isBetween(STAND_M - needs - 10, STAND_M - needs);
      assertThat(STAND_M - low.atM() - carriedOut(row.speedMps(), low.actions()))
          .as("%s", row)
          .isBetween(-1e-3, 5.0);
    }
  }

  /**
   * Two seconds after the place at which the service brake gives nothing, the automatic brake in
   * full, 1 m/s faster than the row says, with the load, the force and the brakes of the safe side:
   * with the foremost motor car isolated the valves are 30, 50 and 70 m behind the front.
   */
  @Test
  void itIsToldWhereTheAutomaticBrakeIsTooLate() {
    assertThat(late(toStand(), 1)).isZero();
    SafeSide less = new SafeSide(LoadCase.CRUSH, new Speed(1), 0.9 * 0.97, 0.25);
    Assignment weak = EvenLine.of(0, List.of(dry, LOW), less);
    assertThat(late(rows(weak, STAND, plannedM(), NINETY), 0.97)).isBetween(1L, 5L);
  }

  /**
   * @param share of the force that is counted on in {@link EvenLine#SAFE}
   */
  private static long late(List<SpeedRow> rows, double share) {
    EvenLine.Along auto = new EvenLine.Along(List.of(30.0, 50.0, 70.0), 46, 11, share * SAFE_MPS2);
    for (SpeedRow row : rows) {
      SpeedRow.Point point = row.planned().orElseThrow();
      double mps = row.speedMps();
      double metM = point.atM() + 2 * mps + auto.distanceM(mps + 1, 0);
      assertThat(Math.abs(metM - STAND_M)).isGreaterThan(0.1);
      assertThat(point.leavesFallback()).as("%s", row).isEqualTo(metM < STAND_M);
    }
    return rows.stream().filter(r -> !r.planned().orElseThrow().leavesFallback()).count();
  }

  /** To 54 km/h: nothing at 54 or below, though half of 90 is less. */
  @Test
  void noRowIsAtOrUnderTheSpeedOfTheBoard() {
    assertThat(rows(BOARD, onGrid(3550), NINETY).stream().map(SpeedRowsTest::kmh))
        .containsExactly(90L, 80L, 72L, 70L, 60L);
  }

  /** The plan brakes so early that its point holds for faster trains too, with less pressure. */
  @Test
  void noFasterTrainBrakesLaterThanThePlan() {
    double early = onGrid(3000);
    List<SpeedRow> rows = rows(STAND, early, NINETY);
    for (long kmh : List.of(90L, 80L)) {
      SpeedRow.Point point = at(rows, kmh).planned().orElseThrow();
      assertThat(point.atM()).isLessThanOrEqualTo(early).isGreaterThan(early - 61);
      assertThat(point.mostPa()).isLessThan(EvenLine.pascals(28) - 1);
      assertThat(STAND_M - point.atM() - carriedOut(kmh / 3.6, point.actions()))
          .isBetween(-1e-3, 5.0);
    }
    assertThat(at(rows, 70).planned().orElseThrow().atM()).isGreaterThan(early + 100);
  }

  /** Up to the planned point no more than 75 km/h: the points of 80 and 90 lie before it. */
  @Test
  void noRowIsAboveThePermissibleSpeedAtItsOwnPlace() {
    double risesM = plannedM() - 5;
    Ceiling ceiling =
        ceiling(
            new CeilingStep(0, risesM, 75 / 3.6, "slack"),
            new CeilingStep(risesM, EvenLine.LENGTH_M, 25, "line"));
    List<SpeedRow> rows = rows(STAND, plannedM(), ceiling);
    assertThat(rows.stream().map(SpeedRowsTest::kmh)).containsExactly(72L, 70L, 60L, 50L);
  }

  /**
   * A board for 60 km/h between the planned point and the signal, so near the signal that 80 and 90
   * are braked down by then, or so near the point that they are not.
   */
  @Test
  void noRowPassesALowerSpeedTooFastOnItsWay() {
    assertThat(atBoard(STAND_M - 60)).containsExactly(90L, 80L, 72L, 70L, 60L, 50L);
    assertThat(atBoard(plannedM() + 60)).containsExactly(72L, 60L, 50L);
  }

  private List<Long> atBoard(double boardM) {
    Ceiling ceiling =
        ceiling(
            new CeilingStep(0, boardM, 25, "line"),
            new CeilingStep(boardM, EvenLine.LENGTH_M, 60 / 3.6, "board"));
    return rows(STAND, plannedM(), ceiling).stream().map(SpeedRowsTest::kmh).toList();
  }

  /** To a stand, with the policy's eases on a gauge in bar. */
  private static PencilBraking technique(double mps, double mainPa) {
    return new PencilBraking(mps)
        .after(1.0e5, 3)
        .downTo(mainPa, 19.0 / 3.6)
        .downTo(1.0e5, 6.0 / 3.6)
        .downTo(0.8e5, 0);
  }

  /** The braking distance of what is told. */
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
