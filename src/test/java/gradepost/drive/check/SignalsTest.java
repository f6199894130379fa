package gradepost.drive.check;

import static gradepost.drive.EvenLine.at;
import static gradepost.drive.EvenLine.pascals;
import static gradepost.drive.EvenLine.safeM;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.SignalBraking;
import gradepost.plan.Trace;
import gradepost.route.Signal;
import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: braking from a caution to its signal at danger; see {@link EvenLine}.
 * The run passes every place at 15 m/s; 22 m/s are permitted.
 */
class SignalsTest {
  private static final double PLANNED_MPS = 15;
  private static final double PERMITTED_MPS = 22;

  /** The policy stands so far short of a signal at danger. */
  private static final double BEFORE_M = 20;

  private static Signal signal(String id, Signal.Kind kind, double atM) {
    return signal(id, kind, atM, Direction.FORWARD, "Single", Optional.empty());
  }

  private static Signal signal(
      String id,
      Signal.Kind kind,
      double atM,
      Direction direction,
      String line,
      Optional<Location> aws) {
    return new Signal(id, kind, at(atM), direction, line, aws, List.of(), "");
  }

  private static List<SignalBraking> brakings(double permille, Signal... signals) {
    return brakings(permille, PLANNED_MPS, 200, 5800, signals);
  }

  private static List<SignalBraking> brakings(
      double permille, double mps, double fromM, double toM, Signal... signals) {
    Assignment a = EvenLine.signalled(EvenLine.of(permille), List.of(signals));
    Trace trace =
        new Trace(
            List.of(
                new Trace.Point(0, fromM, mps, 0, -1),
                new Trace.Point((toM - fromM) / mps, toM, mps, 0, -1)));
    Ceiling ceiling =
        new Ceiling(List.of(new CeilingStep(0, EvenLine.LENGTH_M, PERMITTED_MPS, "line")));
    return new Signals(a, new TrainModels(a), ceiling, trace).all();
  }

  private static SignalBraking only(double permille, Signal... signals) {
    List<SignalBraking> all = brakings(permille, signals);
    assertThat(all).hasSize(1);
    return all.get(0);
  }

  private static Optional<String> caution(SignalBraking braking) {
    return braking.caution().map(Signal::id);
  }

  /** At the permissible speed, and faster by what the policy says: 1 m/s. */
  @Test
  void fullServiceIsCountedFromThePermissibleSpeedAndFasterThanThat() {
    SignalBraking braking =
        only(0, signal("D", Signal.Kind.DISTANT, 2000), signal("S", Signal.Kind.STOP, 2900));
    assertThat(braking.warnedM()).isCloseTo(2000, within(1e-6));
    assertThat(braking.signalM()).isCloseTo(2900, within(1e-6));
    assertThat(braking.standM()).isCloseTo(2900 - BEFORE_M, within(1e-6));
    assertThat(braking.plannedMps()).isCloseTo(PLANNED_MPS, within(1e-9));
    assertThat(braking.ceilingMps()).isEqualTo(PERMITTED_MPS);
    assertThat(braking.needs())
        .extracting(n -> n.brake().shortName())
        .containsExactly("EP", "Auto");
    assertThat(braking.needs().get(0).needM()).isCloseTo(safeM(PERMITTED_MPS + 1, 0), within(0.01));
    // The other brake answers later and fills more slowly, to the same pressure.
    assertThat(braking.needs().get(1).needM())
        .isGreaterThan(safeM(PERMITTED_MPS + 1, 0) + 0.2 * PERMITTED_MPS);
  }

  /** 70 ‰ take 0.65 m/s² of the train, the brake 0.52. */
  @Test
  void aFallThatBeatsTheBrakeLeavesNoDistance() {
    SignalBraking braking =
        only(-70, signal("D", Signal.Kind.DISTANT, 2000), signal("S", Signal.Kind.STOP, 2900));
    assertThat(braking.needs()).allMatch(n -> n.needM() == Double.POSITIVE_INFINITY);
    assertThat(braking.suffices()).isFalse();
    assertThat(braking.brakingM()).isEmpty();
  }

  /** Worked out piece by piece in {@link #techniqueM}; printed to the ten metres before. */
  @Test
  void theTechniqueBeginsWhereItJustComesToTheStand() {
    SignalBraking braking =
        only(0, signal("D", Signal.Kind.DISTANT, 2000), signal("S", Signal.Kind.STOP, 2900));
    double begins = 2900 - BEFORE_M - techniqueM();
    double printed = Math.floor((3218.688 + begins) / 10) * 10 - 3218.688;
    assertThat((3218.688 + begins) % 10).isBetween(1.0, 9.0);
    assertThat(braking.brakingM().orElseThrow()).isCloseTo(printed, within(1e-6));
  }

  /**
   * The policy's technique on a gauge in bar: of 15 psi for 3 s, 28 psi, 14 psi from 12 mph (19
   * km/h) on and 6 psi from 4 mph (6 km/h) on. The last would not take the usual 0.12 m/s² off: 4 +
   * 0.12 · 46 / 0.85 = 10.5 psi do, which is 0.8 bar.
   */
  private static double techniqueM() {
    return new PencilBraking(PLANNED_MPS)
        .after(1.0e5, 3)
        .downTo(pascals(28), 19.0 / 3.6)
        .downTo(1.0e5, 6.0 / 3.6)
        .downTo(0.8e5, 0)
        .distanceM();
  }

  @Test
  void whereTheWarningComesTooLateThereIsNoPlaceToBegin() {
    SignalBraking braking =
        only(
            0,
            signal("D", Signal.Kind.DISTANT, 2000),
            signal("S", Signal.Kind.STOP, 2000 + BEFORE_M + techniqueM() - 1));
    assertThat(braking.brakingM()).isEmpty();
    SignalBraking room =
        only(
            0,
            signal("D", Signal.Kind.DISTANT, 2000),
            signal("S", Signal.Kind.STOP, 2000 + BEFORE_M + techniqueM() + 1));
    assertThat(room.brakingM()).isPresent();
  }

  /** At the magnet, where there is one, and that is before the signal. */
  @Test
  void theDriverIsToldAtTheMagnet() {
    SignalBraking braking =
        only(
            0,
            signal(
                "D", Signal.Kind.DISTANT, 2000, Direction.FORWARD, "Single", Optional.of(at(1817))),
            signal("S", Signal.Kind.STOP, 2900));
    assertThat(braking.warnedM()).isCloseTo(1817, within(1e-6));
    assertThat(braking.availableM()).isCloseTo(2880 - 1817, within(1e-6));
  }

  /** What warns of a stop signal on the way does not warn of the one behind it. */
  @Test
  void theCautionIsTheLastThatCanShowItBeforeAnyOtherStopSignal() {
    List<SignalBraking> all =
        brakings(
            0,
            signal("S 4", Signal.Kind.STOP, 4000),
            signal("R", Signal.Kind.REPEATER, 3500),
            signal("S 3", Signal.Kind.STOP_AND_CAUTION, 3000),
            signal("S 2", Signal.Kind.STOP, 2000),
            signal("D 1", Signal.Kind.DISTANT, 1000),
            signal("S 5", Signal.Kind.STOP, 5000));
    assertThat(all).extracting(b -> b.signal().id()).containsExactly("S 2", "S 3", "S 4", "S 5");
    assertThat(all.stream().map(SignalsTest::caution))
        .containsExactly(
            Optional.of("D 1"), Optional.empty(), Optional.of("S 3"), Optional.empty());
    assertThat(all.get(1).needs()).isEmpty();
    assertThat(all.get(1).brakingM()).isEmpty();
    assertThat(all.get(1).warnedM()).isCloseTo(3000, within(1e-6));
  }

  @Test
  void onlySignalsOfThisLineAndDirectionOnTheRunAreLookedAt() {
    List<SignalBraking> all =
        brakings(
            0,
            PLANNED_MPS,
            1000,
            4000,
            signal("behind", Signal.Kind.STOP, 999),
            signal("on", Signal.Kind.STOP, 2000),
            signal("back", Signal.Kind.STOP, 2500, Direction.BACKWARD, "Single", Optional.empty()),
            signal("loop", Signal.Kind.STOP, 2600, Direction.FORWARD, "Loop", Optional.empty()),
            signal("ahead", Signal.Kind.STOP, 4001));
    assertThat(all).extracting(b -> b.signal().id()).containsExactly("on");
  }

  /** A train that creeps past a caution needs no place to brake from. */
  @Test
  void aTrainThatHardlyMovesHasNoPlaceToBegin() {
    Signal[] two = {
      signal("D", Signal.Kind.DISTANT, 2000), signal("S", Signal.Kind.STOP, 2900),
    };
    assertThat(brakings(0, 0.49, 200, 5800, two).get(0).brakingM()).isEmpty();
    assertThat(brakings(0, 0.6, 200, 5800, two).get(0).brakingM()).isPresent();
  }
}
