package gradepost.app.export;

import gradepost.motion.CurvePiece;
import gradepost.motion.TrainBrake;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Plan;
import gradepost.plan.Sightings;
import gradepost.plan.Trace;
import gradepost.policy.Policy;
import gradepost.route.JunctionRoute;
import gradepost.route.Signal;
import gradepost.route.Stretch;
import gradepost.stock.BrakeSystem;
import gradepost.stock.FailureSign;
import gradepost.stock.LeavingTest;
import gradepost.stock.LoadCase;
import gradepost.stock.RunningResistance;
import gradepost.stock.law.CurveResistance;
import gradepost.task.Call;
import gradepost.task.CeilingStep;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A hand-over as it is written, component by component. Distances are run by the front of the train
 * from the start of its path, metres; each name carries its unit.
 *
 * @param gradepost what kind of file it is
 * @param units in which everything is printed
 * @param lineside what a driver can tell a place by, in order of travel
 * @param lowAdhesionSites where the law of a site holds, in the states of the rail that have one
 * @param signals each stop signal on the way, at danger
 * @param brakeTests each running brake test on the way
 * @param gaps in the conductor rail, over which no power is taken
 */
record HandOverFile(
    String gradepost,
    int version,
    String fingerprint,
    Units units,
    Assigned assignment,
    Ground track,
    List<Sightings.Sighting> lineside,
    List<CeilingStep> ceiling,
    Trains train,
    List<Stretch> lowAdhesionSites,
    Policy policy,
    Driven plan,
    List<Approach> approaches,
    List<AtDanger> signals,
    List<RunningTest> brakeTests,
    List<Gap> gaps) {

  /** The steps of everything that is printed: no place, length, speed or pressure is finer. */
  record Units(
      UnitStyle style, double placeM, double lengthM, double speedMps, double pressurePa) {}

  /** What is to be driven. */
  record Assigned(
      String route,
      String direction,
      Set<String> lines,
      Map<String, JunctionRoute> junctionRoutes,
      String formation,
      LoadCase load,
      List<Call> calls,
      List<TemporaryRestriction> temporaryRestrictions,
      Optional<EditionOfRun> edition) {}

  /**
   * What is special in the run of an edition.
   *
   * @param serviceOutOn vehicles on which the service brake does not work, from the front
   * @param isolated vehicles whose brake is isolated, from the front
   */
  record EditionOfRun(
      String name,
      String brake,
      List<Integer> serviceOutOn,
      List<Integer> isolated,
      String clause,
      String to,
      double atMostMps) {}

  /** The track as the train feels it. */
  record Ground(
      double lengthM,
      List<Section> sections,
      List<Height> elevation,
      List<CurvePiece> curves,
      double freeFallMps2) {}

  /** A section of the path: where it begins and ends by distance run, and what is signed there. */
  record Section(
      String section, double fromM, double toM, double mileageFromM, double mileageToM) {}

  /** A knot of the elevation. */
  record Height(double atM, double elevationM) {}

  /** The train as planned, and as it is counted on. */
  record Trains(
      Loaded planned,
      Loaded safeSide,
      boolean safeSideCountsRunningAndCurveResistance,
      CurveResistance curveLaw,
      double checkRailDragNPerKn,
      double timePerNotchS,
      boolean notchingDown,
      List<BrakeSystem> brakeSystems,
      List<LeavingTest> beforeLeaving,
      List<FailureSign> signsOfFailure) {}

  /**
   * A train with its load.
   *
   * @param motoredVehicleKg mass on driven axles of each vehicle; those with any have the
   *     collectors, at both ends
   */
  @SuppressWarnings("ArrayRecordComponent") // written once, never compared
  record Loaded(
      LoadCase load,
      double[] massKg,
      double[] lengthM,
      double[] valveM,
      double inertiaKg,
      double motoredKg,
      double[] motoredVehicleKg,
      RunningResistance resistance,
      Map<String, List<Effort>> effort,
      Map<String, TrainBrake> brakes) {}

  /** A reading of the whole train's tractive effort. */
  record Effort(double speedMps, double effortN) {}

  /** The run. */
  record Driven(
      double runningTimeS,
      Plan.Cost fastest,
      double energyJ,
      int handleMovements,
      List<Action> actions,
      Trace trace) {}

  /**
   * A stop signal, and whether the train stands short of it from where its caution is told.
   *
   * @param standM where the train is to stand
   * @param cautionAt the signal that shows caution for it; left out where the data have none
   * @param warnedM where the driver is told
   * @param ceilingMps permissible speed there
   * @param brakingM where the planned technique begins; left out where it would be too late
   * @param technique that technique, power off since the warning; none where it would be too late,
   *     or the train stands before
   */
  record AtDanger(
      String signal,
      Signal.Kind signalKind,
      double signalM,
      double standM,
      Optional<String> cautionAt,
      double warnedM,
      double plannedMps,
      double ceilingMps,
      Optional<Double> brakingM,
      List<Action> technique,
      List<Need> needs) {}

  /**
   * What a brake needs from the permissible speed to a stand, applied fully, on the safe side.
   *
   * @param needM left out where the gradient beats the brake
   */
  record Need(String brake, Optional<Double> needM) {}

  /**
   * A running brake test: what is done at which speed, and what it shows. The run makes it unless
   * {@code noRoom} says why not; then it shows what a train would that makes it at its speed.
   */
  record RunningTest(
      double atM,
      double testMps,
      double plannedMps,
      double pressurePa,
      double heldS,
      double speedAfterMps,
      double decelerationMps2,
      double endM,
      Optional<NoRoom> noRoom) {}

  /**
   * Why a running brake test is not in the plan.
   *
   * @param is the speed at its place, or a time, as the reason has it; else 0
   * @param insteadM the next place of the leg with room; left out where none was found
   * @param insteadMps the speed there of a run that makes it there
   */
  record NoRoom(
      BrakeTest.NoRoom.Reason reason,
      double is,
      Optional<Double> insteadM,
      Optional<Double> insteadMps) {}

  /** A gap in the conductor rail. */
  record Gap(String name, double fromM, double toM) {}
}
