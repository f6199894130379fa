package gradepost.drive.grid;

import gradepost.drive.brake.Pressures;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.route.BrakeTestPlace;
import gradepost.route.Path;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A running brake test as places and speeds of one run: the speed at its place, what is asked of
 * the brake and for how long, from where power is off for it, and how fast a train that coasts to
 * it may be before. It is a fixed application where the run passes the place, and not a target: it
 * ends at no place and at no speed, and whatever comes of it is what the run goes on with.
 */
public final class RunningTest {
  /** So long before power has to be off, power may be taken for the speed of the test, s. */
  private static final double RUN_UP_S = 40;

  private final BrakeTestPlace place;
  private final double atM;
  private final double aimMps;
  private final double withinMps;
  private final double pressurePa;
  private final double heldS;
  private final double offM;
  private final double overM;
  private final double dragN;
  private final CoastCurve fastest;
  private final CoastCurve slowest;
  private final CoastCurve least;

  /** At another place than the route has it, on the print grid. */
  public RunningTest(
      Assignment assignment, TrainModels bench, BrakeTestPlace place, double otherM) {
    Path path = assignment.path();
    this.place = place;
    this.atM = path.printedAtOrBefore(otherM);
    this.aimMps = place.speed().metresPerSecond();
    this.withinMps = assignment.policy().practice().line().testWithin().metresPerSecond();
    this.pressurePa =
        Pressures.asked(
            assignment.stock().service(),
            assignment.policy().stopping().first().pascals(),
            assignment.route().units().pressureStepPa());
    this.heldS = assignment.policy().practice().line().testHeld().seconds();
    double coastS = assignment.policy().run().coastBeforeBraking().seconds();
    this.offM = path.printedAtOrBefore(Math.max(0, atM - mostMps() * coastS));
    double mostMps = assignment.stock().maximum().metresPerSecond();
    this.fastest = new CoastCurve(bench, atM, aimMps, mostMps);
    this.slowest = new CoastCurve(bench, atM, aimMps - 0.75 * withinMps, mostMps);
    this.least = new CoastCurve(bench, atM, leastMps(), mostMps);
    Stepper stepper = bench.plannedStepper();
    made(stepper, bench, mostMps());
    this.overM = path.printedAtOrAfter(Math.min(stepper.atM(), path.lengthM()));
    this.dragN = dragN(stepper, bench);
  }

  /** Those of this direction at their places on a run from one place to another, in order. */
  public static List<RunningTest> of(
      Assignment assignment, TrainModels bench, double fromM, double toM) {
    List<RunningTest> tests = new ArrayList<>();
    for (BrakeTestPlace place : assignment.route().brakeTests()) {
      double at = assignment.path().metresAt(place.location());
      if (place.direction() == assignment.direction() && at > fromM && at < toM) {
        tests.add(new RunningTest(assignment, bench, place, at));
      }
    }
    tests.sort(Comparator.comparingDouble(RunningTest::atM));
    return tests;
  }

  /** The test at a speed at its place, until the brake is off again; leaves the stepper there. */
  private void made(Stepper stepper, TrainModels bench, double mps) {
    StopConditions until = new StopConditions();
    stepper.place(0, atM, mps);
    stepper.brake(bench.slowing(), pressurePa);
    stepper.advance(until.time(heldS));
    stepper.brake(bench.slowing(), 0);
    for (int s = 0; s < 60 && !stepper.brakeOff(); s++) {
      stepper.advance(until.clear().time(stepper.timeS() + 1));
    }
  }

  /** What it takes from the train, as a force from its place to where it is over. */
  private double dragN(Stepper stepper, TrainModels bench) {
    StopConditions there = new StopConditions().place(overM);
    stepper.place(0, atM, aimMps);
    boolean coasts = stepper.advance(there) == StopReason.PLACE;
    double coastedMps = stepper.speedMps();
    made(stepper, bench, aimMps);
    boolean rolls = stepper.advance(there.clear().place(overM)) == StopReason.PLACE;
    double testedMps = rolls ? stepper.speedMps() : 0;
    double kg = bench.plannedTrain().inertiaKg();
    return coasts && overM > atM
        ? kg * (coastedMps * coastedMps - testedMps * testedMps) / 2 / (overM - atM)
        : 0;
  }

  /** What the route says of it. */
  public BrakeTestPlace place() {
    return place;
  }

  /** Where the brake goes on, on the print grid, metres run. */
  public double atM() {
    return atM;
  }

  /** The speed of the test, metres a second. */
  public double aimMps() {
    return aimMps;
  }

  /** It is not made slower than this, metres a second. */
  public double leastMps() {
    return aimMps - withinMps;
  }

  /** It is not made faster than this, metres a second. */
  public double mostMps() {
    return aimMps + withinMps;
  }

  /** Cylinder pressure that is asked for, pascals. */
  public double pressurePa() {
    return pressurePa;
  }

  /** How long it is held, seconds. */
  public double heldS() {
    return heldS;
  }

  /** From here on power is off for it, metres run. */
  public double offM() {
    return offM;
  }

  /** The brake is off again by here, metres run. */
  public double overM() {
    return overM;
  }

  /** What it takes from the train, as an even force from its place to where it is over, newtons. */
  double dragN() {
    return dragN;
  }

  /** Where power may be taken for its speed, metres run. */
  double runUpM() {
    return Math.max(0, offM - RUN_UP_S * aimMps);
  }

  /** From this speed here the train coasts to the test; infinite where the test is not near. */
  double coastsFromMps(double placeM) {
    return placeM <= atM ? fastest.mps(placeM) : Double.POSITIVE_INFINITY;
  }

  /**
   * Slower than this here, it would be rather slow there if it coasted; 0 where it is not near.
   *
   * @param powerMps how fast it may be here under power: where even that is too slow, 0
   */
  double neededMps(double placeM, double powerMps) {
    boolean near = placeM >= runUpM() && placeM < offM;
    double mps = near && least.mps(placeM) < powerMps ? slowest.mps(placeM) : 0;
    return mps < Double.POSITIVE_INFINITY ? mps : 0;
  }
}
