package gradepost.source.stock;

import gradepost.stock.BrakeAction;
import gradepost.units.Length;
import gradepost.units.PressureRate;
import gradepost.units.QuantityKind;
import gradepost.units.Span;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import java.util.List;

/** Keys of a brake's times: how it builds up, and how its reservoirs fill again. */
final class BrakeTimes {
  private static final Scalar.Quantity<Span> PART =
      Scalar.Quantity.of(QuantityKind.TIME, "0 s", "60 s");

  static final Key<Span> BUILD_UP_A =
      Key.required("a", PART, "The part of the build-up that every train has.");
  static final Key<Span> BUILD_UP_B = Key.required("b", PART, "For each hundred metres of train.");
  static final Key<Span> BUILD_UP_C =
      Key.required("c", PART, "For the square of the hundreds of metres.");
  static final Key<Length> LEAST =
      Key.preset(
          "least",
          Common.length("0 m", "2 km"),
          new Length(0),
          "0 m",
          "Shorter trains count as this long.");
  static final ObjectSchema<BrakeAction.ByLength> BUILD_UP_SHAPE =
      ObjectSchema.of(
          "a build-up by length",
          List.of(BUILD_UP_A, BUILD_UP_B, BUILD_UP_C, LEAST),
          v ->
              new BrakeAction.ByLength(
                  v.get(BUILD_UP_A).seconds(),
                  v.get(BUILD_UP_B).seconds(),
                  v.get(BUILD_UP_C).seconds(),
                  v.get(LEAST)));
  static final Key<BrakeAction.ByLength> BUILD_UP =
      Key.required(
          "build-up",
          BUILD_UP_SHAPE,
          "Time until the whole train brakes, a + b·L/100 + c·(L/100)² with L in metres.");

  static final Key<PressureRate> RECHARGE =
      Key.optional(
          "recharge",
          Scalar.Quantity.of(QuantityKind.PRESSURE_RATE, "0.05 psi/s", "50 psi/s"),
          "How fast the reservoirs on the vehicles fill again after a full release; left out where"
              + " they are always full.");

  private BrakeTimes() {}
}
