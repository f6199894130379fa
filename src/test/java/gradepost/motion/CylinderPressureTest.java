package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.BrakeAction;
import gradepost.units.Pressure;
import gradepost.units.Span;
import org.junit.jupiter.api.Test;

/**
 * By hand: a cylinder that answers after 0.5 s, fills and empties by 2 bar a second, and has
 * springs that take 0.4 bar.
 */
class CylinderPressureTest {
  private static final double BAR = 1e5;
  private static final TrainBrake BRAKE =
      Textbook.train(40, 0)
          .threshold(new Pressure(0.4 * BAR))
          .action(new BrakeAction.Simultaneous(new Span(0.5)), 2)
          .rig();
  private static final double[] DELAYS = {0.1, 0.3};

  private final CylinderPressure cylinder = new CylinderPressure();

  CylinderPressureTest() {
    cylinder.clear();
  }

  private void demand(double timeS, double bar) {
    cylinder.demand(BRAKE, timeS, bar * BAR);
  }

  private void assertBar(double timeS, double bar) {
    assertThat(cylinder.at(timeS) / BAR).as("at %s s", timeS).isCloseTo(bar, within(1e-9));
  }

  @Test
  void itFillsEvenlyAfterTheDeadTime() {
    demand(10, 2);
    assertBar(9, 0);
    assertBar(10.5, 0);
    assertBar(10.6, 0.2);
    assertBar(10.7, 0.4);
    assertBar(11, 1);
    assertBar(11.5, 2);
    assertBar(20, 2);
    assertThat(cylinder.demandPa()).isEqualTo(2 * BAR);
  }

  /** Until the second demand answers the first goes on: to 1.4 bar, and then down to 1. */
  @Test
  void aDemandThatIsChangedOnTheWayGoesOnForTheDeadTime() {
    demand(10, 2);
    demand(10.7, 1);
    assertBar(11.2, 1.4);
    assertBar(11.3, 1.2);
    assertBar(11.4, 1);
    assertBar(15, 1);
    assertBar(11, 1);
  }

  @Test
  void aDemandThatIsTakenBackBeforeItAnswersIsNone() {
    demand(10, 2);
    demand(10, 0);
    assertBar(10.6, 0);
    assertBar(12, 0);
    demand(20, 2);
    demand(20.2, 0);
    assertBar(20.7, 0.4);
    assertBar(20.8, 0.2);
    assertBar(20.9, 0);
  }

  @Test
  void itIsReleasedAsEvenly() {
    demand(10, 2);
    demand(20, 0);
    assertBar(20.5, 2);
    assertBar(21, 1);
    assertBar(21.5, 0);
    assertBar(30, 0);
  }

  /** Also where the springs let go: at 10.7 s the foremost, and after its delay each other. */
  @Test
  void theNextCornerIsThatOfTheNextVehicle() {
    demand(10, 2);
    double[] corners = {10.6, 10.8, 10.8, 11.0, 11.6, 11.8};
    double at = 10.5;
    for (double corner : corners) {
      if (corner > at + 1e-6) {
        at = cylinder.nextCornerS(at, DELAYS, 0.3);
        assertThat(at).isCloseTo(corner, within(1e-9));
        assertThat(cylinder.settled(at - 1e-3, 0.3)).isFalse();
      }
    }
    assertThat(cylinder.nextCornerS(at, DELAYS, 0.3)).isInfinite();
    assertThat(cylinder.settled(at, 0.3)).isTrue();
  }

  /** Of springs that are passed on the way down as well; none where both are on one side. */
  @Test
  void theSpringsAreACornerOnlyWhereTheyArePassed() {
    demand(10, 2);
    demand(20, 0);
    double[] none = {0};
    assertThat(cylinder.nextCornerS(20.6, none, 0)).isCloseTo(21.3, within(1e-9));
    assertThat(cylinder.nextCornerS(21.4, none, 0)).isCloseTo(21.5, within(1e-9));
    demand(30, 2);
    demand(40, 1);
    assertThat(cylinder.nextCornerS(40.6, none, 0)).isCloseTo(41, within(1e-9));
  }

  /** More demands than are kept: those long past are forgotten, the latest are as they were. */
  @Test
  void manyDemandsAreNoneTooMany() {
    for (int i = 0; i < 200; i++) {
      demand(10 * i, i % 2 == 0 ? 2 : 1);
    }
    assertBar(1990.5, 2);
    assertBar(1990.75, 1.5);
    assertBar(1991, 1);
    assertBar(1980.5, 1);
    assertBar(1980.8, 1.6);
    CylinderPressure kept = cylinder.kept();
    demand(2000, 3);
    assertBar(2001, 2);
    assertThat(kept.at(1990.75) / BAR).isCloseTo(1.5, within(1e-9));
    assertThat(kept.at(2001) / BAR).isCloseTo(1, within(1e-9));
    assertThat(kept.demandPa()).isEqualTo(BAR);
    cylinder.copyFrom(kept);
    assertBar(2001, 1);
  }
}
