package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.EvenLine;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.task.Assignment;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: two ways of a leg are one again where the train is as it was, and nowhere else. */
class LegMeetingTest {
  private static final PlannerSettings.Choice SETTINGS = PlannerSettings.usual().choice();

  private final Assignment even = EvenLine.of(0);
  private final TrainModels models = new TrainModels(even);
  private final Stepper stepper = models.plannedStepper();

  /** Coasting, or as the handles are. */
  private LegStart start(double atM, double mps, int next, int notch, double pa) {
    stepper.place(0, atM, mps);
    if (notch >= 0) {
      stepper.power(notch);
    }
    if (pa > 0) {
      stepper.brake(models.service(), pa);
    }
    return new LegStart(
        stepper.save(), 0, 0, new RunStates(), next, new SpeedsSeen(), false, false);
  }

  private LegStart start(double atM, double mps, int next) {
    return start(atM, mps, next, -1, 0);
  }

  /** On a leg from 0 to 4000 m, with pieces that begin at 1000 and 2000 m at 15 and 12 m/s. */
  private LegMeeting meeting(double behindM) {
    return new LegMeeting(
        SETTINGS,
        new LegPlanner.Leg(
            List.of(),
            List.of(start(0, 0, 0), start(1000, 15, 1), start(2000, 12, 2), start(4000, 0, 3)),
            false,
            List.of()),
        behindM);
  }

  @Test
  void whatIsNotMetWithinItsReachIsGivenUp() {
    LegMeeting meeting = meeting(500);
    assertThat(meeting.met(start(500 + SETTINGS.reachM(), 5, 2))).isFalse();
    assertThat(meeting.lost()).isFalse();
    assertThat(meeting.met(start(501 + SETTINGS.reachM(), 5, 2))).isTrue();
    assertThat(meeting.lost()).isTrue();
    assertThat(meeting.index()).as("met nowhere").isEqualTo(3);
  }

  @Test
  void theyMeetWithinFifteenMetresAndATenthOfAMetreASecond() {
    LegMeeting meeting = meeting(500);
    assertThat(meeting.index()).as("not before the end").isEqualTo(3);
    assertThat(meeting.met(start(2014.9, 12.09, 2))).isTrue();
    assertThat(meeting.index()).isEqualTo(2);
    assertThat(meeting.met(start(985.1, 14.91, 1))).isTrue();
    assertThat(meeting.index()).isEqualTo(1);
  }

  @Test
  void neitherNearNorAsFastIsNotMet() {
    LegMeeting meeting = meeting(500);
    assertThat(meeting.met(start(2015, 12, 2))).isFalse();
    assertThat(meeting.met(start(1985, 12, 2))).isFalse();
    assertThat(meeting.met(start(2000, 12.11, 2))).isFalse();
    assertThat(meeting.met(start(2000, 11.89, 2))).isFalse();
    assertThat(meeting.index()).isEqualTo(3);
  }

  @Test
  void towardsAnotherTargetOrWithOtherHandlesIsNotMet() {
    LegMeeting meeting = meeting(500);
    assertThat(meeting.met(start(2000, 12, 1))).isFalse();
    assertThat(meeting.met(start(2000, 12, 3))).isFalse();
    assertThat(meeting.met(start(2000, 12, 2, 0, 0))).isFalse();
    assertThat(meeting.met(start(2000, 12, 2, -1, 1e5))).isFalse();
    assertThat(meeting.met(start(2000, 12, 2))).isTrue();
  }

  /** What the change is about lies up to there. */
  @Test
  void beforeTheChangeIsOverNothingIsMet() {
    assertThat(meeting(2000.1).met(start(2000, 12, 2))).isFalse();
    assertThat(meeting(2000).met(start(2000, 12, 2))).isTrue();
  }

  /** All begin alike, and at the stop there is nothing left to work out. */
  @Test
  void neitherTheBeginningNorTheEndIsAMeeting() {
    LegMeeting meeting = meeting(0);
    assertThat(meeting.met(start(0, 0, 0))).isFalse();
    assertThat(meeting.met(start(4000, 0, 3))).isFalse();
  }
}
