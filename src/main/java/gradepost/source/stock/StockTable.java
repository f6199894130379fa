package gradepost.source.stock;

import gradepost.source.file.FileHeading;
import gradepost.source.file.FileKind;
import gradepost.stock.BrakeCare;
import gradepost.stock.BrakeSystem;
import gradepost.stock.FailureSign;
import gradepost.stock.Formation;
import gradepost.stock.LeavingTest;
import gradepost.stock.ResistanceLaw;
import gradepost.stock.StatedBrakeForce;
import gradepost.stock.Stock;
import gradepost.stock.Traction;
import gradepost.stock.Vehicle;
import gradepost.stock.law.CurveResistance;
import gradepost.units.Nearest;
import gradepost.units.QuantityKind;
import gradepost.units.Speed;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.Values;
import java.util.List;
import java.util.Optional;

/** The key table of a stock file. */
public final class StockTable {
  /** A formation as typed. */
  record NamedTypes(String name, List<String> types) {}

  /** The brake as a whole. */
  record Brakes(StatedBrakeForce force, List<BrakeSystem> systems) {}

  static final Key<String> FORMATION_NAME = Common.name("The formation; unique in the file.");
  static final Key<List<String>> TYPES =
      Key.required(
          "vehicles",
          ListOf.some(Common.text("a type of vehicle")).upTo(60),
          "Types of its vehicles as they stand in the forward direction, leading one first.");
  static final ObjectSchema<NamedTypes> FORMATION =
      ObjectSchema.of(
          "a formation",
          List.of(FORMATION_NAME, TYPES),
          v -> new NamedTypes(v.get(FORMATION_NAME), v.get(TYPES)));

  static final Key<FileKind> KIND = FileHeading.key(FileKind.STOCK);
  static final Key<String> NAME = Common.name("The type of train, as on the cover.");
  static final Key<String> DESCRIPTION =
      Key.preset("description", Common.prose("words"), "", "", "The train in a sentence or two.");
  static final Key<List<String>> CLASSES =
      Key.preset(
          "classes",
          ListOf.any(Common.text("a class of train")),
          List.of(),
          "none",
          "Classes of train to which it belongs, for differential speeds.");
  static final Key<Speed> MAXIMUM =
      Key.required(
          "maximum-speed", Common.speed("5 km/h", "400 km/h"), "The train's own maximum speed.");
  static final Key<List<Vehicle>> VEHICLES =
      Key.required(
          "vehicles", ListOf.some(StockTables.VEHICLE).unique("type"), "Its types of vehicle.");
  static final Key<List<NamedTypes>> FORMATIONS =
      Key.required(
          "formations", ListOf.some(FORMATION).unique("name"), "Trains made up of the vehicles.");
  static final Key<ResistanceLaw> RESISTANCE =
      Key.required("resistance", StockTables.RESISTANCE, "Running resistance.");
  static final Key<CurveResistance> CURVES =
      Key.required("curve-resistance", StockTables.CURVE_RESISTANCE, "Curve resistance.");
  static final Key<Double> CHECK_RAIL_DRAG =
      Key.preset(
          "check-rail-drag",
          Scalar.Quantity.of(QuantityKind.PER_KILONEWTON, "0 N/kN", "20 N/kN"),
          0.0,
          "0 N/kN",
          "More resistance on a curve with a check rail; no published figure is known.");
  static final Key<Traction> POWER = Key.required("power", MotorTables.POWER, "The power handle.");
  static final Key<Brakes> BRAKES = Key.required("brakes", BrakeForms.BRAKES, "The brake.");
  static final Key<List<String>> HANDLE_RULES =
      Key.preset(
          "handle-rules",
          ListOf.any(Common.prose("a rule in words")),
          List.of(),
          "none",
          "Movements of the handles that are forbidden or needed, for the train page.");

  static final Key<List<LeavingTest>> BEFORE_LEAVING =
      Key.preset(
          "before-leaving",
          ListOf.any(CareTables.TEST).upTo(12).unique("name"),
          List.of(),
          "none",
          "The tests of the brakes before the train leaves, in order, for the train page.");
  static final Key<List<FailureSign>> SIGNS_OF_FAILURE =
      Key.preset(
          "signs-of-failure",
          ListOf.any(CareTables.SIGN).upTo(20),
          List.of(),
          "none",
          "What tells a driver that a brake has failed, in the order in which it is met, for the"
              + " train page.");

  public static final ObjectSchema<Stock> STOCK =
      ObjectSchema.of(
              "a stock file",
              List.of(
                  KIND,
                  NAME,
                  DESCRIPTION,
                  CLASSES,
                  MAXIMUM,
                  VEHICLES,
                  FORMATIONS,
                  RESISTANCE,
                  CURVES,
                  CHECK_RAIL_DRAG,
                  POWER,
                  BRAKES,
                  HANDLE_RULES,
                  BEFORE_LEAVING,
                  SIGNS_OF_FAILURE),
              StockTable::build)
          .checked(StockTable::knownVehicles)
          .checked(BrakeChecks::roles)
          .checked(BrakeChecks::withinConversion)
          .checked(CareTables::ofThisTrain);

  private static Stock build(Values v) {
    return new Stock(
        v.get(NAME),
        v.get(DESCRIPTION),
        v.get(CLASSES),
        v.get(MAXIMUM),
        v.get(VEHICLES),
        v.get(FORMATIONS).stream().map(f -> formation(f, v.get(VEHICLES))).toList(),
        v.get(RESISTANCE),
        v.get(CURVES),
        v.get(CHECK_RAIL_DRAG),
        v.get(POWER),
        v.get(BRAKES).force(),
        v.get(BRAKES).systems(),
        v.get(HANDLE_RULES),
        new BrakeCare(v.get(BEFORE_LEAVING), v.get(SIGNS_OF_FAILURE)));
  }

  private static Formation formation(NamedTypes formation, List<Vehicle> vehicles) {
    return new Formation(
        formation.name(),
        formation.types().stream().map(t -> vehicle(t, vehicles).orElseThrow()).toList());
  }

  private static Optional<Vehicle> vehicle(String type, List<Vehicle> vehicles) {
    return vehicles.stream().filter(v -> v.type().equals(type)).findFirst();
  }

  private static void knownVehicles(Values v) {
    Common.whenBoth(
        v,
        VEHICLES,
        FORMATIONS,
        (vehicles, formations) -> {
          List<String> known = vehicles.stream().map(Vehicle::type).toList();
          for (NamedTypes formation : formations) {
            List<String> types = formation.types();
            for (int i = 0; i < types.size(); i++) {
              if (!known.contains(types.get(i))) {
                v.in()
                    .error(
                        v.in().spot(formation, TYPES, i),
                        StockMistakes.UNKNOWN_VEHICLE.with(
                            types.get(i), known, Nearest.to(types.get(i), known)));
              }
            }
            boolean powered =
                vehicles.stream().anyMatch(x -> x.motored() && types.contains(x.type()));
            if (!powered && known.containsAll(types)) {
              v.in()
                  .error(
                      v.in().spot(formation),
                      StockMistakes.NO_MOTORED_VEHICLE.with(formation.name()));
            }
          }
        });
  }

  private StockTable() {}
}
