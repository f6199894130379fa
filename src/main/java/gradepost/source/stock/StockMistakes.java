package gradepost.source.stock;

import gradepost.stock.GaugeReading;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.yaml.Holes;
import gradepost.yaml.Key;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** What can be wrong with a train. Its sentences stand in {@code mistakes.properties}. */
final class StockMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(StockMistakes.class);

  static final Mistake STEP_PRESSURES_DO_NOT_RISE = MISTAKES.declare("step-pressures-do-not-rise");
  static final One<Pressure> STEP_ABOVE_FULL =
      MISTAKES.declare("step-above-full", BrakeChecks.pressure("full"));
  static final Two<Pressure, Pressure> STEPS_END_BELOW_FULL =
      MISTAKES.declare(
          "steps-end-below-full", BrakeChecks.pressure("last"), BrakeChecks.pressure("full"));
  static final Two<Pressure, Pressure> FULL_ABOVE_PIPE =
      MISTAKES.declare(
          "full-above-pipe", BrakeChecks.pressure("full"), BrakeChecks.pressure("most"));
  static final Two<Pressure, Pressure> LIMIT_ABOVE_EMPTY_PIPE =
      MISTAKES.declare(
          "limit-above-empty-pipe", BrakeChecks.pressure("limit"), BrakeChecks.pressure("empty"));
  static final One<String> SECOND_OF_A_ROLE =
      MISTAKES.declare("second-of-a-role", Hole.word("role"));
  static final Mistake NO_SERVICE_BRAKE = MISTAKES.declare("no-service-brake");
  static final Mistake TOO_FAST_FOR_A_PERCENTAGE = MISTAKES.declare("too-fast-for-a-percentage");
  static final Two<String, Length> TOO_LONG_FOR_A_PERCENTAGE =
      MISTAKES.declare(
          "too-long-for-a-percentage", Holes.quoted("formation"), Holes.metres("length"));
  static final Mistake RECHARGE_WITHOUT_PIPE = MISTAKES.declare("recharge-without-pipe");
  static final Mistake RECHARGE_OF_A_DISTRIBUTOR = MISTAKES.declare("recharge-of-a-distributor");
  static final Mistake TABLE_SPEEDS_DO_NOT_RISE = MISTAKES.declare("table-speeds-do-not-rise");
  static final Mistake THRESHOLD_NOT_BELOW = MISTAKES.declare("threshold-not-below");
  static final Mistake NO_BACK_VOLTAGE = MISTAKES.declare("no-back-voltage");
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_VEHICLE =
      MISTAKES.declare(
          "unknown-vehicle", Holes.quoted("vehicle"), Hole.list("known"), Hole.perhaps("near"));
  static final One<String> NO_MOTORED_VEHICLE =
      MISTAKES.declare("no-motored-vehicle", Holes.quoted("formation"));
  static final Mistake EFFORT_SPEEDS_DO_NOT_RISE = MISTAKES.declare("effort-speeds-do-not-rise");
  static final Two<Key<?>, Key<?>> LIGHTER_WHEN_LOADED =
      MISTAKES.declare("lighter-when-loaded", Holes.key("heavier"), Holes.key("lighter"));
  static final Mistake ROTATING_TOO_MUCH = MISTAKES.declare("rotating-too-much");
  static final Mistake VALVE_OFF_THE_VEHICLE = MISTAKES.declare("valve-off-the-vehicle");
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_BRAKE =
      MISTAKES.declare(
          "unknown-brake", Holes.quoted("brake"), Hole.list("known"), Hole.perhaps("near"));
  static final Two<String, Pressure> READING_ABOVE_FULL =
      MISTAKES.declare("reading-above-full", Hole.word("brake"), BrakeChecks.pressure("full"));
  static final One<Pressure> READING_ABOVE_PIPE =
      MISTAKES.declare("reading-above-pipe", BrakeChecks.pressure("pipe"));
  static final One<GaugeReading.Gauge> READING_WITHOUT_PIPE =
      MISTAKES.declare("reading-without-pipe", new Hole<>("near", StockMistakes::typed));
  static final Mistake READING_TOO_NARROW = MISTAKES.declare("reading-too-narrow");

  /** As a file says it. */
  private static String typed(GaugeReading.Gauge gauge) {
    return gauge.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private StockMistakes() {}
}
