package gradepost.reissue;

import static gradepost.reissue.Notice.END;
import static gradepost.reissue.Notice.IMPOSED;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.reissue.RestrictionChange.Kind;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Property: from one form of a restriction to the next there is neither a gap nor an overlap, and
 * the hour is that of the notice where it gives one.
 */
class ChangeoverTest {
  private static final LocalDateTime VALID = LocalDateTime.of(2026, 3, 10, 4, 0);
  private static final LocalDateTime HOUR = LocalDateTime.of(2026, 3, 12, 22, 30);
  private static final TemporaryRestriction THEN = Notice.with(n -> {});
  private static final Changeover NO_WITHDRAWAL = new Changeover(VALID, List.of());

  private static RestrictionChange changed(TemporaryRestriction then, Notice.Edit now) {
    return new RestrictionChange(
        "T 1", Set.of(Kind.TIGHTENED), Optional.of(then), Optional.of(Notice.with(now)));
  }

  private static RestrictionChange added(Notice.Edit now) {
    return new RestrictionChange(
        "T 1", Set.of(Kind.ADDED), Optional.empty(), Optional.of(Notice.with(now)));
  }

  private static RestrictionChange gone() {
    return new RestrictionChange(
        "T 1", Set.of(Kind.WITHDRAWN), Optional.of(THEN), Optional.empty());
  }

  @Test
  void withoutAnHourAChangeIsFromTheHourOfTheIssue() {
    RestrictionChange change = changed(THEN, n -> n.kmh = 30);
    assertThat(NO_WITHDRAWAL.earlierEnds(change)).isEqualTo(VALID);
    assertThat(NO_WITHDRAWAL.inForce(change)).isEqualTo(VALID);
  }

  @Test
  void theHourOfTheNoticeGoesBeforeThatOfTheIssue() {
    RestrictionChange change =
        changed(
            THEN,
            n -> {
              n.kmh = 30;
              n.changedFrom = Optional.of(HOUR);
            });
    assertThat(NO_WITHDRAWAL.earlierEnds(change)).isEqualTo(HOUR);
    assertThat(NO_WITHDRAWAL.inForce(change)).isEqualTo(HOUR);
  }

  @Test
  void theEarlierFormEndsNoLaterThanItsOwnEnd() {
    TemporaryRestriction shorter = Notice.with(n -> n.until = Optional.of(VALID.minusDays(1)));
    RestrictionChange change = changed(shorter, n -> n.until = Optional.empty());
    assertThat(NO_WITHDRAWAL.earlierEnds(change)).isEqualTo(VALID.minusDays(1));
    TemporaryRestriction endless = Notice.with(n -> n.until = Optional.empty());
    assertThat(NO_WITHDRAWAL.earlierEnds(changed(endless, n -> n.kmh = 30))).isEqualTo(VALID);
  }

  /** Imposed anew later than the change: until then neither form stands. */
  @Test
  void theLaterFormIsNotInForceBeforeItIsImposed() {
    RestrictionChange change = changed(THEN, n -> n.imposed = VALID.plusDays(3));
    assertThat(NO_WITHDRAWAL.earlierEnds(change)).isEqualTo(VALID);
    assertThat(NO_WITHDRAWAL.inForce(change)).isEqualTo(VALID.plusDays(3));
  }

  @Test
  void anAddedOneIsInForceFromWhenItIsImposed() {
    RestrictionChange change = added(n -> {});
    assertThat(NO_WITHDRAWAL.inForce(change)).isEqualTo(IMPOSED);
    assertThat(NO_WITHDRAWAL.earlierEnds(change)).isEqualTo(IMPOSED);
  }

  @Test
  void aWithdrawnOneIsGoneFromTheHourOfItsWithdrawal() {
    TemporaryRestriction withdrawal =
        Notice.with(
            n -> {
              n.status = Status.WITHDRAWN;
              n.changedFrom = Optional.of(HOUR);
            });
    Changeover changeover = new Changeover(VALID, List.of(withdrawal));
    assertThat(changeover.isWithdrawn(gone())).isTrue();
    assertThat(changeover.inForce(gone())).isEqualTo(HOUR);
    Changeover noHour =
        new Changeover(VALID, List.of(Notice.with(n -> n.status = Status.WITHDRAWN)));
    assertThat(noHour.inForce(gone())).isEqualTo(VALID);
  }

  @Test
  void anotherNoticesWithdrawalDoesNotCount() {
    TemporaryRestriction other =
        Notice.with(
            n -> {
              n.reference = "T 2";
              n.status = Status.WITHDRAWN;
              n.changedFrom = Optional.of(HOUR);
            });
    Changeover changeover = new Changeover(VALID, List.of(other));
    assertThat(changeover.isWithdrawn(gone())).isFalse();
    assertThat(changeover.inForce(gone())).isEqualTo(VALID);
  }

  @Test
  void whatCameToItsEndIsGoneFromThere() {
    Changeover late = new Changeover(END.plusDays(5), List.of());
    assertThat(late.isWithdrawn(gone())).isFalse();
    assertThat(late.inForce(gone())).isEqualTo(END);
  }
}
