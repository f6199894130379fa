package gradepost.source.policy;

import static gradepost.source.policy.PolicyTables.difference;
import static gradepost.source.policy.PolicyTables.said;
import static gradepost.yaml.Common.length;

import gradepost.policy.AdhesionCase;
import gradepost.policy.Margins;
import gradepost.policy.Policy;
import gradepost.policy.Practice;
import gradepost.policy.RunRules;
import gradepost.policy.SafeSide;
import gradepost.policy.Scatter;
import gradepost.policy.SignOffRules;
import gradepost.policy.Technique;
import gradepost.policy.TerminalStep;
import gradepost.route.audit.CantLimits;
import gradepost.source.file.FileHeading;
import gradepost.source.file.FileKind;
import gradepost.source.policy.PolicyTables.Said;
import gradepost.source.policy.PolicyTables.TypedCase;
import gradepost.source.stock.BrakeTables;
import gradepost.stock.LoadCase;
import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.units.QuantityKind;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.Values;
import java.util.List;

/** The key table of a policy file. */
public final class PolicyTable {
  private static final Scalar.Quantity<Span> TIME =
      Scalar.Quantity.of(QuantityKind.TIME, "0 s", "5 min");

  static final Key<Said<LoadCase>> LOAD =
      said("load", Scalar.Choice.of(LoadCase.class), "Load that latest points take.");
  static final Key<Said<Speed>> OVERSPEED =
      said("overspeed", difference(), "By how much the train may be faster than planned.");
  static final Key<Said<Double>> BRAKE_FACTOR =
      said(
          "brake-factor",
          Scalar.Quantity.of(QuantityKind.PERCENT, "10 %", "100 %"),
          "Share of the stated brake force that latest points count on.");
  static final Key<Said<Double>> ISOLATED =
      said(
          "isolated-share",
          Scalar.Quantity.of(QuantityKind.PERCENT, "0 %", "90 %"),
          "Share of the vehicles whose brake is taken as isolated, the strongest first, rounded up to"
              + " whole vehicles.");
  static final ObjectSchema<SafeSide> SAFE_SIDE =
      ObjectSchema.of(
          "the leaning of latest points",
          List.of(LOAD, OVERSPEED, BRAKE_FACTOR, ISOLATED),
          v ->
              new SafeSide(
                  v.get(LOAD).value(),
                  v.get(OVERSPEED).value(),
                  v.get(BRAKE_FACTOR).value(),
                  v.get(ISOLATED).value()));

  static final Key<Said<Length>> STOP_TOLERANCE =
      said("stop-tolerance", length("10 cm", "100 m"), "How far short a planned stop may end.");
  static final Key<Said<Length>> BEFORE_BOARD =
      said("before-board", length("0 m", "1 km"), "How far before its board a speed is reached.");
  static final Key<Said<Speed>> UNDER_SPEED =
      said("under-speed", difference(), "How much the planned speed keeps under the lower one.");
  static final Key<Said<Length>> BEFORE_BUFFERS =
      said("before-buffers", length("0 m", "200 m"), "Least distance from mark to buffer stops.");
  static final Key<Said<Length>> BEFORE_SIGNAL =
      said("before-signal", length("0 m", "500 m"), "How far short of a signal the train stands.");
  static final ObjectSchema<Margins> MARGINS_SHAPE =
      ObjectSchema.of(
          "the margins",
          List.of(STOP_TOLERANCE, BEFORE_BOARD, UNDER_SPEED, BEFORE_BUFFERS, BEFORE_SIGNAL),
          v ->
              new Margins(
                  v.get(STOP_TOLERANCE).value(),
                  v.get(BEFORE_BOARD).value(),
                  v.get(UNDER_SPEED).value(),
                  v.get(BEFORE_BUFFERS).value(),
                  v.get(BEFORE_SIGNAL).value()));

  static final Key<Said<Speed>> OFF_BELOW =
      said("off-below", difference(), "Power is taken off this much below the permissible speed.");
  static final Key<Said<Speed>> ON_BELOW =
      said("on-below", difference(), "Power is taken again this much below it.");
  static final Key<Said<Span>> LEAST_POWER =
      said("least-power", TIME, "Power is not taken for less than this.");
  static final Key<Said<Span>> COAST =
      said("coast-before-braking", TIME, "Power is off this long before a braking point.");
  static final Key<Said<Speed>> CHECK_FROM =
      said("check-from", difference(), "The brake checks this much below the permissible speed.");
  static final Key<Said<Speed>> CHECK_TO =
      said("check-to", difference(), "The checking application is released this much below it.");
  static final Key<Said<Pressure>> CHECK_PRESSURE =
      said("check-pressure", BrakeTables.PRESSURE, "Pressure of the checking application.");
  static final Key<Said<Double>> TIME_ALLOWANCE =
      said(
          "time-allowance",
          Scalar.Quantity.of(QuantityKind.PERCENT, "0 %", "100 %"),
          "Running time allowed over the fastest run.");
  static final Key<Said<Length>> LANDMARK_REACH =
      said("landmark-reach", length("0 m", "2 km"), "How far before a point a landmark may stand.");
  static final ObjectSchema<RunRules> RUN_SHAPE =
      ObjectSchema.of(
              "the rules of the run",
              List.of(
                  OFF_BELOW,
                  ON_BELOW,
                  LEAST_POWER,
                  COAST,
                  CHECK_FROM,
                  CHECK_TO,
                  CHECK_PRESSURE,
                  TIME_ALLOWANCE,
                  LANDMARK_REACH),
              v ->
                  new RunRules(
                      v.get(OFF_BELOW).value(),
                      v.get(ON_BELOW).value(),
                      v.get(LEAST_POWER).value(),
                      v.get(COAST).value(),
                      v.get(CHECK_FROM).value(),
                      v.get(CHECK_TO).value(),
                      v.get(CHECK_PRESSURE).value(),
                      v.get(TIME_ALLOWANCE).value(),
                      v.get(LANDMARK_REACH).value()))
          .checked(v -> lowerFurther(v, OFF_BELOW, ON_BELOW))
          .checked(v -> lowerFurther(v, CHECK_FROM, CHECK_TO));

  static final Key<Said<Double>> MASS_SPREAD = deviation("mass", "Standard deviation of the mass.");
  static final Key<Said<Double>> BLOCK_SPREAD =
      deviation("blocks", "Standard deviation of the friction of the blocks.");
  static final Key<Said<Double>> BUILD_UP_SPREAD =
      deviation("build-up", "Standard deviation of the time in which the cylinders fill.");
  static final Key<Said<Span>> REACTION_SPREAD =
      said("reaction", TIME, "Standard deviation of how late the driver is; never early.");
  static final Key<Said<Speed>> SPEED_SPREAD =
      said("speed", difference(), "Standard deviation of the speed at the braking point.");
  static final Key<Said<Double>> ADHESION_SPREAD =
      deviation("adhesion", "Standard deviation of the adhesion.");
  static final Key<Said<Double>> SAMPLES =
      said(
          "samples",
          new Scalar.PlainNumber("a whole number", true, 20, 100_000),
          "How many runs are drawn for each approach.");
  static final ObjectSchema<Scatter> SPREAD_SHAPE =
      ObjectSchema.of(
          "the spread",
          List.of(
              MASS_SPREAD,
              BLOCK_SPREAD,
              BUILD_UP_SPREAD,
              REACTION_SPREAD,
              SPEED_SPREAD,
              ADHESION_SPREAD,
              SAMPLES),
          v ->
              new Scatter(
                  v.get(MASS_SPREAD).value(),
                  v.get(BLOCK_SPREAD).value(),
                  v.get(BUILD_UP_SPREAD).value(),
                  v.get(REACTION_SPREAD).value(),
                  v.get(SPEED_SPREAD).value(),
                  v.get(ADHESION_SPREAD).value(),
                  v.get(SAMPLES).value().intValue()));

  private static Key<Said<Double>> deviation(String name, String description) {
    return said(name, Scalar.Quantity.of(QuantityKind.PERCENT, "0 %", "30 %"), description);
  }

  static final Key<FileKind> KIND = FileHeading.key(FileKind.POLICY);
  static final Key<String> NAME = Common.name("The policy, as in the reading notes.");
  static final Key<List<TypedCase>> ADHESION =
      Key.required(
          "adhesion",
          ListOf.some(PolicyTables.ADHESION_CASE).upTo(6).unique("name"),
          "States of the rail, the planned one first.");
  static final Key<Said<Span>> NOTICING =
      said(
          "noticing-time",
          Scalar.Quantity.of(QuantityKind.TIME, "0 s", "60 s"),
          "From applying a brake that fails to applying the next one.");
  static final Key<SafeSide> SAFE =
      Key.required("safe-side", SAFE_SIDE, "Which way latest points lean.");
  static final Key<Margins> MARGINS =
      Key.required("margins", MARGINS_SHAPE, "How far the plan keeps from what it must not touch.");
  static final Key<Said<Technique>> STOPPING =
      Key.required("stopping", PolicyTables.STOPPING, "How the brake is used for a stop.");
  static final Key<Said<Technique>> RESTRICTION =
      Key.required(
          "restriction", PolicyTables.RESTRICTION, "How the brake is used for a lower speed.");
  static final Key<Said<List<TerminalStep>>> TERMINAL =
      Key.optional(
          "terminal",
          PolicyTables.TERMINAL,
          "Speeds on a platform road that ends in buffer stops; none if left out.");
  static final Key<RunRules> RUN =
      Key.required("run", RUN_SHAPE, "How the train is driven between targets.");

  static final Key<Scatter> SPREAD =
      Key.optional("spread", SPREAD_SHAPE, "What braking is drawn from to show its spread.");

  static final Key<Practice> PRACTICE =
      Key.optional(
          "practice",
          PracticeTable.PRACTICE_SHAPE,
          "How a driver is taken to use power and brake where no rule says it.");

  static final Key<SignOffRules> SIGN_OFF =
      Key.optional(
          "sign-off",
          SignOffTables.SIGN_OFF,
          "How drivers are assessed and signed off; needed for sign-off papers only.");

  public static final ObjectSchema<Policy> POLICY =
      ObjectSchema.of(
              "a policy file",
              List.of(
                  KIND,
                  NAME,
                  ADHESION,
                  SiteAdhesion.SITES,
                  NOTICING,
                  SAFE,
                  MARGINS,
                  STOPPING,
                  RESTRICTION,
                  TERMINAL,
                  RUN,
                  PRACTICE,
                  SPREAD,
                  SIGN_OFF,
                  CantTables.TRACK,
                  DegradedTable.DEGRADED),
              PolicyTable::build)
          .checked(AdhesionCases::sharesOfEarlierOnes)
          .checked(SiteAdhesion::check);

  private static Policy build(Values v) {
    List<AdhesionCase> cases = AdhesionCases.of(v.get(ADHESION));
    return new Policy(
        v.get(NAME),
        v.find(SiteAdhesion.SITES).map(sites -> sites.on(cases)).orElse(cases),
        v.get(NOTICING).value(),
        v.get(SAFE),
        v.get(MARGINS),
        v.get(STOPPING).value(),
        v.get(RESTRICTION).value(),
        v.find(TERMINAL).map(Said::value).orElse(List.of()),
        v.get(RUN),
        v.find(SPREAD),
        Purposes.of(v),
        v.find(SIGN_OFF),
        v.find(CantTables.TRACK).orElse(CantLimits.USUAL),
        v.find(PRACTICE).orElse(Practice.USUAL),
        v.find(DegradedTable.DEGRADED));
  }

  private static void lowerFurther(Values v, Key<Said<Speed>> near, Key<Said<Speed>> far) {
    Common.whenBoth(
        v,
        near,
        far,
        (a, b) -> {
          if (b.value().compareTo(a.value()) <= 0) {
            v.in().error(v.in().spot(b), PolicyMistakes.NOT_MORE_THAN.with(far, near));
          }
        });
  }

  private PolicyTable() {}
}
