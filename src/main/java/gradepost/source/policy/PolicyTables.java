package gradepost.source.policy;

import static gradepost.yaml.Common.length;

import gradepost.policy.Technique;
import gradepost.policy.TerminalStep;
import gradepost.source.stock.BrakeTables;
import gradepost.source.stock.StockTables;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.units.Acceleration;
import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.units.QuantityKind;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Order;
import gradepost.yaml.Scalar;
import gradepost.yaml.ValueType;
import gradepost.yaml.Values;
import gradepost.yaml.Variants;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Key tables of the parts of a policy. */
final class PolicyTables {
  /** A value and what it is for. */
  record Said<T>(T value, String purpose) {}

  /**
   * An adhesion case as typed.
   *
   * @param of the case of which it is a share; empty where it has a law of its own
   */
  record TypedCase(
      String name, Optional<AdhesionLaw> law, Optional<String> of, double share, String purpose) {}

  static final Key<String> FOR =
      Key.required(
          "for",
          Common.prose("what it is for, in words"),
          "What it is for, for the reading notes.");

  static <T> Key<Said<T>> said(String name, ValueType<T> kind, String description) {
    Key<T> value = Key.required("value", kind, description);
    ObjectSchema<Said<T>> shape =
        ObjectSchema.of(name, List.of(value, FOR), v -> new Said<>(v.get(value), v.get(FOR)));
    return Key.required(name, shape, description);
  }

  /** The same that may be left out, and is then not known. */
  static <T> Key<Said<T>> perhaps(String name, ValueType<T> kind, String description) {
    Key<T> value = Key.required("value", kind, description);
    ObjectSchema<Said<T>> shape =
        ObjectSchema.of(name, List.of(value, FOR), v -> new Said<>(v.get(value), v.get(FOR)));
    return Key.optional(name, shape, description);
  }

  /** A value that may be left out, with its purpose if it is given. */
  static <T> Key<Said<T>> usual(
      String name, ValueType<T> kind, T fallback, String fallbackText, String description) {
    Key<T> value = Key.required("value", kind, description);
    ObjectSchema<Said<T>> shape =
        ObjectSchema.of(name, List.of(value, FOR), v -> new Said<>(v.get(value), v.get(FOR)));
    return Key.preset(name, shape, new Said<>(fallback, ""), fallbackText, description);
  }

  static Scalar.Quantity<Speed> difference() {
    return Common.speed("0 km/h", "60 km/h");
  }

  static final Key<String> CASE_NAME = Common.name("The state of the rail, in a word; unique.");
  static final Key<String> CASE_LAW = StockTables.law("curtius-kniffler", "constant", "share");
  static final Key<Double> MU =
      Key.required(
          "mu",
          new Scalar.PlainNumber("a coefficient", false, 0.005, 0.6),
          "Adhesion at every speed.");
  static final Key<String> OF =
      Key.required(
          "of", Common.text("the name of another case"), "The case of which it is a share.");
  static final Key<Double> SHARE =
      Key.required(
          "share",
          Scalar.Quantity.of(QuantityKind.PERCENT, "1 %", "100 %"),
          "Its share of that case.");
  static final Variants<TypedCase> ADHESION_CASE =
      new Variants<>("an adhesion case", "law", adhesionLaws());

  static final Key<Speed> ABOVE_TARGET =
      Key.required(
          "above-target", difference(), "When the speed has fallen to so much above the target's.");
  static final Key<Pressure> EASE_TO =
      Key.required("to", BrakeTables.PRESSURE, "The pressure then asked for; 0 is a release.");
  static final Key<Acceleration> SLOWS_BY =
      Key.optional(
          "slows-by",
          Scalar.Quantity.of(QuantityKind.ACCELERATION, "0.05 m/s2", "1.5 m/s2"),
          "More pressure than `to` is applied if less would not slow the train by this at that speed, on the gradient there.");
  static final ObjectSchema<Technique.Ease> EASE =
      ObjectSchema.of(
          "an ease",
          List.of(ABOVE_TARGET, EASE_TO, SLOWS_BY),
          v -> new Technique.Ease(v.get(ABOVE_TARGET), v.get(EASE_TO), v.find(SLOWS_BY)));
  static final Key<Pressure> FIRST =
      Key.required("first", BrakeTables.PRESSURE, "First application, to feel the brake.");
  static final Key<Span> FIRST_HELD =
      Key.required(
          "first-held",
          Scalar.Quantity.of(QuantityKind.TIME, "0 s", "60 s"),
          "How long it is held before the main application.");
  static final Key<Pressure> MAIN = Key.required("main", BrakeTables.PRESSURE, "Main application.");
  static final Key<List<Technique.Ease>> EASES =
      Key.required(
          "eases", ListOf.any(EASE).upTo(10), "Eases in the order of use, falling in both.");
  static final ObjectSchema<Said<Technique>> STOPPING = technique("the stopping technique");
  static final ObjectSchema<Said<Technique>> RESTRICTION =
      technique("the technique for a restriction").checked(PolicyTables::endsInRelease);

  static final Key<Length> BEFORE_MARK =
      Key.required("before-mark", length("0 m", "2 km"), "From so far before the stop mark.");
  static final Key<Speed> STEP_SPEED =
      Key.required("speed", Common.speed("1 km/h", "100 km/h"), "No faster than this.");
  static final ObjectSchema<TerminalStep> TERMINAL_STEP =
      ObjectSchema.of(
          "a terminal step",
          List.of(BEFORE_MARK, STEP_SPEED),
          v -> new TerminalStep(v.get(BEFORE_MARK), v.get(STEP_SPEED)));
  static final Key<List<TerminalStep>> STEPS =
      Key.required(
          "steps", ListOf.some(TERMINAL_STEP).upTo(10), "Steps, nearer and slower each time.");
  static final ObjectSchema<Said<List<TerminalStep>>> TERMINAL =
      ObjectSchema.of(
              "terminal speeds", List.of(FOR, STEPS), v -> new Said<>(v.get(STEPS), v.get(FOR)))
          .checked(PolicyTables::stepsFall);

  private static ObjectSchema<Said<Technique>> technique(String noun) {
    return ObjectSchema.of(
            noun, List.of(FOR, FIRST, FIRST_HELD, MAIN, EASES), PolicyTables::technique)
        .checked(PolicyTables::pressuresInOrder);
  }

  private static Said<Technique> technique(Values v) {
    Technique technique = new Technique(v.get(FIRST), v.get(FIRST_HELD), v.get(MAIN), v.get(EASES));
    v.remember(technique);
    return new Said<>(technique, v.get(FOR));
  }

  private static Map<String, ObjectSchema<? extends TypedCase>> adhesionLaws() {
    Map<String, ObjectSchema<? extends TypedCase>> laws = new LinkedHashMap<>();
    laws.put(
        "curtius-kniffler",
        ObjectSchema.of(
            "adhesion by Curtius and Kniffler",
            List.of(CASE_NAME, CASE_LAW, FOR),
            v -> own(v, new CurtiusKniffler())));
    laws.put(
        "constant",
        ObjectSchema.of(
            "constant adhesion",
            List.of(CASE_NAME, CASE_LAW, MU, FOR),
            v -> own(v, new ConstantAdhesion(v.get(MU)))));
    laws.put(
        "share",
        ObjectSchema.of(
            "a share of another case",
            List.of(CASE_NAME, CASE_LAW, OF, SHARE, FOR),
            v ->
                new TypedCase(
                    v.get(CASE_NAME),
                    Optional.empty(),
                    Optional.of(v.get(OF)),
                    v.get(SHARE),
                    v.get(FOR))));
    return laws;
  }

  private static TypedCase own(Values v, AdhesionLaw law) {
    return new TypedCase(v.get(CASE_NAME), Optional.of(law), Optional.empty(), 1, v.get(FOR));
  }

  static void pressuresInOrder(Values v) {
    Common.whenBoth(
        v,
        FIRST,
        MAIN,
        (first, main) -> {
          if (first.compareTo(main) > 0) {
            v.error(FIRST, PolicyMistakes.FIRST_ABOVE_MAIN);
          }
          if (first.pascals() <= 0) {
            v.error(FIRST, PolicyMistakes.FIRST_IS_NO_APPLICATION);
          }
        });
    v.find(EASES)
        .ifPresent(
            eases -> {
              Order.falling(
                  eases,
                  e -> e.aboveTarget().metresPerSecond(),
                  e -> v.in().spot(e, ABOVE_TARGET),
                  PolicyMistakes.EASE_SPEEDS_DO_NOT_FALL,
                  v.in());
              Order.falling(
                  eases,
                  e -> e.to().pascals(),
                  e -> v.in().spot(e, EASE_TO),
                  PolicyMistakes.EASE_PRESSURES_DO_NOT_FALL,
                  v.in());
            });
    Common.whenBoth(
        v,
        MAIN,
        EASES,
        (main, eases) -> {
          if (!eases.isEmpty() && eases.get(0).to().compareTo(main) >= 0) {
            v.in()
                .error(
                    v.in().spot(eases.get(0), EASE_TO), PolicyMistakes.FIRST_EASE_NOT_BELOW_MAIN);
          }
        });
  }

  private static void endsInRelease(Values v) {
    v.find(EASES)
        .ifPresent(
            eases -> {
              if (eases.isEmpty() || eases.get(eases.size() - 1).to().pascals() > 0) {
                v.error(EASES, PolicyMistakes.NO_RELEASE_AT_THE_END);
              }
            });
  }

  private static void stepsFall(Values v) {
    v.find(STEPS)
        .ifPresent(
            steps -> {
              Order.falling(
                  steps,
                  s -> s.beforeMark().metres(),
                  s -> v.in().spot(s, BEFORE_MARK),
                  PolicyMistakes.STEP_DISTANCES_DO_NOT_FALL,
                  v.in());
              Order.falling(
                  steps,
                  s -> s.speed().metresPerSecond(),
                  s -> v.in().spot(s, STEP_SPEED),
                  PolicyMistakes.STEP_SPEEDS_DO_NOT_FALL,
                  v.in());
            });
  }

  private PolicyTables() {}
}
