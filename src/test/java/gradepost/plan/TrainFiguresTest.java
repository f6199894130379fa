package gradepost.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.DemoPlans;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.FigureTables;
import gradepost.motion.Train;
import gradepost.stock.RunningResistance;
import gradepost.task.Assignment;
import org.junit.jupiter.api.Test;

/** What the train does by itself, against the closed formula of its resistance. */
class TrainFiguresTest {

  /** With power off a train rolls at the speed at which a + bv + cv² is the pull of the grade. */
  @Test
  void onAFallItRollsAtTheRootOfItsResistance() {
    for (Assignment assignment : DemoPlans.tried()) {
      TrainModels bench = new TrainModels(assignment);
      Train train = bench.plannedTrain();
      RunningResistance r = train.resistance();
      TrainFigures figures = new FigureTables(assignment, bench).figures();
      int falling = 0;
      for (TrainFigures.Balance b : figures.balancing()) {
        double pull = -train.weightN() * b.permille() / 1000;
        if (b.notch() >= 0) {
          double rolls =
              figures.balancing().stream()
                  .filter(o -> o.notch() < 0 && o.permille() == b.permille())
                  .findFirst()
                  .orElseThrow()
                  .speedMps();
          assertThat(b.speedMps()).isGreaterThanOrEqualTo(rolls - 1e-9);
        } else if (pull <= r.aN()) {
          assertThat(b.speedMps()).as("%s permille", b.permille()).isZero();
        } else {
          falling++;
          double d = r.bNsPerM() * r.bNsPerM() + 4 * r.cNs2PerM2() * (pull - r.aN());
          double root = (Math.sqrt(d) - r.bNsPerM()) / (2 * r.cNs2PerM2());
          assertThat(Math.min(b.speedMps(), 150)).isCloseTo(Math.min(root, 150), within(1e-6));
        }
      }
      assertThat(falling).isEqualTo(2);
    }
  }

  /**
   * What is printed of each notch is the lowest speed at which its effort, or what the rail bears,
   * is resistance and gradient: up to there the train gains.
   */
  @Test
  void inEachNotchItComesToWhereEffortAndResistanceAreEqual() {
    int balanced = 0;
    for (Assignment assignment : DemoPlans.assignments().subList(0, 2)) {
      TrainModels bench = new TrainModels(assignment);
      for (TrainFigures.Balance b : new FigureTables(assignment, bench).figures().balancing()) {
        if (b.notch() >= 0 && b.speedMps() > 0) {
          balanced++;
          for (double mps = 0; mps < b.speedMps() - 0.01; mps += 0.25) {
            assertThat(surplusN(assignment, bench.plannedTrain(), b, mps)).isPositive();
          }
          assertThat(surplusN(assignment, bench.plannedTrain(), b, b.speedMps()))
              .isCloseTo(0, within(0.1));
        }
      }
    }
    assertThat(balanced).isGreaterThan(20);
  }

  private static double surplusN(
      Assignment assignment, Train train, TrainFigures.Balance at, double mps) {
    RunningResistance r = train.resistance();
    double mu = assignment.policy().plannedAdhesion().law().mu(mps);
    double pull =
        Math.min(train.effort().get(at.notch()).at(mps), mu * train.motoredKg() * 9.80665);
    double against = r.aN() + mps * (r.bNsPerM() + mps * r.cNs2PerM2());
    return pull - against - train.weightN() * at.permille() / 1000;
  }
}
