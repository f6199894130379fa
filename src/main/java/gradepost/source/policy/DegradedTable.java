package gradepost.source.policy;

import gradepost.policy.DegradedRules;
import gradepost.policy.DegradedRules.AutomaticTechnique;
import gradepost.policy.DegradedRules.Clause;
import gradepost.policy.DegradedRules.Permit;
import gradepost.policy.Technique;
import gradepost.source.policy.PolicyTables.Said;
import gradepost.source.stock.BrakeTables;
import gradepost.units.Pressure;
import gradepost.units.QuantityKind;
import gradepost.units.Speed;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.ValueType;
import gradepost.yaml.Values;
import gradepost.yaml.Variants;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The keys of the clauses for trains whose brake is not whole. */
final class DegradedTable {
  static final Key<Boolean> PERMITTED =
      Key.required(
          "permitted", Scalar.Choice.yesNo(), "Whether the operator's rules let a train run so.");
  static final Key<String> CLAUSE =
      Key.required(
          "clause",
          Common.prose("where the rule stands"),
          "The rule; the head of a paper names it.");
  static final Key<String> TO =
      Key.required(
          "to", Common.prose("how far, in words"), "How far a train may run so, for the head.");
  static final Key<Speed> AT_MOST =
      Key.required("at-most", Common.speed("5 km/h", "400 km/h"), "No faster than this.");
  static final Key<Double> MOST_VEHICLES =
      Key.required(
          "most-vehicles",
          Scalar.Quantity.of(QuantityKind.PERCENT, "1 %", "99 %"),
          "Share of the vehicles of a train that may be so at the most.");

  static final ObjectSchema<Said<Technique>> STOPPING_SHAPE =
      ObjectSchema.of(
              "the stopping technique without eases",
              List.of(
                  PolicyTables.FOR, PolicyTables.FIRST, PolicyTables.FIRST_HELD, PolicyTables.MAIN),
              v -> technique(v, List.of()))
          .checked(PolicyTables::pressuresInOrder);
  static final Key<Speed> RELEASE_ABOVE =
      Key.required(
          "release-above-target",
          PolicyTables.difference(),
          "The brake is released once, when the speed has fallen to so much above the target's.");
  static final ObjectSchema<Said<Technique>> RESTRICTION_SHAPE =
      ObjectSchema.of(
              "the technique for a lower speed with one release",
              List.of(
                  PolicyTables.FOR,
                  PolicyTables.FIRST,
                  PolicyTables.FIRST_HELD,
                  PolicyTables.MAIN,
                  RELEASE_ABOVE),
              v -> technique(v, List.of(new Technique.Ease(v.get(RELEASE_ABOVE), new Pressure(0)))))
          .checked(PolicyTables::pressuresInOrder);
  static final Key<Said<Technique>> STOPPING =
      Key.required(
          "stopping", STOPPING_SHAPE, "For a stop: applied once and held until the train stands.");
  static final Key<Said<Technique>> RESTRICTION =
      Key.required(
          "restriction", RESTRICTION_SHAPE, "For a lower speed: applied once and released once.");
  static final Key<Pressure> CHECK =
      Key.required("check-pressure", BrakeTables.PRESSURE, "Pressure of a checking application.");
  static final ObjectSchema<AutomaticTechnique> TECHNIQUE_SHAPE =
      ObjectSchema.of(
          "the technique for a brake that cannot be eased",
          List.of(STOPPING, RESTRICTION, CHECK),
          v ->
              new AutomaticTechnique(
                  v.get(STOPPING).value(),
                  v.get(RESTRICTION).value(),
                  v.get(CHECK),
                  v.get(STOPPING).purpose(),
                  v.get(RESTRICTION).purpose()));
  static final Key<AutomaticTechnique> TECHNIQUE =
      Key.required(
          "technique", TECHNIQUE_SHAPE, "How the train is braked with the automatic brake alone.");

  private static final ValueType<Clause> PART_CLAUSE =
      clause(
          ObjectSchema.of(
              "a clause that permits",
              List.of(PERMITTED, CLAUSE, TO, AT_MOST, MOST_VEHICLES),
              v -> permits(v, v.get(MOST_VEHICLES), Optional.empty())));

  static final Key<Clause> OUT_OF_USE =
      Key.optional(
          "ep-out-of-use",
          clause(
              ObjectSchema.of(
                  "a clause that permits",
                  List.of(PERMITTED, CLAUSE, TO, AT_MOST, TECHNIQUE),
                  v -> permits(v, 1, v.find(TECHNIQUE)))),
          "The service brake (EP) is out of use on the whole train.");
  static final Key<Clause> ON_PART =
      Key.optional("ep-on-part", PART_CLAUSE, "The service brake (EP) works on part of the train.");
  static final Key<Clause> ISOLATED =
      Key.optional("brakes-isolated", PART_CLAUSE, "The brakes of some vehicles are isolated.");

  static final Key<DegradedRules> DEGRADED =
      Key.optional(
          "degraded",
          ObjectSchema.of(
              "the clauses for a brake that is not whole",
              List.of(OUT_OF_USE, ON_PART, ISOLATED),
              v -> new DegradedRules(v.find(OUT_OF_USE), v.find(ON_PART), v.find(ISOLATED))),
          "What a train may do whose brake is not whole; what is left out is not permitted.");

  private static ValueType<Clause> clause(ObjectSchema<Clause> permits) {
    Map<String, ObjectSchema<? extends Clause>> shapes = new LinkedHashMap<>();
    shapes.put("yes", permits);
    shapes.put(
        "no",
        ObjectSchema.of(
            "a clause that forbids",
            List.of(PERMITTED, CLAUSE),
            v -> new Clause(v.get(CLAUSE), Optional.empty())));
    return new Variants<>("a clause", PERMITTED.name(), shapes);
  }

  private static Clause permits(
      Values v, double mostVehicles, Optional<AutomaticTechnique> technique) {
    return new Clause(
        v.get(CLAUSE), Optional.of(new Permit(v.get(TO), v.get(AT_MOST), mostVehicles, technique)));
  }

  private static Said<Technique> technique(Values v, List<Technique.Ease> eases) {
    Technique technique =
        new Technique(
            v.get(PolicyTables.FIRST),
            v.get(PolicyTables.FIRST_HELD),
            v.get(PolicyTables.MAIN),
            eases);
    v.remember(technique);
    return new Said<>(technique, v.get(PolicyTables.FOR));
  }

  private DegradedTable() {}
}
