package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Mill;
import gradepost.route.place.Direction;
import gradepost.stock.law.InverseRadiusCurveResistance;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * By hand: height and curves of an invented line of five miles. It is level for 20 chains, falls 1
 * in 66 to one mile, rises 1 in 80 for 60 chains, and so on to its end.
 */
class TrackTest {
  private static final double CHAIN = 20.1168;
  private static final double MILE = 80 * CHAIN;

  private static Track of(Direction direction) {
    return Track.of(Mill.assignment(direction, "4-car").path());
  }

  private static final double AT_ONE = -60 * CHAIN / 66;
  private static final double TOP = AT_ONE + 60 * CHAIN / 80;
  private static final double AT_END = TOP - MILE / 60 + 60 * CHAIN / 100 - 60 * CHAIN / 200;

  @Test
  void heightsAreTheSumOfTheGradients() {
    PiecewiseLinear height = of(Direction.FORWARD).elevation();
    assertThat(height.at(0)).isZero();
    assertThat(height.at(20 * CHAIN)).isCloseTo(0, within(1e-6));
    assertThat(height.at(MILE)).isCloseTo(AT_ONE, within(0.01));
    assertThat(height.at(50 * CHAIN)).isCloseTo(AT_ONE / 2, within(0.01));
    assertThat(height.at(MILE + 60 * CHAIN)).isCloseTo(TOP, within(0.01));
    assertThat(height.at(2 * MILE + 40 * CHAIN)).isCloseTo(TOP, within(0.01));
    assertThat(height.at(5 * MILE)).isCloseTo(AT_END, within(0.02));
  }

  @Test
  void theOtherWayFallsAreRises() {
    PiecewiseLinear forward = of(Direction.FORWARD).elevation();
    PiecewiseLinear back = of(Direction.BACKWARD).elevation();
    for (double at = 0; at <= 5 * MILE; at += 250) {
      double climbed = forward.at(5 * MILE - at) - AT_END;
      assertThat(back.at(at) - back.at(0)).isCloseTo(climbed, within(0.02));
    }
  }

  /** 1m 70ch to 2m 10ch on 10 chains with a check rail, 3m 30ch to 3m 50ch on 25 without. */
  @Test
  void curvesAreWhereTheTrainMeetsThem() {
    List<CurvePiece> curves = of(Direction.FORWARD).curves();
    assertThat(curves).hasSize(2);
    assertThat(curves.get(0).fromM()).isCloseTo(MILE + 70 * CHAIN, within(0.01));
    assertThat(curves.get(0).toM()).isCloseTo(2 * MILE + 10 * CHAIN, within(0.01));
    assertThat(curves.get(0).radiusM()).isCloseTo(10 * CHAIN, within(0.01));
    assertThat(curves.get(0).checkRailed()).isTrue();
    assertThat(curves.get(1).checkRailed()).isFalse();
    List<CurvePiece> back = of(Direction.BACKWARD).curves();
    assertThat(back.get(0).fromM()).isCloseTo(MILE + 30 * CHAIN, within(0.01));
    assertThat(back.get(0).radiusM()).isCloseTo(25 * CHAIN, within(0.01));
  }

  /**
   * 700/R N/kN on 350 m are 2, and 1 more beside a check rail; on 700 m 1. Where both lie, the
   * greater counts.
   */
  @Test
  void whereCurvesOverlapTheGreaterResistanceCounts() {
    PiecewiseLinear level = new PiecewiseLinear(new double[] {0, 1000}, new double[2]);
    Track track =
        new Track(
            level,
            List.of(new CurvePiece(100, 400, 700, false), new CurvePiece(300, 500, 350, true)));
    PiecewiseLinear felt = track.feltElevation(new InverseRadiusCurveResistance(700), 1);
    assertThat(felt.at(100)).isCloseTo(0, within(1e-9));
    assertThat(felt.at(200)).isCloseTo(0.1, within(1e-9));
    assertThat(felt.at(300)).isCloseTo(0.2, within(1e-9));
    assertThat(felt.at(400)).isCloseTo(0.2 + 0.3, within(1e-9));
    assertThat(felt.at(500)).isCloseTo(0.2 + 0.6, within(1e-9));
    assertThat(felt.at(900)).isCloseTo(0.2 + 0.6, within(1e-9));
  }

  /** A knot is left out only where the line through its neighbours is near enough. */
  @Test
  void onlyKnotsThatAreStraightAreLeftOut() {
    PiecewiseLinear line =
        new PiecewiseLinear(new double[] {0, 10, 20, 40, 50}, new double[] {0, 1, 2.05, 4, 9});
    PiecewiseLinear fewer = line.withoutStraightKnots(0.1);
    assertThat(fewer.knots()).isEqualTo(3);
    assertThat(fewer.x(1)).isEqualTo(40);
    PiecewiseLinear all = line.withoutStraightKnots(0.01);
    assertThat(all.knots()).isEqualTo(5);
    assertThat(line.withoutStraightKnots(0.04).knots()).isEqualTo(4);
  }

  @Test
  void aLineRisesFromKnotToKnot() {
    assertThatThrownBy(() -> new PiecewiseLinear(new double[] {0, 2, 2}, new double[3]))
        .hasMessage("knots rise: 2.0, 2.0");
    assertThatThrownBy(() -> new PiecewiseLinear(new double[] {0}, new double[1]))
        .hasMessage("a line has two knots at least");
  }
}
