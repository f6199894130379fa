package gradepost.drive.fallback;

import static gradepost.drive.EvenLine.SAFE_MPS2;
import static gradepost.drive.EvenLine.safeM;
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
import gradepost.plan.CaseResult;
import gradepost.plan.LatestCurve;
import gradepost.plan.Trace;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Met;
import gradepost.policy.SafeSide;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.task.Assignment;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: what is left when a brake fails, for a train that comes at an even 20
 * m/s; see {@link EvenLine}. The safe side is 1 m/s faster.
 */
class LadderTest {
  private static final double MPS = 20;
  private static final double START_M = 1000;
  private static final double STAND_M = 4000;
  private static final double NOTICING_S = 2;
  private static final double NEAR_M = 0.02;

  private static final Target STAND = new Target.Signal("S 1", STAND_M);
  private static final Target BOARD = board(STAND_M, 12);

  private static Target.Reduction board(double atM, double mps) {
    return new Target.Reduction(
        "curve",
        Target.Reduction.Kind.PERMANENT,
        "curve",
        atM,
        mps,
        25,
        Optional.empty(),
        Optional.empty());
  }

  /** A train that comes at an even speed to a braking point. */
  private record Comes(Assignment assignment, TrainModels models, ApproachSolution piece) {
    static Comes to(Target target, double brakingM) {
      return to(target, brakingM, 0, EvenLine.SAFE);
    }

    static Comes to(Target target, double brakingM, double permille, SafeSide safe) {
      Assignment a = EvenLine.of(permille, EvenLine.of(0).policy().adhesion().subList(0, 1), safe);
      TrainModels models = new TrainModels(a);
      Stepper stepper = models.plannedStepper();
      stepper.place(100, START_M, MPS);
      RunStates line = new RunStates();
      line.add(stepper.save());
      ApproachSolution piece =
          new ApproachSolution(
              target,
              START_M,
              Optional.empty(),
              Optional.of(brakingM),
              Optional.of(brakingM),
              MPS,
              Optional.of(Braking.of(a, models, target)),
              line,
              List.of(),
              STAND_M,
              true);
      return new Comes(a, models, piece);
    }

    CaseResult own() {
      return cases(piece.target()).own();
    }

    Ladder.Cases cases(Target ofApproach) {
      return new Ladder(assignment, models)
          .on(assignment.policy().plannedAdhesion(), List.of(piece), ofApproach, 7, List.of())
          .get(0);
    }

    BrakeSystem brake(int index) {
      return assignment.stock().brakes().get(index);
    }
  }

  private static Latest.Point latest(CaseResult result, BrakeSystem brake) {
    return result.latest(brake).point().orElseThrow();
  }

  /** To the ten metres of the mileage before it. */
  private static double printed(double exactM) {
    double mileage = 3218.688 + exactM;
    assertThat(mileage % 10).isBetween(0.1, 9.9);
    return Math.floor(mileage / 10) * 10 - 3218.688;
  }

  @Test
  void theLastPlaceForFullServiceIsWhereItJustStands() {
    Comes comes = Comes.to(STAND, 3000);
    CaseResult result = comes.own();
    Latest.Point last = latest(result, comes.brake(0));
    double exact = STAND_M - safeM(MPS + 1, 0);
    assertThat(last.exactM()).isBetween(exact - NEAR_M, exact);
    assertThat(last.printedM()).isCloseTo(printed(exact), within(1e-6));
    assertThat(last.speedMps()).isCloseTo(MPS, within(1e-9));
    assertThat(last.afterPlannedS()).isCloseTo((exact - 3000) / MPS, within(0.01));
    assertThat(result.plannedM()).hasValue(3000.0);
    assertThat(result.ladder()).hasSize(3);
  }

  @Test
  void beforeALowerSpeedItIsWhereTheTrainIsJustDownToIt() {
    Comes comes = Comes.to(BOARD, 3000);
    double exact = STAND_M - safeM(MPS + 1, 12);
    assertThat(latest(comes.own(), comes.brake(0)).exactM()).isBetween(exact - NEAR_M, exact);
  }

  /** Noticed after 2 s; until then nothing slows the train. */
  @Test
  void aBrakeThatAnswersInsteadIsAskedForWhenTheFailureIsNoticed() {
    double askedM = 3000 + NOTICING_S * MPS;
    CaseResult result = Comes.to(STAND, 3000).own();
    assertThat(result.answers())
        .extracting(a -> a.brake().shortName())
        .containsExactly("Auto", "Emergency");
    for (FailureAnswer answer : result.answers()) {
      assertThat(answer.askedAtM()).isCloseTo(askedM, within(1e-6));
      assertThat(answer.askedSpeedMps()).isCloseTo(MPS, within(1e-9));
      assertThat(answer.holds()).isTrue();
      assertThat(answer.speedAtTargetMps()).isZero();
    }
    assertThat(result.answers().get(0).met().endsShortM().orElseThrow())
        .isCloseTo(STAND_M - askedM - AUTO.distanceM(MPS + 1, 0), within(1e-3));
  }

  /** 30 m too late: it stands past the signal, and passes it at {@code √(2a · 30)}. */
  @Test
  void theSpeedAtTheTargetIsWhatTheOtherBrakeHasLeft() {
    double askedM = STAND_M + 30 - AUTO.distanceM(MPS + 1, 0);
    CaseResult result = Comes.to(STAND, askedM - NOTICING_S * MPS).own();
    FailureAnswer answer = result.answers().get(0);
    assertThat(answer.holds()).isFalse();
    assertThat(answer.met().endsShortM().orElseThrow()).isCloseTo(-30, within(1e-3));
    assertThat(answer.speedAtTargetMps()).isCloseTo(Math.sqrt(2 * SAFE_MPS2 * 30), within(1e-3));
  }

  /** Asked for behind the target, the speed is that of where it is asked for, and 1 m/s more. */
  @Test
  void askedForBehindTheTargetItPassedItUnbraked() {
    CaseResult result = Comes.to(STAND, STAND_M - 10).own();
    assertThat(result.answers().get(0).speedAtTargetMps()).isCloseTo(MPS + 1, within(1e-6));
  }

  @Test
  void atALowerSpeedThatIsMetTheTrainIsNotSlower() {
    FailureAnswer answer = Comes.to(BOARD, 3000).own().answers().get(0);
    assertThat(answer.holds()).isTrue();
    assertThat(answer.speedAtTargetMps()).isEqualTo(12);
  }

  /** So that the automatic brake, asked for 2 s later, still stands in time. */
  @Test
  void theProtectedPointLeavesTheFallbackBrakeAfterNoticing() {
    double lastM = STAND_M - AUTO.distanceM(MPS + 1, 0);
    double protectedM = lastM - NOTICING_S * MPS;
    CaseResult late = Comes.to(STAND, lastM - 10).own();
    assertThat(latest(late, Comes.to(STAND, 3000).brake(1)).exactM())
        .isBetween(lastM - NEAR_M, lastM);
    assertThat(late.protectedM().orElseThrow()).isCloseTo(printed(protectedM - 0.1), within(1e-6));
    CaseResult soon = Comes.to(STAND, protectedM - 1).own();
    assertThat(soon.protectedM()).hasValue(protectedM - 1);
    assertThat(soon.protectedCostS()).hasValue(0.0);
  }

  /**
   * Two of four brakes off and 0.6 m/s faster: the automatic brake takes 678 m, and 40 m pass
   * before the failure is noticed. The ten metres of the mileage before that are 724.9 m from the
   * stand, which the technique takes with 1.4 bar in place of its 28 psi.
   */
  @Test
  void whatTheProtectedPointCostsIsTheTimeOfABrakingThatIsLonger() {
    double standM = 6490 + 724.9 - 3218.688;
    PencilBraking planned = technique(EvenLine.pascals(28));
    PencilBraking longer = technique(1.4e5);
    double plannedM = standM - planned.distanceM() - 0.5;
    double earlierM = standM - 724.9;
    assertThat(longer.distanceM()).isBetween(724.2, 724.9);
    SafeSide twoOff = new SafeSide(LoadCase.CRUSH, new Speed(0.6), 0.9, 0.5);
    CaseResult result = Comes.to(new Target.Signal("S 2", standM), plannedM, 0, twoOff).own();
    assertThat(result.protectedM().orElseThrow()).isCloseTo(earlierM, within(1e-6));
    double costS = longer.timeS() - ((plannedM - earlierM) / MPS + planned.timeS());
    assertThat(costS).isGreaterThan(3);
    assertThat(result.protectedCostS().orElseThrow()).isCloseTo(costS, within(1e-3));
  }

  /** To a stand from 20 m/s, with the policy's eases on a gauge in bar. */
  private static PencilBraking technique(double mainPa) {
    return new PencilBraking(MPS)
        .after(1.0e5, 3)
        .downTo(mainPa, 19.0 / 3.6)
        .downTo(1.0e5, 6.0 / 3.6)
        .downTo(0.8e5, 0);
  }

  /** The lightest application takes some 1050 m, and the point is 1250 m before the stand. */
  @Test
  void aTechniqueThatEndsTooShortHasNoCost() {
    assertThat(technique(1.0e5).distanceM()).isLessThan(1100);
    SafeSide weak = new SafeSide(LoadCase.CRUSH, new Speed(1), 0.5, 0.5);
    CaseResult result = Comes.to(STAND, STAND_M - 540, 0, weak).own();
    assertThat(result.protectedM().orElseThrow()).isLessThan(STAND_M - 1200);
    assertThat(result.protectedCostS()).isEmpty();
  }

  /** A fall on which no brake holds has no protected point, and no place at all. */
  @Test
  void whereNoBrakeHoldsNoPlaceIsGiven() {
    Comes comes = Comes.to(STAND, 3000, -70, EvenLine.SAFE);
    CaseResult result = comes.own();
    assertThat(result.service())
        .isEqualTo(new Latest.Nowhere(Latest.Reason.GRADIENT_DEFEATS_BRAKE));
    assertThat(result.protectedM()).isEmpty();
    assertThat(result.protectedCostS()).hasValue(0.0);
    assertThat(result.answers())
        .allMatch(a -> a.met().equals(new Met.Nowhere(Met.Reason.GRADIENT_DEFEATS_BRAKE)));
  }

  /** The approach begins 300 m before the signal, and full service takes more than 400 m. */
  @Test
  void anApproachThatIsTooShortIsSaidToBeThat() {
    assertThat(safeM(MPS + 1, 0)).isGreaterThan(400);
    Comes comes = Comes.to(new Target.Signal("S 0", START_M + 300), START_M + 10);
    CaseResult result = comes.own();
    assertThat(result.service()).isEqualTo(new Latest.Nowhere(Latest.Reason.APPROACH_TOO_SHORT));
    assertThat(result.protectedM()).isEmpty();
  }

  /** The approach begins where the brake still holds, but not after the time of noticing. */
  @Test
  void noProtectedPointLiesBeforeTheApproach() {
    double needs = AUTO.distanceM(MPS + 1, 0);
    Target close = new Target.Signal("S 0", START_M + needs + NOTICING_S * MPS - 5);
    assertThat(Comes.to(close, START_M + 60).own().protectedM()).isEmpty();
    Target further = new Target.Signal("S 0", START_M + needs + NOTICING_S * MPS + 5);
    assertThat(Comes.to(further, START_M + 60).own().protectedM().orElseThrow())
        .isBetween(START_M, START_M + 5.1);
  }

  /**
   * Under power up to the braking point: what is asked for instead comes from the speed there, with
   * power off. In its highest notch, 100 kN up to 27 mph and less above, the train gathers speed.
   */
  @Test
  void powerIsOffFromTheBrakingPointOn() {
    Comes comes = Comes.to(STAND, 1700);
    Stepper stepper = comes.models.plannedStepper();
    stepper.place(0, START_M, 15);
    stepper.power(3);
    RunStates line = new RunStates();
    line.add(stepper.save());
    stepper.advance(new StopConditions().place(1700));
    double mps = stepper.speedMps();
    double leftS = stepper.timeS();
    assertThat(mps).isGreaterThan(16);
    Comes powered = new Comes(comes.assignment, comes.models, comes.piece.on(line));
    FailureAnswer answer = powered.own().answers().get(0);
    assertThat(answer.askedSpeedMps()).isCloseTo(mps, within(1e-9));
    assertThat(answer.askedAtM()).isCloseTo(1700 + NOTICING_S * mps, within(1e-6));
    Ladder ladder = new Ladder(comes.assignment, comes.models);
    assertThat(ladder.atBuffersMps(powered.piece, 4050).orElseThrow())
        .isCloseTo(mps + 1, within(1e-9));
    // At the last place the planned run is faster still, and the safe side 1 m/s more.
    Latest.Point last = latest(powered.own(), comes.brake(0));
    stepper.advance(new StopConditions().place(last.exactM()));
    assertThat(last.speedMps()).isCloseTo(stepper.speedMps(), within(1e-6));
    assertThat(last.afterPlannedS()).isCloseTo(stepper.timeS() - leftS, within(1e-6));
    assertThat(STAND_M - last.exactM()).isCloseTo(safeM(stepper.speedMps() + 1, 0), within(NEAR_M));
  }

  /** From before the protected point the technique is let go, and the train rolls to its aim. */
  @Test
  void whatTheProtectedPointCostsBeforeALowerSpeedIsTheTimeLostByBrakingSooner() {
    double needs = AUTO.distanceM(MPS + 1, 12);
    double boardM = STAND_M;
    double plannedM = boardM - needs - NOTICING_S * MPS + 100;
    CaseResult result = Comes.to(BOARD, plannedM).own();
    double protectedM = result.protectedM().orElseThrow();
    assertThat(plannedM - protectedM).isBetween(100.0, 111.0);
    // Each metre of it is run at the speed at which the brake is off, not at 20 m/s; the lighter
    // braking that is solved for it is longer, and is the rest of what it costs.
    double slowMps =
        new PencilBraking(MPS)
            .after(1.0e5, 3)
            .downTo(EvenLine.pascals(28), 48 / 3.6)
            .downTo(0.8e5, 42 / 3.6)
            .after(0, 0.3 + 0.8e5 / EvenLine.pascals(15))
            .speedMps();
    double most = (plannedM - protectedM) * (1 / slowMps - 1 / MPS);
    assertThat(result.protectedCostS().orElseThrow()).isBetween(0.2 * most, 1.1 * most);
  }

  /** To the stop behind the lower speed: from the same point, to another place. */
  @Test
  void aBrakeThatFailsBeforeALowerSpeedIsFollowedToTheStopBehindIt() {
    Comes comes = Comes.to(board(STAND_M - 300, 12), 3000);
    Target.Stop usual = Stops.target(comes.assignment, comes.assignment.calls().get(1));
    Target.Stop behind =
        new Target.Stop(
            usual.name(),
            usual.call(),
            usual.markText(),
            STAND_M,
            usual.platformStartM(),
            usual.platformEndM(),
            Optional.empty());
    CaseResult result = comes.cases(behind).toStand().orElseThrow();
    double exact = STAND_M - safeM(MPS + 1, 0);
    assertThat(latest(result, comes.brake(0)).exactM()).isBetween(exact - NEAR_M, exact);
    assertThat(result.answers()).hasSize(2);
    assertThat(result.answers().get(0).met().endsShortM().orElseThrow())
        .isCloseTo(STAND_M - 3040 - AUTO.distanceM(MPS + 1, 0), within(1e-3));
    assertThat(comes.cases(comes.piece.target()).toStand()).isEmpty();
  }

  /** Nothing slows the train, and it may come 1 m/s faster than planned. */
  @Test
  void theSpeedAtTheBuffersCountsTheTrainFasterThanPlanned() {
    Comes comes = Comes.to(STAND, 3000);
    Ladder ladder = new Ladder(comes.assignment, comes.models);
    assertThat(ladder.atBuffersMps(comes.piece, 4050).orElseThrow())
        .isCloseTo(MPS + 1, within(1e-9));
    SafeSide asPlanned = new SafeSide(LoadCase.CRUSH, new Speed(0), 0.9, 0.25);
    Comes even = Comes.to(STAND, 3000, 0, asPlanned);
    assertThat(
            new Ladder(even.assignment, even.models).atBuffersMps(even.piece, 4050).orElseThrow())
        .isCloseTo(MPS, within(1e-9));
  }

  /** 10 ‰ take 162 / 172.8 · 0.0981 m/s² of the seated train: 20 m/s are gone after 2175 m. */
  @Test
  void aTrainThatStandsBeforeTheBuffersHasNoSpeedThere() {
    double climbs = EvenLine.gravityMps2(10, 162, EvenLine.SEATED_T);
    double standsM = START_M + MPS * MPS / (2 * climbs);
    Comes comes = Comes.to(STAND, 3000, 10, EvenLine.SAFE);
    Ladder ladder = new Ladder(comes.assignment, comes.models);
    assertThat(ladder.atBuffersMps(comes.piece, standsM + 0.01)).isEmpty();
    assertThat(ladder.atBuffersMps(comes.piece, standsM - 1).orElseThrow())
        .isCloseTo(Math.sqrt(2 * climbs) + 1, within(1e-3));
  }

  /** From the last place, 1 m/s faster than planned, down to a stand at the signal. */
  @Test
  void theCurveToDrawIsTheRunOfTheSafeSide() {
    Comes comes = Comes.to(STAND, 3000);
    CaseResult result = comes.own();
    List<LatestCurve> curves =
        new Ladder(comes.assignment, comes.models).curves(comes.piece, result);
    assertThat(curves).hasSize(3);
    List<Trace.Point> points = curves.get(0).trace().points();
    assertThat(points.get(0).atM()).isEqualTo(latest(result, comes.brake(0)).exactM());
    assertThat(points.get(0).speedMps()).isCloseTo(MPS + 1, within(1e-9));
    assertThat(points.get(points.size() - 1).atM()).isCloseTo(STAND_M, within(NEAR_M));
    assertThat(points.get(points.size() - 1).speedMps()).isZero();
  }

  /** With the foremost motor car isolated the valves are 30, 50 and 70 m behind the front. */
  private static final EvenLine.Along AUTO =
      new EvenLine.Along(List.of(30.0, 50.0, 70.0), 46, 11, SAFE_MPS2);
}
