package gradepost.task;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Mill;
import gradepost.pack.TemporaryRestriction;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.route.station.Platform;
import gradepost.route.station.StopMark;
import gradepost.units.Exact;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: what a run is braked for, by hand from the data of the invented line. */
class TargetsTest {
  private static final Assignment DOWN = Mill.assignment(Direction.FORWARD, "4-car");

  private static double chains(double miles, double chains) {
    return (80 * miles + chains) * Exact.CHAIN_M;
  }

  private static List<Target> targets(Assignment assignment) {
    return Targets.of(assignment, Ceiling.of(assignment));
  }

  /**
   * The stop marks are a chain before the end of each platform; the steps of a terminal platform 80
   * and 40 m before the mark. Speeds that fall before the start or behind the end are none.
   */
  @Test
  void stopsAndFallsOfSpeedComeInTheOrderOfTravel() {
    List<Target> targets = targets(DOWN);
    assertThat(targets)
        .extracting(Target::name)
        .containsExactly(
            "Mill curve", "Mill", "Ford", "Harbour yard", "TERMINAL", "TERMINAL", "Quay");
    double quay = chains(4, 77);
    double[] at = {
      chains(1, 65), chains(2, 29), chains(3, 64), chains(4, 40), quay - 80, quay - 40, quay
    };
    double[] mph = {25, 0, 0, 30, 15, 10, 0};
    for (int i = 0; i < at.length; i++) {
      assertThat(targets.get(i).atM()).as("place %s", i).isCloseTo(at[i], within(1e-6));
      assertThat(targets.get(i).speedMps())
          .as("speed %s", i)
          .isCloseTo(Speed.ofMph(mph[i]).metresPerSecond(), within(1e-9));
    }
  }

  /** A lower speed is one of the line; its board is read by trains of this direction only. */
  @Test
  void aLowerSpeedKnowsWhatItFallsFromAndItsFirstWarning() {
    Target.Reduction curve = reduction(targets(DOWN), "Mill curve");
    assertThat(curve.kind()).isEqualTo(Target.Reduction.Kind.PERMANENT);
    assertThat(curve.fromMps()).isCloseTo(Speed.ofMph(60).metresPerSecond(), within(1e-9));
    assertThat(curve.warning()).contains(Mill.at(1, 65));
    assertThat(curve.warningM().orElseThrow()).isCloseTo(chains(1, 65), within(1e-6));
    Assignment up = Mill.assignment(Direction.BACKWARD, "4-car");
    assertThat(reduction(targets(up), "Mill curve").warning()).isEmpty();
  }

  private static Target.Reduction reduction(List<Target> targets, String name) {
    return targets.stream()
        .filter(t -> t.isLowerSpeed() && t.name().equals(name))
        .map(t -> (Target.Reduction) t)
        .findFirst()
        .orElseThrow();
  }

  private static Board board(BoardKind kind, double chains, Direction direction) {
    return new Board(kind, Mill.at(3, chains), direction);
  }

  private static TemporaryRestriction notice(List<Board> boards) {
    return new TemporaryRestriction(
        "T 9",
        TemporaryRestriction.Kind.TEMPORARY,
        TemporaryRestriction.Status.IN_FORCE,
        new Extent(Mill.at(3, 20), Mill.at(3, 25)),
        Applies.EVERYWHERE,
        Speed.ofMph(20),
        List.of(),
        Optional.empty(),
        "",
        LocalDateTime.of(2026, 3, 2, 4, 0),
        Optional.empty(),
        Optional.empty(),
        boards,
        "");
  }

  @Test
  void ofSeveralBoardsTheFirstWarningBeforeItCounts() {
    List<Board> boards =
        List.of(
            board(BoardKind.WARNING, 10, Direction.FORWARD),
            board(BoardKind.WARNING, 5, Direction.FORWARD),
            board(BoardKind.WARNING, 1, Direction.BACKWARD),
            board(BoardKind.REPEATING, 2, Direction.FORWARD),
            board(BoardKind.WARNING, 30, Direction.FORWARD));
    Assignment with = DOWN.withRestrictions(List.of(notice(boards)));
    Target.Reduction lower = reduction(targets(with), "T 9");
    assertThat(lower.kind()).isEqualTo(Target.Reduction.Kind.TEMPORARY);
    assertThat(lower.reference()).isEqualTo("T 9");
    assertThat(lower.warningM().orElseThrow()).isCloseTo(chains(3, 5), within(1e-6));
    Assignment behind = DOWN.withRestrictions(List.of(notice(boards.subList(4, 5))));
    assertThat(reduction(targets(behind), "T 9").warningM()).isEmpty();
    assertThat(Targets.boards(with, "T 9")).isEqualTo(boards);
    assertThat(Targets.boards(with, "T 8")).isEmpty();
  }

  private static Platform platform(Location buffers, List<StopMark> marks) {
    return new Platform(
        "1",
        new Extent(Mill.at(4, 68), Mill.at(4, 78)),
        Applies.EVERYWHERE,
        Hand.LEFT,
        Optional.of(buffers),
        marks,
        "");
  }

  private static Target.Stop stop(Platform platform) {
    Call last = DOWN.calls().get(DOWN.calls().size() - 1);
    return Stops.target(DOWN, new Call(last.station(), platform, new Span(30)));
  }

  @Test
  void aTrainStopsAtTheMarkOfItsLengthAndDirectionElseAtTheEndOfThePlatform() {
    List<StopMark> marks =
        List.of(
            new StopMark(8, Mill.at(4, 77), Direction.FORWARD),
            new StopMark(4, Mill.at(4, 70), Direction.BACKWARD),
            new StopMark(4, Mill.at(4, 75), Direction.FORWARD));
    Platform with = platform(Mill.at(4, 78.5), marks);
    assertThat(Stops.marks(DOWN, with)).containsExactly(marks.get(2), marks.get(0));
    Target.Stop stop = stop(with);
    assertThat(stop.atM()).isCloseTo(chains(4, 75), within(1e-6));
    assertThat(stop.markText()).isEqualTo("4-car mark");
    assertThat(stop.platformStartM()).isCloseTo(chains(4, 68), within(1e-6));
    assertThat(stop.platformEndM()).isCloseTo(chains(4, 78), within(1e-6));
    assertThat(stop.buffersM().orElseThrow()).isCloseTo(chains(4, 78.5), within(1e-6));
    assertThat(stop.terminal()).isTrue();
    Target.Stop without = stop(platform(Mill.at(4, 78.5), marks.subList(0, 2)));
    assertThat(without.atM()).isCloseTo(chains(4, 78), within(1e-6));
    assertThat(without.markText()).isEqualTo("platform end");
  }

  /** Buffer stops behind the train are those of the other end of the road. */
  @Test
  void bufferStopsBehindTheTrainAreNone() {
    Target.Stop stop = stop(platform(Mill.at(4, 67), List.of()));
    assertThat(stop.buffersM()).isEmpty();
    assertThat(stop.terminal()).isFalse();
  }

  @Test
  void eachKindOfTargetSaysWhatItIs() {
    Target.Stop stop = stop(platform(Mill.at(4, 79), List.of()));
    Target lower = reduction(targets(DOWN), "Mill curve");
    Target step = new Target.TerminalStep("TERMINAL", 900, 4, 7);
    Target signal = new Target.Signal("M 1", 800);
    assertThat(List.of(stop, lower, step, signal))
        .extracting(Target::standsThere)
        .containsExactly(true, false, false, true);
    assertThat(List.of(stop, lower, step, signal))
        .extracting(Target::isStop)
        .containsExactly(true, false, false, false);
    assertThat(List.of(stop, lower, step, signal))
        .extracting(Target::isLowerSpeed)
        .containsExactly(false, true, false, false);
    assertThat(List.of(stop, lower, step, signal))
        .extracting(t -> t.ofApproach().isPresent())
        .containsExactly(true, true, false, false);
    assertThat(signal.speedMps()).isZero();
    assertThat(stop.stop()).contains(stop);
  }

  /** A speed of nothing is a stand, and that is another kind of target. */
  @Test
  void aLowerSpeedOfNothingIsRefused() {
    assertThatThrownBy(() -> new Target.TerminalStep("TERMINAL", 900, 0, 7))
        .hasMessageContaining("above 0");
    assertThatThrownBy(
            () ->
                new Target.Reduction(
                    "curve",
                    Target.Reduction.Kind.PERMANENT,
                    "curve",
                    900,
                    0,
                    7,
                    Optional.empty(),
                    Optional.empty()))
        .hasMessageContaining("above 0");
  }
}
