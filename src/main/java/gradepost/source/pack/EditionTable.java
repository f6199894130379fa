package gradepost.source.pack;

import gradepost.task.Edition;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.Variants;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The keys of the editions that a pack asks for beside the ordinary papers. */
final class EditionTable {
  private static final Scalar<String> FORMATION_NAME = Common.text("the name of a formation");

  static final Key<String> BRAKE =
      Key.required(
          "brake", Scalar.Choice.words(words()), "What is wrong with the brake of the train.");
  static final Key<String> NAME =
      Common.name("The edition, as it stands in every head and in the names of its files.");
  static final Key<List<String>> FORMATIONS =
      Key.preset(
          "formations",
          ListOf.some(FORMATION_NAME).upTo(12),
          List.of(),
          "every formation of the pack",
          "The formations that it is made for.");
  static final Key<String> FORMATION =
      Key.required("formation", FORMATION_NAME, "The formation that it is made for.");
  static final Key<List<Double>> VEHICLES =
      Key.required(
          "vehicles",
          ListOf.some(new Scalar.PlainNumber("the number of a vehicle", true, 1, 99)).upTo(99),
          "The vehicles whose brake is not whole; the leading one of the forward direction is 1.");

  static final Key<List<Edition>> EDITIONS =
      Key.preset(
          "editions",
          ListOf.any(new Variants<>("an edition", BRAKE.name(), shapes()))
              .upTo(12)
              .unique(NAME.name()),
          List.of(),
          "none",
          "Papers for a brake that is not whole, each permitted by a clause of the policy.");

  private static String[] words() {
    return List.of(Edition.Kind.values()).stream().map(Edition.Kind::word).toArray(String[]::new);
  }

  private static Map<String, ObjectSchema<? extends Edition>> shapes() {
    Map<String, ObjectSchema<? extends Edition>> shapes = new LinkedHashMap<>();
    for (Edition.Kind kind : Edition.Kind.values()) {
      shapes.put(
          kind.word(),
          switch (kind) {
            case EP_OUT_OF_USE -> wholeTrain(kind, "an edition with EP out of use");
            case EP_ON_PART -> someVehicles(kind, "an edition with EP on part of the train");
            case BRAKES_ISOLATED -> someVehicles(kind, "an edition with brakes isolated");
          });
    }
    return shapes;
  }

  private static ObjectSchema<Edition> wholeTrain(Edition.Kind kind, String noun) {
    return ObjectSchema.of(
        noun,
        List.of(BRAKE, NAME, FORMATIONS),
        v -> new Edition(v.get(NAME), kind, v.get(FORMATIONS), List.of()));
  }

  private static ObjectSchema<Edition> someVehicles(Edition.Kind kind, String noun) {
    return ObjectSchema.of(
        noun,
        List.of(BRAKE, NAME, FORMATION, VEHICLES),
        v ->
            new Edition(
                v.get(NAME),
                kind,
                List.of(v.get(FORMATION)),
                v.get(VEHICLES).stream().map(Double::intValue).toList()));
  }

  private EditionTable() {}
}
