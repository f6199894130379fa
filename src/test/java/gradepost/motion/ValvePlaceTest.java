package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.BrakeAction;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.units.Length;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Validation. The rule: an application runs from the front of the train along the pipe; a vehicle
 * answers when it has come to its valve, which is in its middle unless the data say where. A
 * vehicle may stand either way round; of both places the one further from the front counts.
 *
 * <p>By hand, at 240 m/s, for vehicles of 20, 16 and 24 m, the valve of the second stated 12 m from
 * an end and that of the third 2 m: pipe 10, 20 + 12 = 32 and 36 + 22 = 58 m, so 1/24, 32/240 and
 * 58/240 s. The other way round 22, 24 + 12 = 36 and 40 + 10 = 50 m.
 */
class ValvePlaceTest {
  private static final Textbook TRAIN =
      Textbook.empty()
          .vehicle(40, 0, 20, 0.5)
          .vehicle(30, 0, 16, 0, Optional.of(new Length(12)))
          .vehicle(50, 0, 24, 0, Optional.of(new Length(2)))
          .action(new BrakeAction.Propagated(new Span(0.5), new Speed(240)), 3);

  @Test
  void aVehicleAnswersWhenTheApplicationHasComeToItsValve() {
    assertThat(delays(TRAIN.stock().formations().get(0)))
        .containsExactly(new double[] {10 / 240.0, 32 / 240.0, 58 / 240.0}, within(1e-12));
  }

  @Test
  void theOtherEndLeadsAsLate() {
    assertThat(delays(TRAIN.stock().formations().get(0).reversed()))
        .containsExactly(new double[] {22 / 240.0, 36 / 240.0, 50 / 240.0}, within(1e-12));
  }

  /** Derived: at 30 m/s each tenth of a second that a whole train answers later is 3 m. */
  @Test
  void aStopIsLongerByTheWayToTheMiddle() {
    Textbook wire = oneVehicle(new BrakeAction.Simultaneous(new Span(0.5)));
    Textbook pipe = oneVehicle(new BrakeAction.Propagated(new Span(0.5), new Speed(120)));
    assertThat(stopM(pipe) - stopM(wire)).isCloseTo(30 * 12 / 120.0, within(0.001));
  }

  private static Textbook oneVehicle(BrakeAction action) {
    return Textbook.empty().vehicle(40, 0, 24, 1).action(action, 2);
  }

  private static double stopM(Textbook train) {
    Stepper stepper = train.onGradient(0);
    stepper.place(0, 0, 30);
    stepper.brake(train.rig(), Textbook.FULL_PA);
    stepper.advance(new StopConditions());
    return stepper.atM();
  }

  private static double[] delays(Formation formation) {
    Stock stock = TRAIN.stock();
    Train train = Train.of(stock, formation, LoadCase.TARE);
    return TrainBrake.of(stock, formation, LoadCase.TARE, train, stock.service(), 1, 0).delayS();
  }
}
