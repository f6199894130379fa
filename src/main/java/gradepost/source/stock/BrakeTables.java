package gradepost.source.stock;

import static gradepost.yaml.Common.speed;

import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.stock.PipeLaw;
import gradepost.stock.StatedBrakeForce;
import gradepost.stock.law.BlockLaw;
import gradepost.stock.law.CastIronKarwatzki;
import gradepost.stock.law.ConstantBlocks;
import gradepost.stock.law.FrictionTable;
import gradepost.units.Acceleration;
import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import gradepost.units.QuantityKind;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Order;
import gradepost.yaml.Scalar;
import gradepost.yaml.Values;
import gradepost.yaml.Variants;
import gradepost.yaml.WordOr;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Key tables of the brake. */
public final class BrakeTables {
  public static final Scalar.Quantity<Pressure> PRESSURE =
      Scalar.Quantity.of(QuantityKind.PRESSURE, "0 psi", "150 psi");
  private static final Scalar.Quantity<Pressure> SOME_PRESSURE =
      Scalar.Quantity.of(QuantityKind.PRESSURE, "1 psi", "150 psi");
  private static final Scalar.Quantity<PressureRate> RATE =
      Scalar.Quantity.of(QuantityKind.PRESSURE_RATE, "0.1 psi/s", "500 psi/s");

  static final Key<String> BLOCK_LAW = StockTables.law("constant", "karwatzki", "galton", "table");
  static final Key<Speed> POINT_SPEED =
      Key.required("speed", speed("0 km/h", "400 km/h"), "The speed of the reading.");
  static final Key<Double> FRICTION =
      Key.required(
          "friction",
          new Scalar.PlainNumber("a number", false, 0.001, 1),
          "Friction at that speed.");
  static final ObjectSchema<FrictionTable.Point> FRICTION_POINT =
      ObjectSchema.of(
          "a point of friction",
          List.of(POINT_SPEED, FRICTION),
          v -> new FrictionTable.Point(v.get(POINT_SPEED), v.get(FRICTION)));
  static final Key<List<FrictionTable.Point>> POINTS =
      Key.required(
          "points", ListOf.some(FRICTION_POINT), "Friction against speed, rising in speed.");
  static final Variants<BlockLaw> BLOCKS = new Variants<>("block friction", "law", blockLaws());

  static final Key<Acceleration> MEAN_DECELERATION =
      Key.required(
          "mean-deceleration",
          Scalar.Quantity.of(QuantityKind.ACCELERATION, "0.1 m/s2", "3 m/s2"),
          "Mean deceleration over distance to a stand on level track, brake force alone.");
  static final Key<Speed> STATED_FROM =
      Key.required("from", speed("5 km/h", "400 km/h"), "The speed from which it is stated.");
  static final Key<Pressure> AT_PRESSURE =
      Key.required("at-pressure", SOME_PRESSURE, "The cylinder pressure for which it is stated.");
  static final Key<LoadCase> STATED_LOAD =
      Key.required("load", Scalar.Choice.of(LoadCase.class), "The load for which it is stated.");
  static final Key<Pressure> THRESHOLD =
      Key.required("threshold", PRESSURE, "Cylinder pressure that the return springs take.");
  static final Key<Boolean> LOAD_COMPENSATED =
      Key.required(
          "load-compensated", Scalar.Choice.yesNo(), "Whether the force follows the load.");
  static final Key<BlockLaw> FORCE_BLOCKS =
      Key.required("blocks", BLOCKS, "How friction changes with speed.");
  static final ObjectSchema<StatedBrakeForce> FORCE =
      ObjectSchema.of(
              "the brake force",
              List.of(
                  MEAN_DECELERATION,
                  STATED_FROM,
                  AT_PRESSURE,
                  STATED_LOAD,
                  THRESHOLD,
                  LOAD_COMPENSATED,
                  FORCE_BLOCKS),
              v ->
                  new StatedBrakeForce(
                      v.get(MEAN_DECELERATION),
                      v.get(STATED_FROM),
                      v.get(AT_PRESSURE),
                      v.get(STATED_LOAD),
                      v.get(THRESHOLD),
                      v.get(FORCE_BLOCKS),
                      v.get(LOAD_COMPENSATED)))
          .checked(BrakeTables::thresholdBelowPressure);

  static final Key<Pressure> PIPE_PRESSURE =
      Key.required("pressure", SOME_PRESSURE, "Running pressure of the brake pipe.");
  static final Key<String> PIPE_LAW = StockTables.law("ratio", "boyle", "distributor");
  static final Key<Double> POUNDS_PER_POUND =
      Key.required(
          "pounds-per-pound",
          new Scalar.PlainNumber("a ratio", false, 0.5, 10),
          "Cylinder pressure for each unit of reduction.");
  static final Key<Double> VOLUME_RATIO =
      Key.required(
          "volume-ratio",
          new Scalar.PlainNumber("a ratio", false, 0.5, 20),
          "Reservoir volume over cylinder volume.");
  static final Key<Double> RATIO =
      Key.required(
          "ratio",
          new Scalar.PlainNumber("a ratio", false, 0.5, 10),
          "Cylinder pressure for each unit of reduction, up to the limit.");
  static final Key<Pressure> LIMIT =
      Key.required("limit", SOME_PRESSURE, "Highest cylinder pressure that the distributor gives.");
  static final Variants<PipeLaw> PIPE = new Variants<>("the brake pipe", "law", pipeLaws());

  static final Key<String> NAME = Common.name("The system in full; unique in the file.");
  static final Key<String> SHORT =
      Key.required("short", Common.text("a short name"), "The short name on charts; unique.");
  static final Key<BrakeSystem.Role> ROLE =
      Key.required("role", Scalar.Choice.of(BrakeSystem.Role.class), "What it is for.");
  static final Key<String> ACTION =
      Key.required(
          "action",
          Scalar.Choice.words("simultaneous", "propagated", "by-length"),
          "Whether all vehicles answer at once, one after the other along the pipe, or as one after a"
              + " time by the length of the train.");
  static final Key<Speed> PROPAGATION =
      Key.required(
          "speed",
          Scalar.Quantity.of(QuantityKind.SPEED, "20 m/s", "400 m/s"),
          "How fast a demand runs along the pipe.");
  static final Key<Span> DEAD_TIME =
      Key.required(
          "dead-time",
          Scalar.Quantity.of(QuantityKind.TIME, "0 s", "20 s"),
          "Time from the demand until a cylinder answers. If the demand travels along the pipe, its time to"
              + " each valve is added.");
  static final Key<PressureRate> APPLICATION =
      Key.required("application", RATE, "How fast a cylinder fills.");
  static final Key<PressureRate> RELEASE =
      Key.required("release", RATE, "How fast a cylinder empties.");
  static final Key<Boolean> GRADUAL_RELEASE =
      Key.required(
          "gradual-release",
          Scalar.Choice.yesNo(),
          "Whether it can be eased; where not, every release is a full release.");
  static final Key<List<Pressure>> STEPS =
      Key.required("steps", ListOf.some(SOME_PRESSURE), "Cylinder pressures of the steps, rising.");
  static final Key<BrakeControl> CONTROL =
      Key.required(
          "control",
          new WordOr<>(
              "continuous",
              new BrakeControl.Continuous(),
              ObjectSchema.of(
                  "a stepped control", List.of(STEPS), v -> new BrakeControl.Steps(v.get(STEPS)))),
          "Which cylinder pressures the handle can ask for.");
  static final Key<Pressure> FULL =
      Key.required("full", SOME_PRESSURE, "Cylinder pressure of a full application.");
  static final Key<PipeLaw> PIPE_KEY =
      Key.optional("pipe", PIPE, "How the pipe governs it, where the gauges show a pipe.");
  static final Variants<BrakeSystem> SYSTEM = new Variants<>("a brake system", "action", systems());

  private static Map<String, ObjectSchema<? extends BlockLaw>> blockLaws() {
    Map<String, ObjectSchema<? extends BlockLaw>> laws = new LinkedHashMap<>();
    List<Key<?>> lawOnly = List.of(BLOCK_LAW);
    laws.put("constant", ObjectSchema.of("constant friction", lawOnly, v -> new ConstantBlocks()));
    laws.put(
        "karwatzki", ObjectSchema.of("cast-iron friction", lawOnly, v -> new CastIronKarwatzki()));
    laws.put("galton", ObjectSchema.of("friction by Galton", lawOnly, v -> FrictionTable.galton()));
    laws.put(
        "table",
        ObjectSchema.of(
                "a friction table",
                List.of(BLOCK_LAW, POINTS),
                v -> new FrictionTable(v.get(POINTS)))
            .checked(
                v ->
                    v.find(POINTS)
                        .ifPresent(
                            points ->
                                Order.rising(
                                    points,
                                    p -> p.speed().metresPerSecond(),
                                    p -> v.in().spot(p, POINT_SPEED),
                                    StockMistakes.TABLE_SPEEDS_DO_NOT_RISE,
                                    v.in()))));
    return laws;
  }

  private static Map<String, ObjectSchema<? extends PipeLaw>> pipeLaws() {
    Map<String, ObjectSchema<? extends PipeLaw>> laws = new LinkedHashMap<>();
    laws.put(
        "ratio",
        ObjectSchema.of(
            "a pipe by ratio",
            List.of(PIPE_LAW, PIPE_PRESSURE, POUNDS_PER_POUND),
            v -> new PipeLaw.Ratio(v.get(PIPE_PRESSURE), v.get(POUNDS_PER_POUND))));
    laws.put(
        "boyle",
        ObjectSchema.of(
            "a pipe by Boyle's law",
            List.of(PIPE_LAW, PIPE_PRESSURE, VOLUME_RATIO),
            v -> new PipeLaw.Boyle(v.get(PIPE_PRESSURE), v.get(VOLUME_RATIO))));
    laws.put(
        "distributor",
        ObjectSchema.of(
                "a pipe with distributors",
                List.of(PIPE_LAW, PIPE_PRESSURE, RATIO, LIMIT),
                v -> new PipeLaw.Distributor(v.get(PIPE_PRESSURE), v.get(RATIO), v.get(LIMIT)))
            .checked(BrakeChecks::limitWithinPipe));
    return laws;
  }

  private static Map<String, ObjectSchema<? extends BrakeSystem>> systems() {
    Map<String, ObjectSchema<? extends BrakeSystem>> systems = new LinkedHashMap<>();
    systems.put(
        "simultaneous",
        system(
            "a brake system that acts at once",
            List.of(DEAD_TIME),
            v -> new BrakeAction.Simultaneous(v.get(DEAD_TIME))));
    systems.put(
        "propagated",
        system(
            "a brake system that acts along the pipe",
            List.of(PROPAGATION, DEAD_TIME),
            v -> new BrakeAction.Propagated(v.get(DEAD_TIME), v.get(PROPAGATION))));
    systems.put(
        "by-length",
        system(
            "a brake system that acts after a time by length",
            List.of(BrakeTimes.BUILD_UP),
            v -> v.get(BrakeTimes.BUILD_UP)));
    return systems;
  }

  private static ObjectSchema<BrakeSystem> system(
      String noun, List<Key<?>> ownKeys, Function<Values, BrakeAction> action) {
    List<Key<?>> keys = new ArrayList<>(List.of(NAME, SHORT, ROLE, ACTION));
    keys.addAll(ownKeys);
    keys.addAll(List.of(APPLICATION, RELEASE, GRADUAL_RELEASE, CONTROL, FULL, PIPE_KEY));
    keys.add(BrakeTimes.RECHARGE);
    return ObjectSchema.of(
            noun,
            keys,
            v ->
                new BrakeSystem(
                    v.get(NAME),
                    v.get(SHORT),
                    v.get(ROLE),
                    action.apply(v),
                    v.get(APPLICATION),
                    v.get(RELEASE),
                    v.get(GRADUAL_RELEASE),
                    v.get(CONTROL),
                    v.get(FULL),
                    v.find(PIPE_KEY),
                    v.find(BrakeTimes.RECHARGE),
                    Optional.empty()))
        .checked(BrakeChecks::stepsUpToFull)
        .checked(BrakeChecks::pipeGivesFull)
        .checked(BrakeForms::rechargesFromPipe);
  }

  private static void thresholdBelowPressure(Values v) {
    Common.whenBoth(
        v,
        THRESHOLD,
        AT_PRESSURE,
        (threshold, pressure) -> {
          if (threshold.compareTo(pressure) >= 0) {
            v.error(THRESHOLD, StockMistakes.THRESHOLD_NOT_BELOW);
          }
        });
  }

  private BrakeTables() {}
}
