package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.law.NoCurveResistance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Property: kinetic energy changes by the work of the forces, and gravity's work is by height. */
class EnergyTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144, 233})
  void the_works_of_all_forces_close(long seed) {
    Scenario scenario = new Scenario(seed);
    Stepper stepper = scenario.stepper();
    Work work = new Work();
    stepper.count(work);
    stepper.place(0, 900, 12);
    stepper.power(2);
    stepper.advance(new StopConditions().place(3500));
    stepper.shutOff();
    stepper.advance(new StopConditions().place(4200));
    TrainBrake rig = scenario.rig();
    stepper.brake(rig, 0.7 * rig.fullPa());
    stepper.advance(new StopConditions().time(stepper.timeS() + 9));
    stepper.brake(rig, 0.3 * rig.fullPa());
    stepper.advance(new StopConditions().time(stepper.timeS() + 9));
    stepper.brake(rig, rig.fullPa());
    stepper.advance(new StopConditions().place(9000));
    double inertia = scenario.train().inertiaKg();
    double v = stepper.speedMps();
    double gained = inertia * (v * v - 12 * 12) / 2;
    double done = work.tractionJ() + work.brakeJ() + work.resistanceJ() + work.trackJ();
    double turned =
        Math.abs(work.tractionJ())
            + Math.abs(work.brakeJ())
            + Math.abs(work.resistanceJ())
            + Math.abs(work.trackJ());
    assertThat(Math.abs(done - gained) / turned).isLessThan(1e-6);
    assertThat(work.tractionJ()).isPositive();
    assertThat(work.brakeJ()).isNegative();
    assertThat(work.resistanceJ()).isNegative();
  }

  @ParameterizedTest
  @ValueSource(longs = {4, 9, 16, 25})
  void gravity_works_by_the_height_under_each_vehicle(long seed) {
    Scenario scenario = new Scenario(seed);
    Train train = scenario.train();
    Track track = new Track(scenario.track().elevation(), java.util.List.of());
    Stepper stepper =
        new Stepper(
            train,
            train.resistance(),
            TrackForce.of(track, train, new NoCurveResistance(), 0),
            scenario.adhesion);
    Work work = new Work();
    stepper.count(work);
    stepper.place(0, 2000, 25);
    stepper.advance(new StopConditions().place(2700));
    double lifted = 0;
    double rear = 0;
    for (int i = 0; i < train.vehicles(); i++) {
      double length = train.lengthM()[i];
      double height =
          meanHeight(track, stepper.atM() - rear, length) - meanHeight(track, 2000 - rear, length);
      lifted += train.massKg()[i] * 9.80665 * height;
      rear += length;
    }
    assertThat(-work.trackJ()).isCloseTo(lifted, within(1e-5 * Math.abs(lifted) + 10));
  }

  private static double meanHeight(Track track, double front, double length) {
    double sum = 0;
    int parts = 2000;
    for (int i = 0; i < parts; i++) {
      sum += track.elevation().at(front - (i + 0.5) * length / parts);
    }
    return sum / parts;
  }
}
