package gradepost.plan;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.drive.MadeUp;
import gradepost.drive.Mill;
import gradepost.drive.Planner;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Met;
import gradepost.plan.fallback.OverrunAllowance;
import gradepost.route.place.Direction;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What is worth an emergency application, and what is not. */
@Tag("slow")
class LeewayTest {
  private static final Assignment DOWN = DemoPlans.assignments().get(0);
  private static final OverrunAllowance LEEWAY = new OverrunAllowance(DOWN);

  private static FailureAnswer auto(double shortM, double atTargetMps) {
    BrakeSystem auto =
        DOWN.stock().brakes().stream()
            .filter(b -> b.role() == BrakeSystem.Role.FALLBACK)
            .findFirst()
            .orElseThrow();
    return new FailureAnswer(auto, 0, 10, new Met.At(shortM), atTargetMps);
  }

  private static List<Target.OfApproach> targets() {
    return Planner.plan(DOWN).approaches().stream().map(Approach::target).toList();
  }

  @Test
  void withinThePlatformItIsNotPastItsEndItIs() {
    Target.Stop mill = stop("Thrumble Mill");
    double room = mill.platformEndM() - mill.atM();
    assertThat(room).isGreaterThan(20);
    assertThat(LEEWAY.bears(mill, auto(3, 0))).isTrue();
    assertThat(LEEWAY.bears(mill, auto(-7, 3))).isTrue();
    assertThat(LEEWAY.bears(mill, auto(-room - 1, 6))).isFalse();
  }

  /** The policy's six yards before the buffer stops are kept, the rest of the room is not. */
  @Test
  void theMarginBeforeTheBuffersIsKept() {
    Target.Stop end = stop("Brackhythe Harbour");
    double toBuffers = end.buffersM().orElseThrow() - end.atM();
    double room = toBuffers - 6 * 0.9144;
    assertThat(LEEWAY.bears(end, auto(-room + 0.1, 3))).isTrue();
    assertThat(LEEWAY.bears(end, auto(-room - 0.1, 3))).isFalse();
  }

  /** A stop signal between the mark and the platform's end is not run past. */
  @Test
  void aSignalBehindTheMarkEndsTheRoom() {
    Target.Stop mill = stop("Thrumble Mill");
    double signal =
        DOWN.route().signals().stream()
            .filter(s -> s.direction() == DOWN.direction())
            .mapToDouble(s -> DOWN.path().metresAt(s.location()))
            .filter(at -> at > mill.atM())
            .min()
            .orElseThrow();
    Target.Stop longer =
        new Target.Stop(
            mill.name(),
            mill.call(),
            mill.markText(),
            mill.atM(),
            mill.platformStartM(),
            signal + 50,
            Optional.empty());
    assertThat(LEEWAY.roomM(longer)).isEqualTo(signal - mill.atM());
  }

  /** Of signals that nobody supplied nothing is concluded; where some are, none behind is none. */
  @Test
  void withoutAnySignalInTheDataNothingIsBorneAtAPlatform() {
    Assignment without = Mill.assignment(Direction.FORWARD, "4-car");
    Target.Stop mill = stop(Planner.plan(without), "Mill");
    OverrunAllowance bare = new OverrunAllowance(without);
    assertThat(bare.roomM(mill)).isGreaterThan(7);
    assertThat(bare.bears(mill, auto(-7, 3))).isFalse();
    assertThat(bare.bears(mill, auto(7, 0))).isTrue();
    assertThat(bare.withinUnknownRoom(mill, auto(-7, 3))).isTrue();
    OverrunAllowance signalled = new OverrunAllowance(MadeUp.signalled(without, Mill.at(0, 40)));
    assertThat(signalled.bears(mill, auto(-7, 3))).isTrue();
    assertThat(signalled.nextSignalM(mill)).isEmpty();
  }

  /** The road ends at the buffer stops: what could be signalled behind the mark? */
  @Test
  void beforeBufferStopsNoSignalIsMissed() {
    Assignment without = Mill.assignment(Direction.FORWARD, "4-car");
    Target.Stop quay = stop(Planner.plan(without), "Quay");
    assertThat(new OverrunAllowance(without).bears(quay, auto(-2, 3))).isTrue();
  }

  /** A brake that never brings the train down is not enough, however small the excess. */
  @Test
  void aBrakeThatDoesNotHoldIsNotBorne() {
    Target board = targets().stream().filter(t -> t.speedMps() > 0).findFirst().orElseThrow();
    FailureAnswer not =
        new FailureAnswer(
            auto(0, 0).brake(),
            0,
            10,
            new Met.Nowhere(Met.Reason.TRACK_ENDS),
            board.speedMps() + 0.1);
    assertThat(LEEWAY.bears(board, not)).isFalse();
  }

  /** Two miles an hour over at the worst: the figures count them in already. */
  @Test
  void aBoardPassedByTheOverspeedAllowanceIsBorne() {
    Target board = targets().stream().filter(t -> t.speedMps() > 0).findFirst().orElseThrow();
    double mph = 0.44704;
    assertThat(LEEWAY.bears(board, auto(-15, board.speedMps() + 2 * mph))).isTrue();
    assertThat(LEEWAY.bears(board, auto(-15, board.speedMps() + 2.1 * mph))).isFalse();
  }

  private static Target.Stop stop(Plan plan, String name) {
    return (Target.Stop)
        plan.approaches().stream()
            .map(Approach::target)
            .filter(t -> t.name().equals(name))
            .findFirst()
            .orElseThrow();
  }

  private static Target.Stop stop(String name) {
    return (Target.Stop)
        targets().stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow();
  }
}
