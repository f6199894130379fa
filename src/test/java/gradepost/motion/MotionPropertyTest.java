package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.route.Path;
import gradepost.route.Stretch;
import gradepost.route.place.Direction;
import gradepost.stock.BrakeAction;
import gradepost.stock.ConstantResistance;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.NoCurveResistance;
import gradepost.stock.law.RocklCurveResistance;
import gradepost.stock.law.ShareOf;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every route and train. */
class MotionPropertyTest {
  private static final double ROUNDING_M = 1e-4;

  static LongStream seeds() {
    return LongStream.rangeClosed(300, 340);
  }

  private static Stepper stepper(
      Scenario in, Track track, AdhesionLaw adhesion, LowAdhesionRail poor) {
    Train train = in.train();
    PiecewiseLinear force =
        TrackForce.of(track, train, in.stock.curves(), in.stock.checkRailDragNPerKn());
    return new Stepper(train, train.resistance(), force, adhesion, poor);
  }

  /** Where a full application from this speed ends; far away where the gradient beats it. */
  private static double stop(Stepper stepper, Scenario in) {
    stepper.place(0, 4000, 20);
    TrainBrake rig = in.rig();
    stepper.brake(rig, rig.fullPa());
    stepper.advance(new StopConditions().place(200_000));
    return stepper.atM();
  }

  private static Track tilted(Track track, double permille) {
    PiecewiseLinear line = track.elevation();
    double[] x = new double[line.knots()];
    double[] y = new double[line.knots()];
    for (int i = 0; i < x.length; i++) {
      x[i] = line.x(i);
      y[i] = line.y(i) + permille / 1000 * line.x(i);
    }
    return new Track(new PiecewiseLinear(x, y), track.curves());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void a_steeper_fall_never_stops_sooner(long seed) {
    Scenario in = new Scenario(seed);
    double last = 0;
    for (double less = 4; less >= -12; less -= 4) {
      double at = stop(stepper(in, tilted(in.track(), less), in.adhesion, in.poorRail()), in);
      assertThat(at).isGreaterThan(last - ROUNDING_M);
      last = at;
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void less_adhesion_never_stops_sooner(long seed) {
    Scenario in = new Scenario(seed);
    double last = 0;
    for (double share = 1; share > 0.1; share *= 0.7) {
      ShareOf law = new ShareOf(in.adhesion, share);
      double at = stop(stepper(in, in.track(), law, LowAdhesionRail.none()), in);
      assertThat(at).isGreaterThan(last - ROUNDING_M);
      last = at;
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void a_poor_stretch_never_stops_a_train_sooner_and_a_longer_one_less_so(long seed) {
    Scenario in = new Scenario(seed);
    double last = stop(stepper(in, in.track(), in.adhesion, LowAdhesionRail.none()), in);
    for (double length = 50; length < 500; length *= 2) {
      LowAdhesionRail poor =
          new LowAdhesionRail(
              new ConstantAdhesion(0.02), List.of(new Stretch(4010, 4010 + length)));
      double at = stop(stepper(in, in.track(), in.adhesion, poor), in);
      assertThat(at).isGreaterThan(last - ROUNDING_M);
      last = at;
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void isolated_vehicles_and_a_lower_factor_never_stop_sooner(long seed) {
    Scenario in = new Scenario(seed);
    double last = 0;
    for (double share = 0; share < 0.9; share += 0.2) {
      TrainBrake rig =
          TrainBrake.of(
              in.stock,
              in.formation,
              in.load,
              in.train(),
              in.stock.service(),
              1 - share / 4,
              share);
      Stepper stepper = in.stepper();
      stepper.place(0, 4000, 20);
      stepper.brake(rig, rig.fullPa());
      stepper.advance(new StopConditions().place(200_000));
      assertThat(stepper.atM()).isGreaterThan(last - ROUNDING_M);
      last = stepper.atM();
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void splitting_gradients_changes_nothing(long seed) {
    Scenario in = new Scenario(seed);
    PiecewiseLinear line = in.track().elevation();
    double[] x = new double[2 * line.knots() - 1];
    double[] y = new double[x.length];
    for (int i = 0; i < line.knots(); i++) {
      x[2 * i] = line.x(i);
      y[2 * i] = line.y(i);
      if (i + 1 < line.knots()) {
        x[2 * i + 1] = (line.x(i) + line.x(i + 1)) / 2;
        y[2 * i + 1] = line.at(x[2 * i + 1]);
      }
    }
    Track split = new Track(new PiecewiseLinear(x, y), in.track().curves());
    assertThat(stop(stepper(in, split, in.adhesion, in.poorRail()), in))
        .isCloseTo(stop(in.stepper(), in), within(ROUNDING_M));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void a_route_reversed_twice_is_the_same(long seed) {
    Scenario in = new Scenario(seed);
    Path down = new Path(in.route(), Direction.FORWARD);
    Path up = new Path(in.route(), Direction.FORWARD.opposite());
    Track there = Track.of(down);
    Track back = Track.of(up);
    double length = down.lengthM();
    assertThat(up.lengthM()).isEqualTo(length);
    for (double at = 0; at <= length; at += 137.7) {
      double again = length - up.metresAt(down.locationAt(at));
      assertThat(again).isCloseTo(at, within(1e-6));
      double rise = there.elevation().at(at) - there.elevation().at(0);
      double same = back.elevation().at(length - at) - back.elevation().at(length);
      assertThat(same).isCloseTo(rise, within(1e-6));
    }
    assertThat(back.curves()).hasSameSizeAs(there.curves());
    assertThat(in.formation.reversed().reversed()).isEqualTo(in.formation);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void a_check_railed_curve_never_runs_easier(long seed) {
    Scenario in = new Scenario(seed);
    Train train = in.train();
    for (CurvePiece curve : in.curves) {
      double[] plainN = new double[2];
      for (int i = 0; i < 2; i++) {
        CurvePiece same = new CurvePiece(curve.fromM(), curve.toM(), curve.radiusM(), i == 1);
        Track track = new Track(Textbook.gradient(0).elevation(), List.of(same));
        PiecewiseLinear force =
            TrackForce.of(track, train, new RocklCurveResistance(), in.stock.checkRailDragNPerKn());
        plainN[i] = force.at((curve.fromM() + curve.toM()) / 2);
      }
      // Encyclopaedia Britannica 1911: a check rail adds to the resistance of a curve.
      assertThat(plainN[0]).isPositive();
      assertThat(plainN[1]).isGreaterThanOrEqualTo(plainN[0]);
    }
  }

  private static Textbook cars(int cars) {
    Textbook train = Textbook.empty().brake(0.8).resistance(new ConstantResistance(30));
    for (int i = 0; i < cars; i++) {
      train.vehicle(40, 0.1, 20, 1);
    }
    return train;
  }

  @Test
  void an_electro_pneumatic_brake_has_no_delay_along_the_train() {
    double first = 0;
    for (int cars : new int[] {1, 4, 8, 12}) {
      Textbook train = cars(cars).action(new BrakeAction.Simultaneous(new Span(0.4)), 2);
      Stepper stepper = train.onGradient(-5);
      stepper.place(0, 0, 25);
      stepper.brake(train.rig(), Textbook.FULL_PA);
      stepper.advance(new StopConditions());
      first = cars == 1 ? stepper.atM() : first;
      assertThat(stepper.atM()).isCloseTo(first, within(ROUNDING_M));
    }
  }

  /**
   * On level track each vehicle brakes {@code x/c} later, x being the pipe as far as its middle:
   * the mean delay of the train costs its speed times that delay. Derived, exact while the brake is
   * not full before the last one answers. By hand: vehicles of 20 m and 200 m/s make 0.05 s for the
   * first, then 0.1 s for each; eight vehicles lose 0.4 s on average, 0.32 m/s at 0.8 m/s².
   */
  @Test
  void an_automatic_brake_answers_after_its_distance_over_the_speed_of_propagation() {
    for (int cars : new int[] {2, 8, 12}) {
      BrakeAction along = new BrakeAction.Propagated(new Span(0.4), new Speed(200));
      Textbook train = cars(cars).resistance(new ConstantResistance(0)).action(along, 1e-6);
      Stepper stepper = train.onGradient(0);
      stepper.place(0, 0, 25);
      stepper.brake(train.rig(), Textbook.FULL_PA);
      double meanDelay = 0;
      for (int i = 0; i < cars; i++) {
        double delay = (i * 20 + 10) / 200.0;
        assertThat(train.rig().delayS()[i]).isCloseTo(delay, within(1e-12));
        meanDelay += delay / cars;
      }
      double lastS = 0.05 + (cars - 1) * 0.1;
      stepper.advance(new StopConditions().time(0.4 + lastS));
      double lost = 0.8 * (lastS - meanDelay);
      assertThat(stepper.speedMps()).isCloseTo(25 - lost, within(1e-5));
    }
  }

  @Test
  void a_longer_train_never_clears_sooner() {
    for (double permille : new double[] {-10, 0, 8}) {
      double last = 0;
      for (int cars = 1; cars <= 12; cars++) {
        Textbook train = cars(cars).effort(30_000);
        Stepper stepper = train.onGradient(permille);
        stepper.place(0, 0, 5);
        stepper.power(0);
        stepper.advance(new StopConditions().place(800 + train.train().totalLengthM()));
        assertThat(stepper.timeS()).isGreaterThan(last);
        last = stepper.timeS();
      }
    }
  }

  @Test
  void a_stall_and_a_speed_never_reached_are_named() {
    Textbook train = cars(2).effort(9_000);
    Stepper stepper = train.onGradient(30);
    stepper.place(0, 0, 10);
    stepper.power(0);
    assertThat(stepper.advance(new StopConditions().place(5000))).isEqualTo(StopReason.STANDSTILL);
    assertThat(stepper.speedMps()).isZero();
    Stepper balanced =
        new Stepper(
            train.train(),
            new gradepost.stock.RunningResistance(0, 600, 0),
            TrackForce.of(Textbook.gradient(0), train.train(), new NoCurveResistance(), 0),
            new ConstantAdhesion(1));
    balanced.place(0, 0, 10);
    balanced.power(0);
    assertThat(balanced.advance(new StopConditions().speedUp(31))).isEqualTo(StopReason.NEVER);
    assertThat(balanced.speedMps()).isCloseTo(30, within(1e-3));
  }

  @Test
  void the_same_run_twice_gives_the_same_bits() {
    Scenario in = new Scenario(77);
    assertThat(stop(in.stepper(), in)).isEqualTo(stop(in.stepper(), in));
  }
}
