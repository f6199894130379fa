package gradepost.drive.grid;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.grid.ControlProfile.Notch;
import gradepost.drive.grid.ControlProfile.PowerPhase;
import gradepost.drive.grid.ControlProfile.SpeedPoint;
import gradepost.task.Target;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Validation, by hand: what a profile says at a place, and what one near it may look like. */
class ControlProfileTest {
  private static final PlannerSettings SETTINGS = PlannerSettings.usual();
  private static final double NEVER = Double.POSITIVE_INFINITY;

  /** To 15 m/s by 500 m, notch 3 from 200 m on. */
  private static final PowerPhase TO_A_SPEED =
      new PowerPhase(0, List.of(new Notch(0, 1), new Notch(200, 3)), 500, 15);

  private static final PowerPhase TO_A_PLACE =
      new PowerPhase(2000, List.of(new Notch(2000, 2)), 2300, NEVER);

  private static final SpeedPoint RELEASE = new SpeedPoint(4000, 8);

  private static final List<SpeedPoint> TRACE =
      List.of(
          new SpeedPoint(0, 0),
          new SpeedPoint(500, 15),
          new SpeedPoint(2000, 10),
          new SpeedPoint(2300, 12),
          new SpeedPoint(4000, 8));

  private static final ControlProfile PROFILE =
      new ControlProfile(List.of(TO_A_SPEED, TO_A_PLACE), List.of(RELEASE), TRACE);

  @Test
  void thePowerBegunLast() {
    assertThat(PROFILE.powerAt(-1.1)).isEqualTo(-1);
    assertThat(PROFILE.powerAt(-1)).isZero();
    assertThat(PROFILE.powerAt(1998.9)).isZero();
    assertThat(PROFILE.powerAt(1999)).isEqualTo(1);
    assertThat(TO_A_SPEED.notchAt(0)).isEqualTo(1);
    assertThat(TO_A_SPEED.notchAt(198.9)).isEqualTo(1);
    assertThat(TO_A_SPEED.notchAt(199)).isEqualTo(3);
  }

  /** Power to a speed comes off by that. */
  @Test
  void theNextPlaceAtWhichSomethingIsDone() {
    assertThat(PROFILE.nextM(-5)).isZero();
    assertThat(PROFILE.nextM(0)).isEqualTo(200);
    assertThat(PROFILE.nextM(200)).isEqualTo(2000);
    assertThat(PROFILE.nextM(2000)).isEqualTo(2300);
    assertThat(PROFILE.nextM(2300)).isEqualTo(NEVER);
  }

  @Test
  void powerToAPlaceComesOffThereOnce() {
    assertThat(PROFILE.offAtPlace(2299.9, 0)).isFalse();
    assertThat(PROFILE.offAtPlace(2300, 0)).isTrue();
    assertThat(PROFILE.offAtPlace(2400, 0)).isTrue();
    assertThat(PROFILE.offAtPlace(2400, 1)).as("is off").isFalse();
    assertThat(PROFILE.offAtPlace(600, -1)).as("to a speed").isFalse();
    assertThat(PROFILE.offAtPlace(-10, -1)).as("before the first").isFalse();
  }

  /** Up to 60 m late. */
  @Test
  void powerIsWantedFromItsBeginningToALittleBehindItsEnd() {
    assertThat(PROFILE.wantsPower(559.9, 14.9, -1, SETTINGS)).isTrue();
    assertThat(PROFILE.wantsPower(560, 14.9, -1, SETTINGS)).isFalse();
    assertThat(PROFILE.wantsPower(400, 14.9, 0, SETTINGS)).as("is off").isFalse();
    assertThat(PROFILE.wantsPower(-10, 14.9, -1, SETTINGS)).isFalse();
  }

  /**
   * At 1000 m it is to be at the root of 225 − 125/3, 13.54 m/s, at 250 m at that of 112.5, 10.607
   * m/s: three quarters of these are 10.155 and 7.955 m/s.
   */
  @Test
  void aTrainFarBehindTheProfileTakesPowerByTheRules() {
    assertThat(PROFILE.wantsPower(1000, 10.15, 0, SETTINGS)).isTrue();
    assertThat(PROFILE.wantsPower(1000, 10.16, 0, SETTINGS)).isFalse();
    assertThat(PROFILE.holds(250, 7.95, -1, SETTINGS)).isFalse();
    assertThat(PROFILE.holds(250, 7.96, -1, SETTINGS)).isTrue();
    assertThat(PROFILE.holds(1000, 13, -1, SETTINGS)).as("no power here").isFalse();
    assertThat(PROFILE.wantsPower(4000.1, 0, 1, SETTINGS)).as("behind its end").isFalse();
  }

  @Test
  void aReleaseBelongsToTheTargetNear() {
    assertThat(PROFILE.releaseBefore(4299.9)).contains(8.0);
    assertThat(PROFILE.releaseBefore(4300)).isEmpty();
    assertThat(PROFILE.releaseBefore(3900.1)).contains(8.0);
    assertThat(PROFILE.releaseBefore(3900)).isEmpty();
  }

  @Test
  void twoProfilesAreTheSameUpToTheFirstPowerThatDiffers() {
    ControlProfile first = new ControlProfile(List.of(TO_A_SPEED), List.of(RELEASE), TRACE);
    ControlProfile earlier =
        new ControlProfile(
            List.of(TO_A_SPEED, new PowerPhase(1900, TO_A_PLACE.notches(), 2300, NEVER)),
            List.of(),
            TRACE);
    assertThat(PROFILE.sameUpToM(PROFILE)).isEqualTo(NEVER);
    assertThat(PROFILE.sameUpToM(first)).isEqualTo(1999);
    assertThat(first.sameUpToM(PROFILE)).isEqualTo(1999);
    assertThat(PROFILE.sameUpToM(earlier)).isEqualTo(1899);
    assertThat(earlier.sameUpToM(PROFILE)).isEqualTo(1899);
    assertThat(PROFILE.sameUpToM(ControlProfile.NONE)).isEqualTo(Double.NEGATIVE_INFINITY);
    ControlProfile otherTrace =
        new ControlProfile(PROFILE.powers(), PROFILE.releases(), TRACE.subList(0, 4));
    assertThat(PROFILE.sameUpToM(otherTrace)).isEqualTo(Double.NEGATIVE_INFINITY);
  }

  private static GuideChange power(PowerPhase was, PowerPhase instead) {
    return new GuideChange.OtherPower(was, instead);
  }

  private static GuideChange notches(PowerPhase was, Notch... notches) {
    return power(was, new PowerPhase(was.onM(), List.of(notches), was.offM(), was.offMps()));
  }

  /** A unit of half a metre a second and a way of 60 m. */
  @Test
  void aProfileNearByDiffersInOneThing() {
    assertThat(PROFILE.changes(0.5, 60))
        .containsExactlyInAnyOrder(
            power(TO_A_SPEED, new PowerPhase(0, TO_A_SPEED.notches(), 500, 14.5)),
            power(TO_A_SPEED, new PowerPhase(0, TO_A_SPEED.notches(), 500, 15.5)),
            notches(TO_A_SPEED, new Notch(0, 0), new Notch(200, 3)),
            notches(TO_A_SPEED, new Notch(0, 2), new Notch(200, 3)),
            notches(TO_A_SPEED, new Notch(0, 1), new Notch(200, 2)),
            notches(TO_A_SPEED, new Notch(0, 1), new Notch(200, 4)),
            notches(TO_A_SPEED, new Notch(0, 1)),
            notches(TO_A_SPEED, new Notch(0, 3)),
            power(TO_A_PLACE, new PowerPhase(2000, TO_A_PLACE.notches(), 2240, NEVER)),
            power(TO_A_PLACE, new PowerPhase(2000, TO_A_PLACE.notches(), 2360, NEVER)),
            notches(TO_A_PLACE, new Notch(2000, 1)),
            notches(TO_A_PLACE, new Notch(2000, 3)),
            power(TO_A_PLACE, new PowerPhase(1940, TO_A_PLACE.notches(), 2300, NEVER)),
            power(TO_A_PLACE, new PowerPhase(2060, TO_A_PLACE.notches(), 2300, NEVER)),
            new GuideChange.NoPower(TO_A_PLACE),
            new GuideChange.OnePower(
                TO_A_SPEED, TO_A_PLACE, new PowerPhase(0, TO_A_SPEED.notches(), 2300, NEVER)),
            new GuideChange.OtherRelease(RELEASE, new SpeedPoint(4000, 7)),
            new GuideChange.OtherRelease(RELEASE, new SpeedPoint(4000, 9)));
  }

  /** Notches rise, the lowest is 0, powers do not meet, and no brake comes off at a crawl. */
  @Test
  void noProfileNearByIsOutOfOrder() {
    PowerPhase first = new PowerPhase(0, List.of(new Notch(0, 0), new Notch(50, 1)), 100, 5);
    PowerPhase second = new PowerPhase(160, List.of(new Notch(160, 0)), 220, 6);
    SpeedPoint slow = new SpeedPoint(900, 2);
    ControlProfile near = new ControlProfile(List.of(first, second), List.of(slow), TRACE);
    List<GuideChange> changes = near.changes(1, 60);
    assertThat(changes)
        .contains(
            notches(first, new Notch(0, 0), new Notch(50, 2)),
            notches(second, new Notch(160, 1)),
            new GuideChange.OtherRelease(slow, new SpeedPoint(900, 1)))
        .doesNotContain(
            notches(first, new Notch(0, -1), new Notch(50, 1)),
            notches(first, new Notch(0, 1), new Notch(50, 1)),
            notches(first, new Notch(0, 0), new Notch(50, 0)),
            power(second, new PowerPhase(100, second.notches(), 220, 6)),
            power(second, new PowerPhase(220, second.notches(), 220, 6)))
        .hasSize(2 + 3 + 2 + 1 + 1 + 1 + 2);
  }

  @Test
  void powerThatStaysOnTakesThePlaceOfTwo() {
    PowerPhase one = new PowerPhase(0, TO_A_SPEED.notches(), 2300, NEVER);
    GuideChange change = new GuideChange.OnePower(TO_A_SPEED, TO_A_PLACE, one);
    assertThat(PROFILE.with(List.of(change)))
        .isEqualTo(new ControlProfile(List.of(one), List.of(RELEASE), TRACE));
    assertThat(change.upToM()).isEqualTo(2300);
  }

  @Test
  void changesAreMadeEachInItsPlace() {
    PowerPhase slower = new PowerPhase(0, TO_A_SPEED.notches(), 500, 14);
    SpeedPoint later = new SpeedPoint(4000, 6);
    ControlProfile other =
        PROFILE.with(
            List.of(
                power(TO_A_SPEED, slower),
                new GuideChange.NoPower(TO_A_PLACE),
                new GuideChange.OtherRelease(RELEASE, later)));
    assertThat(other).isEqualTo(new ControlProfile(List.of(slower), List.of(later), TRACE));
    assertThat(new GuideChange.NoPower(TO_A_PLACE).upToM()).isEqualTo(2300);
    assertThat(new GuideChange.OtherRelease(RELEASE, later).upToM()).isEqualTo(4300);
    assertThat(power(TO_A_PLACE, new PowerPhase(2000, List.of(), 2360, NEVER)).upToM())
        .isEqualTo(2360);
    assertThat(power(TO_A_PLACE, new PowerPhase(2000, List.of(), 2240, NEVER)).upToM())
        .isEqualTo(2300);
  }

  private static PowerPhase made(double before, double atM, double mps) {
    ControlProfile.Maker maker = new ControlProfile.Maker(SETTINGS.way());
    maker.point(0, before - 1);
    maker.power(0, 1, false);
    maker.power(10, 1, true);
    maker.power(20, 3, true);
    maker.point(atM - 100, before);
    maker.point(atM - 99, mps);
    maker.off(atM, mps);
    return maker.guide().powers().get(0);
  }

  /** More than 0.7 m/s over the last 100 m, or no 100 m of power at all. */
  @Test
  void powerComesOffAtASpeedWhereItStillGains() {
    List<Notch> notches = List.of(new Notch(0, 1), new Notch(20, 3));
    assertThat(made(10, 600, 10.71)).isEqualTo(new PowerPhase(0, notches, 600, 10.71));
    assertThat(made(10, 600, 10.69)).isEqualTo(new PowerPhase(0, notches, 600, NEVER));
    assertThat(made(10, 99.9, 10.1)).isEqualTo(new PowerPhase(0, notches, 99.9, 10.1));
    assertThat(made(10, 100, 10.1)).isEqualTo(new PowerPhase(0, notches, 100, NEVER));
  }

  @Test
  void aSecondPowerHasNotchesOfItsOwn() {
    ControlProfile.Maker maker = new ControlProfile.Maker(SETTINGS.way());
    maker.power(0, 2, false);
    maker.off(50, 5);
    maker.power(800, 1, false);
    maker.off(850, 6);
    assertThat(maker.guide().powers())
        .containsExactly(
            new PowerPhase(0, List.of(new Notch(0, 2)), 50, 5),
            new PowerPhase(800, List.of(new Notch(800, 1)), 850, 6));
  }

  @Test
  void aGuideIsSharedByWhatWasAskedOfIt() {
    ControlProfile first =
        new ControlProfile(List.of(TO_A_SPEED), List.of(new SpeedPoint(4000, 7)), TRACE);
    GuideDependencies upToTheChange = new GuideDependencies();
    upToTheChange.upTo(1500);
    upToTheChange.upTo(1000);
    assertThat(upToTheChange.sameOf(PROFILE, first)).isTrue();
    upToTheChange.upTo(1999);
    assertThat(upToTheChange.sameOf(PROFILE, first)).isFalse();
    GuideDependencies release = new GuideDependencies();
    release.release(new Target.Signal("S 1", 1000));
    assertThat(release.sameOf(PROFILE, first)).as("no release there").isTrue();
    release.release(new Target.Signal("S 2", 4050));
    assertThat(release.sameOf(PROFILE, first)).as("at 7 in place of 8 m/s").isFalse();
  }
}
