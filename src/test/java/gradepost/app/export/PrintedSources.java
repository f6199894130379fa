package gradepost.app.export;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * From which fields of a hand-over each kind of printed figure is worked out, and which tests do
 * it: as printed {@link PrintedFromHandOverTest}, as driven those that are named.
 */
final class PrintedSources {
  /**
   * One kind.
   *
   * @param fields of the file; lists are passed through
   * @param judges the tests that work out with a solver of their own what stands in the fields
   */
  record Source(String figure, List<String> fields, Set<Class<?>> judges) {}

  private static final Set<Class<?>> RUN = Set.of(WholeRunOracleTest.class);
  private static final Set<Class<?>> BRAKING = Set.of(HandOverOracleTest.class);
  private static final Set<Class<?>> RAILS = Set.of(RailTechniqueTest.class);
  private static final Set<Class<?>> ROWS = Set.of(BySpeedOracleTest.class);

  /** Read from the track, the policy or the assignment: nothing has to be driven. */
  private static final Set<Class<?>> GIVEN = Set.of(PrintedFromHandOverTest.class);

  private static final String ACTION = "approaches/actions/";
  private static final String APPLICATION = "approaches/applications/";
  private static final String CASE = APPLICATION + "cases/";
  private static final String ROW = APPLICATION + "bySpeed/";
  private static final String FINDING = "approaches/findings/";

  static final List<Source> ALL =
      List.of(
          of("InstructionSheet.number", GIVEN, "approaches/number"),
          of("InstructionSheet.from", RUN, "approaches/shutOffM", "approaches/fromM"),
          of("InstructionSheet.speed", RUN, "approaches/brakingSpeedMps", "units/speedMps"),
          of("PrintedTarget.at", GIVEN, "approaches/target/atM", "track/sections/mileageFromM"),
          of("PrintedTarget.speed", GIVEN, "approaches/target/speedMps", "ceiling/speedMps"),
          of("PrintedTarget.from", GIVEN, "approaches/target/fromMps", "ceiling/speedMps"),
          of("PrintedTarget.warning", GIVEN, "approaches/target/warningM"),
          of("PrintedTarget.buffers", GIVEN, "approaches/target/buffersM", "units/lengthM"),
          of("PrintedStep.where", RUN, ACTION + "atM", "units/placeM", "track/sections/toM"),
          of("PrintedStep.speed", RUN, ACTION + "speedMps", "train/planned/effort/effortN"),
          of("PrintedStep.sinceLast", RUN, ACTION + "timeS"),
          of("PrintedTrigger.SpeedUpTo.speed", RUN, ACTION + "trigger/speedMps"),
          of("PrintedTrigger.SpeedDownTo.speed", RUN, ACTION + "trigger/speedMps"),
          of("PrintedTrigger.After.time", RUN, ACTION + "trigger/seconds"),
          of("PrintedCommand.Power.notch", RUN, ACTION + "command/notch"),
          of("PrintedCommand.Brake.pressure", RUN, ACTION + "command/pressurePa"),
          of("PrintedCommand.Hold.lower", RUN, ACTION + "command/lowerMps"),
          of("PrintedCommand.Hold.upper", RUN, ACTION + "command/upperMps"),
          of("PrintedCommand.Hold.until", RUN, ACTION + "command/untilM"),
          of("PrintedCommand.InNotch.notch", RUN, ACTION + "command/by/notch"),
          of("PrintedCommand.WithBrake.pressure", RUN, ACTION + "command/by/pressurePa"),
          of("Seen.Thing.past", GIVEN, "lineside/atM", "lineside/lit", "policy/run/landmarkReach"),
          of("Seen.Thing.count", RUN, "lineside/atM", "plan/trace/points/timeS"),
          of("PrintedApplication.line", GIVEN, APPLICATION + "brakingPointM", ACTION + "atM"),
          of("PrintedApplication.forSpeed", GIVEN, APPLICATION + "target/speedMps"),
          of("PrintedApplication.point", BRAKING, APPLICATION + "brakingPointM"),
          of(
              "PrintedApplication.speed",
              BRAKING,
              "approaches/ifFaster/application/brakingSpeedMps"),
          of("PrintedApplication.poorest", GIVEN, "lowAdhesionSites/fromM", CASE + "plannedM"),
          of("PrintedApplication.StepAnswer.atStep", BRAKING, CASE + "answers/speedAtTargetMps"),
          of("PrintedApplication.atBuffers", BRAKING, APPLICATION + "atBuffersMps"),
          of("PrintedCues.computedOn", BRAKING, APPLICATION + "exactBrakingPointM"),
          of("PrintedCues.Backstop.beyond", GIVEN, APPLICATION + "cues/backstopAfterM"),
          of("PrintedCues.Backstop.after", RUN, CASE + "ladder/latest/afterPlannedS"),
          of("PrintedPoint.place", RAILS, CASE + "plannedM", CASE + "actions/atM"),
          of(
              "PrintedPoint.speed",
              RAILS,
              APPLICATION + "brakingSpeedMps",
              CASE + "actions/speedMps"),
          of("PrintedPoint.pastLast", BRAKING, CASE + "ladder/latest/printedM"),
          of("PrintedLatest.At.place", BRAKING, CASE + "ladder/latest/exactM"),
          of("PrintedLatest.At.secondsAfter", RUN, CASE + "ladder/latest/afterPlannedS"),
          of("PrintedAnswer.atTarget", BRAKING, CASE + "answers/askedSpeedMps"),
          of("PrintedAnswer.leftToBuffers", BRAKING, CASE + "answers/met/shortM"),
          of("PrintedEnd.ShortBy.by", BRAKING, CASE + "answers/met/shortM"),
          of("PrintedEnd.PastBy.by", BRAKING, CASE + "answers/met/shortM"),
          of("PrintedProtection.At.place", ROWS, CASE + "protectedM", "policy/noticing/seconds"),
          of("PrintedProtection.At.costs", GIVEN, CASE + "protectedCostS"),
          of("PrintedSpeedRow.speed", ROWS, ROW + "speedMps"),
          of("PrintedSpeedRow.Point.place", ROWS, ROW + "planned/atM", ROW + "poorest/atM"),
          of("PrintedSpeedRow.Planned.most", ROWS, ROW + "planned/actions/command/pressurePa"),
          of("PrintedPassing.speed", RUN, "plan/trace/points/speedMps"),
          of("PrintedPassing.since", RUN, "plan/actions/atM"),
          of("PrintedPassing.sheet", GIVEN, "plan/actions/approach"),
          of("PrintedFaster.most", BRAKING, "approaches/ifFaster/mostMps"),
          of("PrintedSpread.fullShare", GIVEN, "approaches/spread/corrected/fullShare"),
          of("PrintedValue.Place.at", RUN, FINDING + "atM", FINDING + "testM"),
          of("PrintedValue.Speed.speed", RUN, FINDING + "speedMps", FINDING + "fromMps"),
          of("PrintedValue.Pressure.pressure", BRAKING, FINDING + "givesPa"),
          of("PrintedValue.Length.length", GIVEN, FINDING + "distanceM", FINDING + "earlierM"),
          of("PrintedValue.Time.time", RUN, FINDING + "is", FINDING + "rule", FINDING + "afterS"),
          of("PrintedValue.Count.number", RUN, FINDING + "share", FINDING + "is"));

  private static final Set<Class<?>> FIGURES = Set.of(FiguresOracleTest.class);
  private static final String EFFORT = "train/planned/effort/effortN";

  /** Beside the sheets: signals at danger, running brake tests, the train, the whole run. */
  static final List<Source> BESIDE =
      List.of(
          of("SignalBraking.signalM", RUN, "signals/signalM", "lineside/atM"),
          of("SignalBraking.standM", RUN, "signals/standM", "policy/margins/beforeSignal"),
          of("SignalBraking.warnedM", RUN, "signals/warnedM", "signals/cautionAt"),
          of("SignalBraking.plannedMps", RUN, "signals/plannedMps", "plan/trace/points/speedMps"),
          of("SignalBraking.ceilingMps", RUN, "signals/ceilingMps", "ceiling/speedMps"),
          of("SignalBraking.brakingM", RUN, "signals/brakingM", "signals/technique/command"),
          of("SignalBraking.Need.needM", BRAKING, "signals/needs/needM", "train/safeSide/brakes"),
          of("BrakeTest.atM", RUN, "brakeTests/atM"),
          of("BrakeTest.plannedMps", RUN, "brakeTests/plannedMps", "plan/trace/points/speedMps"),
          of("BrakeTest.pressurePa", RUN, "brakeTests/pressurePa", "policy/stopping/first"),
          of("BrakeTest.heldS", RUN, "brakeTests/heldS", "policy/practice/line/testHeld"),
          of("BrakeTest.speedAfterMps", RUN, "brakeTests/speedAfterMps", "train/planned/brakes"),
          of("BrakeTest.decelerationMps2", RUN, "brakeTests/decelerationMps2"),
          of("BrakeTest.endM", RUN, "brakeTests/endM"),
          of("TrainFigures.Balance.permille", GIVEN, "track/elevation/elevationM"),
          of("TrainFigures.Balance.speedMps", FIGURES, EFFORT, "train/planned/resistance"),
          of("TrainFigures.Reach.speedMps", GIVEN, "units/speedMps"),
          of("TrainFigures.Reach.distanceM", FIGURES, EFFORT, "train/planned/inertiaKg"),
          of("TrainFigures.Reach.timeS", FIGURES, EFFORT, "train/timePerNotchS"),
          of("TrainFigures.FullStop.permille", GIVEN, "track/elevation/elevationM"),
          of("TrainFigures.FullStop.fromMps", GIVEN, "units/speedMps"),
          of("TrainFigures.FullStop.distanceM", FIGURES, "train/safeSide/brakes/gainNPerPa"),
          of("TrainFigures.Reduction.reductionPa", GIVEN, "units/pressurePa"),
          of("TrainFigures.Reduction.pipePa", FIGURES, "train/brakeSystems/pipe/pipe"),
          of("TrainFigures.Reduction.cylinderPa", FIGURES, "train/brakeSystems/full"),
          of("Plan.runningTimeS", RUN, "plan/runningTimeS", "plan/actions/timeS"),
          of("Plan.energyJ", RUN, "plan/energyJ", EFFORT),
          of("Plan.Cost.timeS", RUN, "plan/fastest/timeS", "plan/fastest/actions/timeS"),
          of("Plan.Cost.energyJ", RUN, "plan/fastest/energyJ", EFFORT));

  private static Source of(String figure, Set<Class<?>> judges, String... fields) {
    return new Source(figure, List.of(fields), judges);
  }

  static Set<String> kinds() {
    return ALL.stream().map(Source::figure).collect(Collectors.toCollection(TreeSet::new));
  }

  private PrintedSources() {}
}
