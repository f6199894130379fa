package gradepost.reissue;

import static gradepost.reissue.Notice.board;
import static gradepost.reissue.Notice.differential;
import static gradepost.reissue.RestrictionChange.Kind.ADDED;
import static gradepost.reissue.RestrictionChange.Kind.EASED;
import static gradepost.reissue.RestrictionChange.Kind.MOVED;
import static gradepost.reissue.RestrictionChange.Kind.REBOARDED;
import static gradepost.reissue.RestrictionChange.Kind.RETIMED;
import static gradepost.reissue.RestrictionChange.Kind.REWORDED;
import static gradepost.reissue.RestrictionChange.Kind.TIGHTENED;
import static gradepost.reissue.RestrictionChange.Kind.WITHDRAWN;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.pack.DailyHours;
import gradepost.pack.TemporaryRestriction;
import gradepost.route.BoardKind;
import gradepost.route.place.Applies;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Property: what differs in a notice is told by its kind, and nothing else is. */
class RestrictionChangeTest {
  private static final Notice.Edit NONE = notice -> {};

  private static Set<RestrictionChange.Kind> kinds(Notice.Edit then, Notice.Edit now) {
    return Comparison.kinds(Optional.of(Notice.with(then)), Notice.with(now));
  }

  private static void both(
      Notice.Edit edit, RestrictionChange.Kind there, RestrictionChange.Kind back) {
    assertThat(kinds(NONE, edit)).containsExactly(there);
    assertThat(kinds(edit, NONE)).containsExactly(back);
  }

  @Test
  void aNewNoticeIsAddedAndTheSameOneIsNoChange() {
    assertThat(Comparison.kinds(Optional.empty(), Notice.with(NONE))).containsExactly(ADDED);
    assertThat(kinds(NONE, NONE)).isEmpty();
  }

  @Test
  void aLowerSpeedIsTightenedAndAHigherOneEased() {
    both(n -> n.kmh = 30, TIGHTENED, EASED);
    both(n -> n.kmh = 39.9, TIGHTENED, EASED);
  }

  /** A class of train is named only where its speed is another: lower binds, higher eases. */
  @Test
  void aSpeedForOneClassOfTrainCounts() {
    both(n -> n.differentials = List.of(differential("MU", 20)), TIGHTENED, EASED);
    both(n -> n.differentials = List.of(differential("MU", 60)), EASED, TIGHTENED);
    both(n -> n.differentials = List.of(differential("MU", 40)), REWORDED, REWORDED);
    assertThat(
            kinds(
                NONE,
                n -> n.differentials = List.of(differential("MU", 60), differential("HEAVY", 20))))
        .containsExactly(TIGHTENED, EASED);
    assertThat(
            kinds(
                n -> n.differentials = List.of(differential("MU", 60)),
                n -> {
                  n.kmh = 50;
                  n.differentials = List.of(differential("MU", 55));
                }))
        .containsExactly(TIGHTENED, EASED);
  }

  @Test
  void anotherPlaceLineOrDirectionIsMoved() {
    both(n -> n.fromM = 990, MOVED, MOVED);
    both(n -> n.toM = 1210, MOVED, MOVED);
    both(n -> n.applies = Applies.EVERYWHERE, MOVED, MOVED);
  }

  @Test
  void otherDatesOrHoursAreRetimed() {
    both(n -> n.imposed = Notice.IMPOSED.plusHours(1), RETIMED, RETIMED);
    both(n -> n.until = Optional.of(Notice.END.plusHours(1)), RETIMED, RETIMED);
    both(n -> n.until = Optional.empty(), RETIMED, RETIMED);
    both(
        n -> n.hours = Optional.of(new DailyHours(LocalTime.of(22, 0), LocalTime.of(5, 0))),
        RETIMED,
        RETIMED);
    both(n -> n.changedFrom = Optional.of(Notice.IMPOSED.plusDays(2)), RETIMED, RETIMED);
  }

  /** The hour of a change belongs to the change: alone it is a change of time, beside one not. */
  @Test
  void theHourOfAChangeIsNoChangeBesideAnother() {
    assertThat(
            kinds(
                NONE,
                n -> {
                  n.kmh = 30;
                  n.changedFrom = Optional.of(Notice.IMPOSED.plusDays(2));
                }))
        .containsExactly(TIGHTENED);
  }

  @Test
  void otherBoardsAndOtherWordsAreTold() {
    both(n -> n.boards = List.of(), REBOARDED, REBOARDED);
    both(n -> n.boards = List.of(board(BoardKind.WARNING, 510)), REBOARDED, REBOARDED);
    both(n -> n.reason = "dry bed", REWORDED, REWORDED);
    both(n -> n.status = TemporaryRestriction.Status.EXTENDED, REWORDED, REWORDED);
  }

  /** The order is that of their weight, and other words are not told beside anything else. */
  @Test
  void severalChangesAreToldInTheOrderOfTheirWeight() {
    Notice.Edit all =
        n -> {
          n.kmh = 30;
          n.fromM = 900;
          n.until = Optional.empty();
          n.boards = List.of();
          n.reason = "dry bed";
        };
    assertThat(kinds(NONE, all)).containsExactly(TIGHTENED, MOVED, RETIMED, REBOARDED);
    assertThat(kinds(all, NONE)).containsExactly(EASED, MOVED, RETIMED, REBOARDED);
  }

  /** A driver who knows the old paper would be too fast: so each of three kinds by itself. */
  @Test
  void whatWouldBeDrivenTooFastIsOfHighRisk() {
    EnumSet<RestrictionChange.Kind> high = EnumSet.of(ADDED, TIGHTENED, MOVED);
    for (RestrictionChange.Kind kind : RestrictionChange.Kind.values()) {
      assertThat(change(Set.of(kind)).highRisk()).as(kind.name()).isEqualTo(high.contains(kind));
    }
    assertThat(change(Set.of(WITHDRAWN, RETIMED)).highRisk()).isFalse();
    assertThat(change(Set.of(EASED, MOVED)).highRisk()).isTrue();
  }

  private static RestrictionChange change(Set<RestrictionChange.Kind> kinds) {
    return new RestrictionChange(
        "T 1", kinds, Optional.of(Notice.with(NONE)), Optional.of(Notice.with(n -> n.kmh = 30)));
  }

  @Test
  void theLaterFormIsTakenWhereThereAreTwo() {
    TemporaryRestriction then = Notice.with(NONE);
    TemporaryRestriction now = Notice.with(n -> n.kmh = 30);
    assertThat(new RestrictionChange("T 1", Set.of(EASED), Optional.of(then), Optional.of(now)))
        .extracting(RestrictionChange::any)
        .isEqualTo(now);
    assertThat(new RestrictionChange("T 1", Set.of(WITHDRAWN), Optional.of(then), Optional.empty()))
        .extracting(RestrictionChange::any)
        .isEqualTo(then);
  }
}
