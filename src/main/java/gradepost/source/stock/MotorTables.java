package gradepost.source.stock;

import static gradepost.source.stock.StockTables.NOTCHES;
import static gradepost.source.stock.StockTables.NOTCHING_DOWN;
import static gradepost.source.stock.StockTables.TIME_PER_NOTCH;

import gradepost.stock.SeriesMotor;
import gradepost.stock.SeriesMotorPower;
import gradepost.stock.Traction;
import gradepost.units.Length;
import gradepost.units.QuantityKind;
import gradepost.yaml.Common;
import gradepost.yaml.Forms;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.ValueType;
import gradepost.yaml.Values;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Key tables of the power handle: by its notches, or by the motors behind them. */
final class MotorTables {
  private static final Scalar.Quantity<Double> CURRENT =
      Scalar.Quantity.of(QuantityKind.CURRENT, "1 A", "5000 A");

  /** What a motor is rated for. */
  record Rating(double volts, double amperes, double rpm, double ohms, double knee) {}

  static final Key<Double> VOLTS =
      Key.required(
          "volts",
          Scalar.Quantity.of(QuantityKind.VOLTAGE, "50 V", "4 kV"),
          "Voltage across one motor at its rating.");
  static final Key<Double> RATED_CURRENT =
      Key.required("current", CURRENT, "Its current at that voltage and speed.");
  static final Key<Double> RPM =
      Key.required(
          "speed",
          Scalar.Quantity.of(QuantityKind.ROTATION, "50 rpm", "8000 rpm"),
          "Speed of its armature at its rating, full field.");
  static final Key<Double> OHMS =
      Key.required(
          "resistance",
          Scalar.Quantity.of(QuantityKind.ELECTRICAL_RESISTANCE, "0 ohm", "10 ohm"),
          "Resistance of armature and field together.");
  static final Key<Double> KNEE =
      Key.required("knee", CURRENT, "The current that gives half of the greatest flux.");
  static final ObjectSchema<Rating> RATING_SHAPE =
      ObjectSchema.of(
              "the rating of a motor",
              List.of(VOLTS, RATED_CURRENT, RPM, OHMS, KNEE),
              v ->
                  new Rating(
                      v.get(VOLTS), v.get(RATED_CURRENT), v.get(RPM), v.get(OHMS), v.get(KNEE)))
          .checked(MotorTables::leavesABackVoltage);

  static final Key<String> GROUP_NAME = Common.name("As engraved or spoken.");
  static final Key<Double> IN_SERIES =
      Key.required(
          "in-series",
          new Scalar.PlainNumber("a number of motors", true, 1, 16),
          "How many motors share the voltage of the line.");
  static final Key<Double> LIMIT =
      Key.required("limit", CURRENT, "Current of one motor while resistance is cut out.");
  static final Key<Double> FIELD =
      Key.preset(
          "field",
          Scalar.Quantity.of(QuantityKind.PERCENT, "10 %", "100 %"),
          1.0,
          "100 %",
          "Share of the current that flows through the field; less than 100 % is weak field.");
  static final Key<Double> FIXED =
      Key.preset(
          "fixed",
          Scalar.Quantity.of(QuantityKind.ELECTRICAL_RESISTANCE, "0 ohm", "50 ohm"),
          0.0,
          "0 ohm",
          "Resistance that stays in the circuit of these motors, as in a shunting notch.");
  static final ObjectSchema<SeriesMotorPower.Group> GROUP =
      ObjectSchema.of(
          "a group of motors",
          List.of(GROUP_NAME, IN_SERIES, LIMIT, FIELD, FIXED, StockTables.LONGEST),
          v ->
              new SeriesMotorPower.Group(
                  v.get(GROUP_NAME),
                  v.get(IN_SERIES).intValue(),
                  v.get(LIMIT),
                  v.get(FIELD),
                  v.get(FIXED),
                  v.find(StockTables.LONGEST)));

  static final Key<Double> NUMBER =
      Key.required(
          "number",
          new Scalar.PlainNumber("a number of motors", true, 1, 16),
          "Motors on each motored vehicle.");
  static final Key<Double> LINE =
      Key.required(
          "line",
          Scalar.Quantity.of(QuantityKind.VOLTAGE, "100 V", "4 kV"),
          "Voltage of the line, direct current.");
  static final Key<Rating> RATING =
      Key.required("rating", RATING_SHAPE, "What one motor is rated for.");
  static final Key<Double> GEAR =
      Key.required(
          "gear",
          new Scalar.PlainNumber("a ratio", false, 1, 10),
          "Turns of the armature for one turn of the wheel.");
  static final Key<Length> WHEEL =
      Key.required(
          "wheel", Common.length("300 mm", "2.5 m"), "Diameter of the wheel on its tread.");
  static final Key<Double> GEAR_EFFICIENCY =
      Key.required(
          "gear-efficiency",
          Scalar.Quantity.of(QuantityKind.PERCENT, "50 %", "100 %"),
          "Share of the torque that reaches the rail.");
  static final Key<List<SeriesMotorPower.Group>> GROUPS =
      Key.required(
          "groups",
          ListOf.some(GROUP).upTo(20).unique("name"),
          "How the motors are grouped, in the order of the handle; each is one notch.");
  static final ObjectSchema<SeriesMotorPower> MOTORS_SHAPE =
      ObjectSchema.of(
          "series motors",
          List.of(NUMBER, LINE, RATING, GEAR, WHEEL, GEAR_EFFICIENCY, GROUPS),
          MotorTables::motors);
  static final Key<SeriesMotorPower> MOTORS =
      Key.required(
          "motors",
          MOTORS_SHAPE,
          "The series motors from which the efforts of the notches follow.");

  static final Key<Double> LINE_VOLTAGE =
      Key.preset(
          "line-voltage",
          Scalar.Quantity.of(QuantityKind.PERCENT, "50 %", "130 %"),
          1.0,
          "100 %",
          "The voltage that the line is taken to have, as a share of the stated one.");

  static final Forms<Traction> POWER = new Forms<>("the power handle", forms());

  private static Map<String, ValueType<? extends Traction>> forms() {
    Map<String, ValueType<? extends Traction>> forms = new LinkedHashMap<>();
    forms.put(
        MOTORS.name(),
        ObjectSchema.of(
            "the power handle",
            List.of(TIME_PER_NOTCH, NOTCHING_DOWN, MOTORS, LINE_VOLTAGE),
            v -> {
              SeriesMotorPower stated = v.get(MOTORS);
              return stated
                  .atLineVolts(stated.lineVolts() * v.get(LINE_VOLTAGE))
                  .traction(v.get(TIME_PER_NOTCH), v.get(NOTCHING_DOWN));
            }));
    forms.put(
        NOTCHES.name(),
        ObjectSchema.of(
            "the power handle",
            List.of(TIME_PER_NOTCH, NOTCHING_DOWN, NOTCHES, LINE_VOLTAGE),
            v -> {
              Traction stated =
                  new Traction(v.get(NOTCHES), v.get(TIME_PER_NOTCH), v.get(NOTCHING_DOWN));
              return v.get(LINE_VOLTAGE) == 1 ? stated : stated.atLineVoltage(v.get(LINE_VOLTAGE));
            }));
    return forms;
  }

  private static SeriesMotorPower motors(Values v) {
    Rating rating = v.get(RATING);
    SeriesMotor motor =
        new SeriesMotor(
            rating.volts(),
            rating.amperes(),
            rating.rpm(),
            rating.ohms(),
            rating.knee(),
            v.get(GEAR),
            v.get(WHEEL),
            v.get(GEAR_EFFICIENCY));
    return new SeriesMotorPower(motor, v.get(LINE), v.get(NUMBER).intValue(), v.get(GROUPS));
  }

  private static void leavesABackVoltage(Values v) {
    Common.whenBoth(
        v,
        VOLTS,
        RATED_CURRENT,
        (volts, amperes) ->
            v.find(OHMS)
                .filter(ohms -> amperes * ohms >= volts)
                .ifPresent(ohms -> v.error(OHMS, StockMistakes.NO_BACK_VOLTAGE)));
  }

  private MotorTables() {}
}
