package gradepost.source.stock;

import static gradepost.yaml.Common.length;
import static gradepost.yaml.Common.speed;

import gradepost.stock.ConstantResistance;
import gradepost.stock.Davis1926;
import gradepost.stock.EffortPoint;
import gradepost.stock.Notch;
import gradepost.stock.QuadraticResistance;
import gradepost.stock.Railcar1936;
import gradepost.stock.ResistanceLaw;
import gradepost.stock.RotatingMass;
import gradepost.stock.Vehicle;
import gradepost.stock.law.CurveResistance;
import gradepost.stock.law.DegreeCurveResistance;
import gradepost.stock.law.InverseRadiusCurveResistance;
import gradepost.stock.law.NoCurveResistance;
import gradepost.stock.law.RocklCurveResistance;
import gradepost.units.Exact;
import gradepost.units.Force;
import gradepost.units.Length;
import gradepost.units.Mass;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Key tables of vehicles, resistance and power. */
public final class StockTables {
  private static final Scalar.Quantity<Mass> MASS =
      Scalar.Quantity.of(QuantityKind.MASS, "1 t", "300 t");

  private static final double MOST_ROTATING = 0.4;

  static final Key<String> TYPE =
      Key.required("type", Common.text("a type of vehicle"), "The type; unique in the file.");
  static final Key<Length> LENGTH =
      Key.required("length", length("2 m", "60 m"), "Length over couplers.");
  static final Key<Mass> TARE = Key.required("tare", MASS, "Mass empty.");
  static final Key<Mass> SEATED = Key.required("seated", MASS, "Mass with every seat taken.");
  static final Key<Mass> CRUSH = Key.required("crush", MASS, "Mass with all that it may carry.");
  static final Key<Double> AXLES =
      Key.required(
          "axles", new Scalar.PlainNumber("a number of axles", true, 2, 24), "Number of axles.");
  static final Key<Double> MOTORED_SHARE =
      Key.required(
          "motored-share",
          Scalar.Quantity.of(QuantityKind.PERCENT, "0 %", "100 %"),
          "Share of its mass that rests on driven axles; 0 % for a trailer.");
  static final Key<RotatingMass> ROTATING =
      Key.required(
          "rotating",
          new RotatingText(),
          "What its rotating parts add to its mass at every load, as a share of its tare or as a"
              + " mass.");
  static final Key<Double> BRAKE_WEIGHT =
      Key.preset(
          "brake-weight",
          new Scalar.PlainNumber("a ratio", false, 0, 10),
          1.0,
          "1.0",
          "Its share of the brake force against other vehicles.");
  static final Key<Length> VALVE_AT =
      Key.optional(
          "valve-at",
          length("0 m", "60 m"),
          "From an end of the vehicle to its brake valve. Of the distances from the two ends the greater"
              + " counts. If left out: the middle of the vehicle.");
  static final ObjectSchema<Vehicle> VEHICLE =
      ObjectSchema.of(
              "a vehicle",
              List.of(
                  TYPE,
                  LENGTH,
                  TARE,
                  SEATED,
                  CRUSH,
                  AXLES,
                  MOTORED_SHARE,
                  ROTATING,
                  BRAKE_WEIGHT,
                  VALVE_AT),
              v ->
                  new Vehicle(
                      v.get(TYPE),
                      v.get(LENGTH),
                      v.get(TARE),
                      v.get(SEATED),
                      v.get(CRUSH),
                      v.get(AXLES).intValue(),
                      v.get(MOTORED_SHARE),
                      v.get(ROTATING),
                      v.get(BRAKE_WEIGHT),
                      v.find(VALVE_AT)))
          .checked(StockTables::valveOnVehicle)
          .checked(v -> notLess(v, TARE, SEATED))
          .checked(v -> notLess(v, SEATED, CRUSH))
          .checked(StockTables::rotatingWithinTare);

  static final Key<String> LAW = law("quadratic", "constant", "davis-1926", "railcar-1936");
  static final Key<Double> A =
      Key.required(
          "a",
          Scalar.Quantity.of(QuantityKind.PER_TONNE, "0 N/t", "500 N/t"),
          "The part that does not depend on speed, by mass.");
  static final Key<Double> B =
      Key.required(
          "b",
          Scalar.Quantity.of(QuantityKind.PER_TONNE_AND_SPEED, "0 N/t per m/s", "20 N/t per m/s"),
          "The part that grows with speed, by mass.");
  static final Key<Double> C_LEAD =
      Key.required(
          "c-lead",
          Scalar.Quantity.of(QuantityKind.PER_SPEED_SQUARED, "0 N per (m/s)2", "100 N per (m/s)2"),
          "Air resistance of the leading end, counted once.");
  static final Key<Double> C_VEHICLE =
      Key.required(
          "c-vehicle",
          Scalar.Quantity.of(QuantityKind.PER_SPEED_SQUARED, "0 N per (m/s)2", "50 N per (m/s)2"),
          "Air resistance of each vehicle.");
  static final Key<Double> N_PER_TONNE =
      Key.required(
          "n-per-tonne",
          Scalar.Quantity.of(QuantityKind.PER_TONNE, "0 N/t", "500 N/t"),
          "Resistance at every speed, by mass.");
  static final Key<Double> LEAD_AREA =
      Key.required(
          "lead-area",
          Scalar.Quantity.of(QuantityKind.AREA, "0 sq ft", "1000 sq ft"),
          "Area that counts for the leading vehicle.");
  static final Key<Double> TRAIL_AREA =
      Key.required(
          "trail-area",
          Scalar.Quantity.of(QuantityKind.AREA, "0 sq ft", "1000 sq ft"),
          "Area that counts for each following vehicle.");
  static final Key<Double> FRONTAL_AREA =
      Key.required(
          "frontal-area",
          Scalar.Quantity.of(QuantityKind.AREA, "1 m2", "30 m2"),
          "Frontal area of the train.");
  private static final double SQ_FT_M2 = Exact.YARD_M * Exact.YARD_M / 9;
  static final Variants<ResistanceLaw> RESISTANCE =
      new Variants<>("running resistance", "law", resistanceLaws());

  static final Key<String> CURVE_LAW = law("rockl", "degree", "inverse-radius", "none");
  static final Key<Double> POUNDS =
      Key.required(
          "pounds-per-ton-per-degree",
          new Scalar.PlainNumber("a number", false, 0, 10),
          "Pounds for each short ton and degree of curve (100 ft chord).");
  static final Key<Double> K =
      Key.required(
          "k",
          new Scalar.PlainNumber("a number", false, 0, 2000),
          "The k of k/R in N/kN, with R in metres.");
  static final Variants<CurveResistance> CURVE_RESISTANCE =
      new Variants<>("curve resistance", "law", curveLaws());

  static final Key<Speed> POINT_SPEED =
      Key.required("speed", speed("0 km/h", "400 km/h"), "The speed of the reading.");
  static final Key<Force> POINT_FORCE =
      Key.required(
          "force",
          Scalar.Quantity.of(QuantityKind.FORCE, "0 kN", "500 kN"),
          "Tractive effort of one motored vehicle there.");
  static final ObjectSchema<EffortPoint> EFFORT_POINT =
      ObjectSchema.of(
          "a point of effort",
          List.of(POINT_SPEED, POINT_FORCE),
          v -> new EffortPoint(v.get(POINT_SPEED), v.get(POINT_FORCE)));
  static final Key<String> NOTCH_NAME = Common.name("As engraved or spoken.");
  static final Key<List<EffortPoint>> EFFORT =
      Key.required(
          "effort",
          ListOf.some(EFFORT_POINT),
          "Effort of one motored vehicle against speed, rising in speed; straight lines between,"
              + " nothing beyond the last.");
  static final Key<Span> LONGEST =
      Key.optional(
          "at-most",
          Scalar.Quantity.of(QuantityKind.TIME, "5 s", "600 s"),
          "Not a running notch: the longest time in it. Left out for a running notch.");
  static final ObjectSchema<Notch> NOTCH =
      ObjectSchema.of(
              "a notch",
              List.of(NOTCH_NAME, EFFORT, LONGEST),
              v -> new Notch(v.get(NOTCH_NAME), v.get(EFFORT), v.find(LONGEST)))
          .checked(
              v ->
                  v.find(EFFORT)
                      .ifPresent(
                          points ->
                              Order.rising(
                                  points,
                                  p -> p.speed().metresPerSecond(),
                                  p -> v.in().spot(p, POINT_SPEED),
                                  StockMistakes.EFFORT_SPEEDS_DO_NOT_RISE,
                                  v.in())));

  static final Key<Span> TIME_PER_NOTCH =
      Key.required(
          "time-per-notch",
          Scalar.Quantity.of(QuantityKind.TIME, "0 s", "60 s"),
          "Least time in a notch before the next one is taken.");
  static final Key<Boolean> NOTCHING_DOWN =
      Key.required(
          "notching-down",
          Scalar.Choice.yesNo(),
          "Whether a lower notch can be taken from a higher one.");
  static final Key<List<Notch>> NOTCHES =
      Key.required(
          "notches",
          ListOf.some(NOTCH).unique("name"),
          "The notches in the order of the handle, off left out.");

  /** A key that chooses one of these laws. */
  public static Key<String> law(String... words) {
    return Key.required("law", Scalar.Choice.words(words), "Which published form is used.");
  }

  private static Map<String, ObjectSchema<? extends ResistanceLaw>> resistanceLaws() {
    Map<String, ObjectSchema<? extends ResistanceLaw>> laws = new LinkedHashMap<>();
    laws.put(
        "quadratic",
        ObjectSchema.of(
            "quadratic resistance",
            List.of(LAW, A, B, C_LEAD, C_VEHICLE),
            v -> new QuadraticResistance(v.get(A), v.get(B), v.get(C_LEAD), v.get(C_VEHICLE))));
    laws.put(
        "constant",
        ObjectSchema.of(
            "constant resistance",
            List.of(LAW, N_PER_TONNE),
            v -> new ConstantResistance(v.get(N_PER_TONNE))));
    laws.put(
        "davis-1926",
        ObjectSchema.of(
            "resistance by Davis",
            List.of(LAW, LEAD_AREA, TRAIL_AREA),
            v -> new Davis1926(v.get(LEAD_AREA) / SQ_FT_M2, v.get(TRAIL_AREA) / SQ_FT_M2)));
    laws.put(
        "railcar-1936",
        ObjectSchema.of(
            "resistance of a railcar",
            List.of(LAW, FRONTAL_AREA),
            v -> new Railcar1936(v.get(FRONTAL_AREA))));
    return laws;
  }

  private static Map<String, ObjectSchema<? extends CurveResistance>> curveLaws() {
    Map<String, ObjectSchema<? extends CurveResistance>> laws = new LinkedHashMap<>();
    laws.put(
        "rockl",
        ObjectSchema.of(
            "curve resistance by Röckl", List.of(CURVE_LAW), v -> new RocklCurveResistance()));
    laws.put(
        "degree",
        ObjectSchema.of(
            "curve resistance by degree",
            List.of(CURVE_LAW, POUNDS),
            v -> new DegreeCurveResistance(v.get(POUNDS))));
    laws.put(
        "inverse-radius",
        ObjectSchema.of(
            "curve resistance by radius",
            List.of(CURVE_LAW, K),
            v -> new InverseRadiusCurveResistance(v.get(K))));
    laws.put(
        "none",
        ObjectSchema.of("no curve resistance", List.of(CURVE_LAW), v -> new NoCurveResistance()));
    return laws;
  }

  private static void notLess(Values v, Key<Mass> lighter, Key<Mass> heavier) {
    Common.whenBoth(
        v,
        lighter,
        heavier,
        (light, heavy) -> {
          if (heavy.compareTo(light) < 0) {
            v.error(heavier, StockMistakes.LIGHTER_WHEN_LOADED.with(heavier, lighter));
          }
        });
  }

  private static void rotatingWithinTare(Values v) {
    Common.whenBoth(
        v,
        ROTATING,
        TARE,
        (rotating, tare) -> {
          if (rotating.of(tare).kilograms() > MOST_ROTATING * tare.kilograms() * (1 + 1e-9)) {
            v.error(ROTATING, StockMistakes.ROTATING_TOO_MUCH);
          }
        });
  }

  private static void valveOnVehicle(Values v) {
    v.find(VALVE_AT)
        .filter(valve -> v.find(LENGTH).filter(l -> valve.compareTo(l) > 0).isPresent())
        .ifPresent(valve -> v.error(VALVE_AT, StockMistakes.VALVE_OFF_THE_VEHICLE));
  }

  private StockTables() {}
}
