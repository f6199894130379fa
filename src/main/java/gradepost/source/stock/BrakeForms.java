package gradepost.source.stock;

import gradepost.route.audit.AuditRule;
import gradepost.route.audit.AuditText;
import gradepost.source.stock.StockTable.Brakes;
import gradepost.stock.BrakePercentage;
import gradepost.stock.BrakePreset;
import gradepost.stock.BrakeSystem;
import gradepost.stock.StatedBrakeForce;
import gradepost.units.Pressure;
import gradepost.units.QuantityKind;
import gradepost.yaml.Forms;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ListOr;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Problem;
import gradepost.yaml.Scalar;
import gradepost.yaml.Severity;
import gradepost.yaml.ValueType;
import gradepost.yaml.Values;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Key tables of the brake where it is a usual arrangement, or known by its percentage only. */
final class BrakeForms {
  static final Key<BrakePreset> PRESET =
      Key.required("preset", new Scalar.Choice<>(presets()), "A usual arrangement of brakes.");
  static final Key<List<BrakeSystem>> SYSTEMS =
      Key.required(
          "systems",
          new ListOr<>(
              ListOf.some(BrakeTables.SYSTEM).upTo(6).unique("name", "short"),
              ObjectSchema.of(
                  "a usual arrangement", List.of(PRESET), v -> v.get(PRESET).systems())),
          "The ways of braking the train.");
  static final Key<StatedBrakeForce> FORCE =
      Key.required("force", BrakeTables.FORCE, "From cylinder pressure to force.");

  static final Key<Double> PERCENTAGE =
      Key.required(
          "percentage",
          new Scalar.PlainNumber("a braked weight percentage", false, 30, 250),
          "Braked weight percentage of the train, if nothing more is known of its brake. More than"
              + " 135 counts as 135 in service braking.");
  static final Key<Pressure> GAUGE =
      Key.required(
          "full",
          Scalar.Quantity.of(QuantityKind.PRESSURE, "1 psi", "150 psi"),
          "What the cylinder gauge shows when the brake is fully applied.");

  static final Forms<Brakes> BRAKES = new Forms<>("the brakes", forms());

  private static Map<String, ValueType<? extends Brakes>> forms() {
    Map<String, ValueType<? extends Brakes>> forms = new LinkedHashMap<>();
    forms.put(
        PERCENTAGE.name(),
        ObjectSchema.of(
                "a brake by its percentage", List.of(PERCENTAGE, GAUGE), BrakeForms::byPercentage)
            .checked(BrakeForms::countsLessInService));
    forms.put(
        FORCE.name(),
        ObjectSchema.of(
            "the brakes", List.of(FORCE, SYSTEMS), v -> new Brakes(v.get(FORCE), v.get(SYSTEMS))));
    return forms;
  }

  private static Brakes byPercentage(Values v) {
    Pressure full = v.get(GAUGE);
    BrakePercentage percentage = new BrakePercentage(v.get(PERCENTAGE));
    return new Brakes(
        percentage.inService().force(full),
        List.of(percentage.service(full), percentage.emergency(full)));
  }

  /** Tells that a high percentage counts for less in service braking than the file says. */
  private static void countsLessInService(Values v) {
    v.find(PERCENTAGE)
        .filter(percentage -> percentage > BrakePercentage.MOST_IN_SERVICE)
        .ifPresent(
            percentage ->
                v.in()
                    .add(
                        new Problem(
                            v.spot(PERCENTAGE),
                            Severity.NOTE,
                            AuditText.PERCENTAGE_CUT.with(BrakePercentage.MOST_IN_SERVICE),
                            AuditRule.PERCENTAGE_CUT.code())));
  }

  private static Map<String, BrakePreset> presets() {
    Map<String, BrakePreset> words = new LinkedHashMap<>();
    for (BrakePreset preset : BrakePreset.values()) {
      words.put(preset.name().toLowerCase(Locale.ROOT).replace('_', '-'), preset);
    }
    return words;
  }

  /** Reservoirs fill again from a pipe, whose law and pressure must then be known. */
  static void rechargesFromPipe(Values v) {
    if (v.find(BrakeTimes.RECHARGE).isPresent() && !v.has(BrakeTables.PIPE_KEY)) {
      v.error(BrakeTimes.RECHARGE, StockMistakes.RECHARGE_WITHOUT_PIPE);
    }
    if (v.find(BrakeTimes.RECHARGE).isPresent()
        && v.find(BrakeTables.PIPE_KEY).filter(law -> !law.drainsReservoirs()).isPresent()) {
      v.error(BrakeTimes.RECHARGE, StockMistakes.RECHARGE_OF_A_DISTRIBUTOR);
    }
  }

  private BrakeForms() {}
}
