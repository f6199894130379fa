package gradepost.drive.bound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.motion.PiecewiseLinear;
import gradepost.stock.RunningResistance;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: what is exact of a segment is that of ten thousand strips. */
class SegmentsTest {
  private static final int STRIPS = 10_000;

  @Test
  void meanAndMomentOfTheTrackAreThoseOfManyStrips() {
    PiecewiseLinear track =
        new PiecewiseLinear(
            new double[] {0, 130, 170, 260, 300, 900}, new double[] {0, 0.1, -0.2, 0.15, 0.3, 0});
    RelaxedLeg leg =
        new RelaxedLeg(
            0,
            1000,
            0,
            0,
            new RunningResistance(0.02, 0, 0),
            track,
            new FallingForce(60, (low, high) -> 0.6),
            new FallingForce(60, (low, high) -> 0.7),
            List.of(new RelaxedLeg.Cap(1000, 30)));
    Segments cut = new Segments(leg, 100);
    for (int k = 0; k < cut.count(); k++) {
      double strip = cut.lengthM(k) / STRIPS;
      double middle = (cut.placeM[k] + cut.placeM[k + 1]) / 2;
      double sum = 0;
      double moment = 0;
      for (int i = 0; i < STRIPS; i++) {
        double at = cut.placeM[k] + (i + 0.5) * strip;
        sum += track.at(at) * strip;
        moment += track.at(at) * (at - middle) * strip;
      }
      assertThat(cut.meanN[k] * cut.lengthM(k)).isCloseTo(sum, within(1e-5));
      assertThat(cut.momentNM2[k]).isCloseTo(moment, within(1e-4));
    }
    assertThat(cut.placeM[cut.count()]).isEqualTo(1000);
  }

  /** Where the slope changes over a segment it matters where on it the hill is. */
  @Test
  void theProofCountsTheTrackWhereItIs() {
    double[] x = {0, 400, 401, 600, 601};
    double[] y = {0, 0, 0.3, 0.3, 0};
    RunningResistance none = new RunningResistance(0, 0, 0);
    FallingForce force = new FallingForce(60, (low, high) -> 0.5);
    List<RelaxedLeg.Cap> caps = List.of(new RelaxedLeg.Cap(1000, 30));
    RelaxedLeg hill =
        new RelaxedLeg(0, 1000, 0, 0, none, new PiecewiseLinear(x, y), force, force, caps);
    RelaxedLeg level =
        new RelaxedLeg(
            0, 1000, 0, 0, none, new PiecewiseLinear(x, new double[5]), force, force, caps);
    Segments cut = new Segments(hill, 150);
    double[] slope = new double[cut.count() + 1];
    for (int k = 0; k <= cut.count(); k++) {
      double at = cut.placeM[k];
      slope[k] = -0.4 * Math.sin(at / 300);
    }
    double share = 0;
    for (int k = 0; k < cut.count(); k++) {
      double strip = cut.lengthM(k) / STRIPS;
      for (int i = 0; i < STRIPS; i++) {
        double part = (i + 0.5) / STRIPS;
        double e = slope[k] + part * (slope[k + 1] - slope[k]);
        share += (1 - e) * hill.track().at(cut.placeM[k] + part * cut.lengthM(k)) * strip;
      }
    }
    // At walking pace all the way, so that the greatest speeds are the same on both.
    double withHill =
        new Certificate(slow(hill), new Segments(slow(hill), 150), 0.25).least(1, slope);
    double without =
        new Certificate(slow(level), new Segments(slow(level), 150), 0.25).least(1, slope);
    assertThat(withHill - without).isCloseTo(share, within(0.02));
  }

  private static RelaxedLeg slow(RelaxedLeg leg) {
    return new RelaxedLeg(
        leg.fromM(),
        leg.toM(),
        3,
        3,
        leg.resistance(),
        leg.track(),
        leg.effort(),
        leg.brake(),
        List.of(new RelaxedLeg.Cap(1000, 3)));
  }
}
