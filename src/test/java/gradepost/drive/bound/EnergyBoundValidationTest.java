package gradepost.drive.bound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.motion.PiecewiseLinear;
import gradepost.stock.RunningResistance;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Validation: the bound against the optimum on level track, which is known in closed form ({@link
 * LevelOptimum} has the source). The values of the table were computed by a program that shares
 * nothing with this one, once by the closed form and once by free minimisation.
 */
class EnergyBoundValidationTest {

  @ParameterizedTest(name = "{0} m in {1} s")
  @CsvSource({
    "10000,  740, 15.602,  7.758,  6516,  360.94",
    "20000, 1050, 20.901, 11.513, 15440,  998.86",
    "40000, 1800, 23.419, 13.292, 34961, 2300.06"
  })
  void theOptimumOnLevelTrackLiesJustAboveTheBound(
      double metres, double seconds, double held, double coastedTo, double heldM, double joules) {
    LevelOptimum optimum = LevelOptimum.of(metres, seconds);
    assertThat(optimum.heldMps()).isCloseTo(held, within(0.001));
    assertThat(optimum.coastedToMps()).isCloseTo(coastedTo, within(0.001));
    assertThat(optimum.heldM()).isCloseTo(heldM, within(1.0));
    assertThat(optimum.joulesPerKg()).isCloseTo(joules, within(0.01));

    EnergyBound bound = EnergyBound.of(level(metres), seconds);
    assertThat(bound.joulesPerKg()).isBetween(0.99 * joules, optimum.joulesPerKg());
    // The price of a second is V² r'(V).
    double price = held * held * (0.0004 + 0.00012 * held);
    assertThat(bound.wattsPerKg()).isBetween(0.9 * price, 1.1 * price);
  }

  static RelaxedLeg level(double metres) {
    return new RelaxedLeg(
        0,
        metres,
        0,
        0,
        new RunningResistance(0.015, 0.0004, 0.00006),
        new PiecewiseLinear(new double[] {0, 1}, new double[2]),
        new FallingForce(60, (low, high) -> LevelOptimum.effortN(low)),
        new FallingForce(60, (low, high) -> 0.7),
        List.of(new RelaxedLeg.Cap(metres, 40)));
  }
}
