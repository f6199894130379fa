package gradepost.drive.check;

import static gradepost.drive.EvenLine.CRUSH_T;
import static gradepost.drive.EvenLine.SAFE_MPS2;
import static gradepost.drive.EvenLine.SEATED_T;
import static gradepost.drive.EvenLine.brakedM;
import static gradepost.drive.EvenLine.gravityMps2;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.TrainFigures;
import gradepost.task.Assignment;
import gradepost.units.Pressure;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Validation, with a pencil: what the page of the train prints; see {@link EvenLine}. */
class FigureTablesTest {
  private static final double KMH = 1 / 3.6;

  private static TrainFigures figures(Assignment a) {
    return new FigureTables(a, new TrainModels(a)).figures();
  }

  /** Every 20 km/h up to 60 mph (96.6 km/h), on the level, the fall of 20 ‰ and the rise of 10. */
  @Test
  void theStopsAreThoseOfTheSafeSide() {
    List<TrainFigures.FullStop> stops =
        figures(EvenLine.broken(-20, 3000, 10)).stops().stream()
            .filter(s -> s.brake().shortName().equals("EP"))
            .toList();
    assertThat(stops).hasSize(3 * 4);
    double[] permille = {-20, 0, 10};
    for (int g = 0; g < 3; g++) {
      double track = gravityMps2(permille[g], 180, CRUSH_T);
      for (int k = 0; k < 4; k++) {
        TrainFigures.FullStop stop = stops.get(4 * g + k);
        double mps = 20 * (k + 1) * KMH;
        assertThat(stop.permille()).isCloseTo(permille[g], within(1e-6));
        assertThat(stop.fromMps()).isCloseTo(mps, within(1e-9));
        assertThat(stop.distanceM())
            .isCloseTo(brakedM(mps, 0, 0.5, 2.3, SAFE_MPS2, track), within(1e-2));
      }
    }
  }

  /** 60 ‰ take 0.555 m/s², the brake 0.52. */
  @Test
  void aFallThatBeatsTheBrakeHasNoDistance() {
    assertThat(figures(EvenLine.of(-60)).stops())
        .filteredOn(s -> s.permille() < -1)
        .isNotEmpty()
        .allMatch(s -> Double.isInfinite(s.distanceM()));
  }

  /** The first notch: 44 kN up to 6 mph (9.7 km/h), then by a straight line in its table. */
  @Test
  void theBalancingSpeedIsWhereTheEffortIsUsedUp() {
    List<TrainFigures.Balance> all = figures(EvenLine.of(0)).balancing();
    assertThat(all).hasSize(5 * 6);
    // With power off and nothing that holds it a train rolls on on a fall, and stands on a rise.
    assertThat(at(all, -1, -10)).isInfinite();
    assertThat(at(all, -1, 10)).isZero();
    // 10 ‰ of 162 t are 15.9 kN; between 9 and 12 mph the notch falls from 18.3 to 8.25 kN each.
    double share = (2 * 22 * 36 / 81.0 * (1 - 1 / 16.0) - 15.886773) / (2 * (9.1666667 - 4.125));
    assertThat(share).isBetween(0.0, 1.0);
    assertThat(at(all, 0, 10)).isCloseTo((9 + 3 * share) * 0.44704, within(1e-3));
  }

  private static double at(List<TrainFigures.Balance> all, int notch, double permille) {
    return all.stream()
        .filter(b -> b.notch() == notch && b.permille() == permille)
        .findFirst()
        .orElseThrow()
        .speedMps();
  }

  /** A reduction of 1 gives 2.5; 70 psi equalise after 20, and 5 steps of a tenth of a bar each. */
  @Test
  void theGaugesShowTwoAndAHalfForOne() {
    List<TrainFigures.Reduction> pipe = figures(EvenLine.of(0)).pipe();
    double full = Pressure.ofPsi(20).pascals();
    assertThat(pipe)
        .extracting(TrainFigures.Reduction::reductionPa)
        .containsExactly(5e4, 1e5, full);
    assertThat(pipe.get(0).cylinderPa()).isCloseTo(1.25e5, within(1e-6));
    assertThat(pipe.get(0).pipePa()).isCloseTo(Pressure.ofPsi(70).pascals() - 5e4, within(1e-6));
    assertThat(pipe.get(2).cylinderPa()).isCloseTo(Pressure.ofPsi(50).pascals(), within(1e-6));
  }

  /** The first notch alone, over {@code v²/2a} up to 6 mph and slower beyond: not to 20 km/h. */
  @Test
  void whatIsNotReachedIsNotListed() {
    List<TrainFigures.Reach> all = figures(EvenLine.of(0)).reaching();
    assertThat(all).noneMatch(r -> r.notch() == 0);
    assertThat(all).anyMatch(r -> r.notch() == 3 && Math.abs(r.speedMps() - 80 * KMH) < 1e-9);
    TrainFigures.Reach forty =
        all.stream()
            .filter(r -> r.notch() == 3 && Math.abs(r.speedMps() - 40 * KMH) < 1e-9)
            .findFirst()
            .orElseThrow();
    // 44 kN for 3 s, 96 kN for 3 s and 100 kN from there, all up to 14 mph or more.
    double one = 44 / SEATED_T * 3;
    double two = one + 96 / SEATED_T * 3;
    assertThat(two).isLessThan(6 * 0.44704);
    double rest = (40 * KMH - two) / (100 / SEATED_T);
    assertThat(40 * KMH).isLessThan(27 * 0.44704);
    assertThat(forty.timeS()).isCloseTo(6 + rest, within(1e-3));
    assertThat(forty.distanceM())
        .isCloseTo(one / 2 * 3 + (one + two) / 2 * 3 + (two + 40 * KMH) / 2 * rest, within(1e-2));
  }
}
