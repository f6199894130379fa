package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.RotatingMass;
import gradepost.stock.Stock;
import gradepost.stock.Vehicle;
import gradepost.stock.law.NoCurveResistance;
import gradepost.units.Length;
import gradepost.units.Mass;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Validation, derived: the rotating parts of a train weigh the same whatever its load.
 *
 * <pre>
 * A vehicle of 40 t empty and 60 t crush, rotating 10 % of tare = 4 t: 44 t and 64 t to slow.
 * Brake 0.8 m/s² empty, at once: 44 × 0.8 = 35.2 kN.
 *   Crush, the force as it is:     35.2/64 = 0.5500 m/s², from 20 m/s 400/(2 × 0.55) = 363.64 m
 *   Crush, the force by the load:  64 × 0.8 = 51.2 kN; down 20 ‰, 60 × 9.80665 × 0.02 = 11.768 kN
 *     against it: (51.2 − 11.768)/64 = 0.61613 m/s², 400/(2 × 0.61613) = 324.61 m
 * With 10 % of the load as well it was 66 t: (52.8 − 11.768)/66 = 0.62170, 321.70 m, 0.9 % short.
 * </pre>
 */
class RotatingMassTest {
  private static final RotatingMass SHARE = new RotatingMass.ShareOfTare(0.1);
  private static final RotatingMass MASS = new RotatingMass.Stated(Mass.ofTonnes(4));

  @Test
  void loadAddsNothingToTheRotatingParts() {
    for (RotatingMass rotating : new RotatingMass[] {SHARE, MASS}) {
      Stock stock = train(rotating).stock();
      Formation one = stock.formations().get(0);
      assertThat(Train.of(stock, one, LoadCase.TARE).inertiaKg()).isCloseTo(44e3, within(1e-6));
      assertThat(Train.of(stock, one, LoadCase.CRUSH).inertiaKg()).isCloseTo(64e3, within(1e-6));
    }
  }

  @Test
  void aBrakeThatIsTheSameUnderEveryLoad() {
    assertThat(crushStopM(train(SHARE), 0)).isCloseTo(363.64, within(0.01));
    assertThat(crushStopM(train(MASS), 0)).isCloseTo(363.64, within(0.01));
  }

  @Test
  void aBrakeThatFollowsTheLoadDownAGradient() {
    assertThat(crushStopM(train(SHARE).loadCompensated(), -20)).isCloseTo(324.61, within(0.01));
    assertThat(crushStopM(train(MASS).loadCompensated(), -20)).isCloseTo(324.61, within(0.01));
  }

  private static Textbook train(RotatingMass rotating) {
    return Textbook.empty()
        .vehicle(
            new Vehicle(
                "V",
                new Length(1),
                Mass.ofTonnes(40),
                Mass.ofTonnes(50),
                Mass.ofTonnes(60),
                4,
                1,
                rotating,
                1,
                Optional.empty()))
        .brake(0.8);
  }

  private static double crushStopM(Textbook textbook, double permille) {
    Stock stock = textbook.stock();
    Formation formation = stock.formations().get(0);
    Train train = Train.of(stock, formation, LoadCase.CRUSH);
    Stepper stepper =
        new Stepper(
            train,
            train.resistance(),
            TrackForce.of(Textbook.gradient(permille), train, new NoCurveResistance(), 0),
            new gradepost.stock.law.ConstantAdhesion(1));
    stepper.place(0, 0, 20);
    TrainBrake rig = TrainBrake.of(stock, formation, LoadCase.CRUSH, train, stock.service(), 1, 0);
    stepper.brake(rig, Textbook.FULL_PA);
    stepper.advance(new StopConditions());
    return stepper.atM();
  }
}
