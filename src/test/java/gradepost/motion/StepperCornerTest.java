package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeSystem;
import gradepost.stock.ConstantResistance;
import gradepost.stock.EffortPoint;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Notch;
import gradepost.stock.Stock;
import gradepost.units.Force;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The stepper where something happens within a step. */
class StepperCornerTest {
  private static Track track(double... placeThenHeight) {
    double[] x = new double[placeThenHeight.length / 2];
    double[] y = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = placeThenHeight[2 * i];
      y[i] = placeThenHeight[2 * i + 1];
    }
    return new Track(new PiecewiseLinear(x, y), List.of());
  }

  private static Textbook longTrain() {
    Textbook train = Textbook.empty().resistance(new ConstantResistance(10));
    for (int i = 0; i < 10; i++) {
      train.vehicle(40, 0.05, 20, 0);
    }
    return train;
  }

  /** Speed where the train weighs evenly on both sides, found by places close together. */
  private static double turned(Stepper stepper, boolean highest) {
    stepper.place(0, 700, 15);
    double best = highest ? 0 : 100;
    for (double at = 700.05; at < 1400; at += 0.05) {
      stepper.advance(new StopConditions().place(at));
      double v = stepper.speedMps();
      best = highest ? Math.max(best, v) : Math.min(best, v);
    }
    return best;
  }

  @Test
  void a_speed_that_is_met_only_where_it_turns_is_met() {
    Stepper valley = longTrain().on(track(0, 10, 1000, 0, 2000, 10));
    double most = turned(valley, true);
    Stepper summit = longTrain().on(track(0, 0, 1000, 5, 2000, 0));
    double least = turned(summit, false);
    for (double by : new double[] {1e-6, 1e-4, 1e-2}) {
      valley.place(0, 700, 15);
      assertThat(valley.advance(new StopConditions().place(1400).speedUp(most - by)))
          .isEqualTo(StopReason.SPEED_UP);
      assertThat(valley.accelerationMps2()).isPositive();
      summit.place(0, 700, 15);
      assertThat(summit.advance(new StopConditions().place(1400).speedDown(least + by)))
          .isEqualTo(StopReason.SPEED_DOWN);
      assertThat(summit.accelerationMps2()).isNegative();
    }
    valley.place(0, 700, 15);
    assertThat(valley.advance(new StopConditions().place(1400).speedUp(most + 1e-4)))
        .isEqualTo(StopReason.PLACE);
  }

  /** A brake that is let off brings the train to the corner sooner than it seemed. */
  @Test
  void a_corner_of_the_track_is_not_overrun() {
    Textbook train =
        Textbook.empty()
            .vehicle(40, 0.05, 15, 0)
            .brake(1.2)
            .action(new BrakeAction.Simultaneous(new Span(0)), 12);
    TrainBrake rig = train.rig();
    Track track = track(0, 0, 380, 0, 2000, 50);
    for (double at = 300; at < 370; at += 3.7) {
      double[] ends = new double[2];
      for (int i = 0; i < 2; i++) {
        Stepper stepper = train.on(track);
        stepper.place(0, 0, 30);
        stepper.brake(rig, Textbook.FULL_PA);
        stepper.advance(new StopConditions().place(at));
        stepper.brake(rig, 0);
        for (double leg = at + 0.25; i == 1 && leg < 500; leg += 0.25) {
          stepper.advance(new StopConditions().place(leg));
        }
        stepper.advance(new StopConditions().place(500));
        ends[i] = stepper.speedMps();
      }
      assertThat(ends[0]).as("from %f", at).isCloseTo(ends[1], within(1e-5));
    }
  }

  /** A notch whose effort ends above nothing falls off within a hair of speed. */
  @Test
  void a_train_that_slows_from_a_corner_of_its_effort_meets_the_piece_below() {
    Notch notch =
        new Notch(
            "cut",
            List.of(
                new EffortPoint(new Speed(0), new Force(20_000)),
                new EffortPoint(new Speed(10), new Force(20_000))));
    Textbook train = Textbook.train(100, 0).power(List.of(notch));
    Stepper stepper = train.onGradient(40);
    stepper.place(0, 0, 10);
    stepper.power(0);
    stepper.advance(new StopConditions().time(0.5));
    double slows = 0.04 * 9.80665 - 0.2;
    assertThat(stepper.speedMps()).isCloseTo(10 - 0.5 * slows, within(1e-9));
    stepper = train.onGradient(0);
    stepper.place(0, 0, 10);
    stepper.power(0);
    stepper.advance(new StopConditions().time(60));
    assertThat(stepper.speedMps()).isBetween(10.0, 10.011);
  }

  @Test
  void isolated_vehicles_are_whole_ones_from_the_front() {
    Textbook textbook = longTrain();
    Stock stock = textbook.stock();
    Formation formation = stock.formations().get(0);
    double[] shares = {0, 0.01, 0.1, 0.11, 0.25};
    int[] isolated = {0, 1, 1, 2, 3};
    BrakeSystem system = stock.service();
    for (int k = 0; k < shares.length; k++) {
      TrainBrake rig =
          TrainBrake.of(stock, formation, LoadCase.TARE, textbook.train(), system, 1, shares[k]);
      for (int i = 0; i < 10; i++) {
        assertThat(rig.gainNPerPa()[i] == 0).isEqualTo(i < isolated[k]);
      }
    }
  }

  @Test
  void a_leg_whose_end_is_already_met_does_not_begin() {
    Stepper stepper = longTrain().onGradient(0);
    stepper.place(5, 100, 10);
    assertThat(stepper.advance(new StopConditions().place(100))).isEqualTo(StopReason.PLACE);
    assertThat(stepper.advance(new StopConditions().time(5))).isEqualTo(StopReason.TIME);
    assertThat(stepper.advance(new StopConditions().speedUp(10))).isEqualTo(StopReason.SPEED_UP);
    assertThat(stepper.advance(new StopConditions().speedDown(10)))
        .isEqualTo(StopReason.SPEED_DOWN);
    assertThat(stepper.timeS()).isEqualTo(5);
    assertThat(stepper.atM()).isEqualTo(100);
  }
}
