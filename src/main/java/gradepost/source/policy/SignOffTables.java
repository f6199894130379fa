package gradepost.source.policy;

import static gradepost.source.policy.PolicyTables.said;
import static gradepost.source.policy.PolicyTables.usual;

import gradepost.policy.Currency;
import gradepost.policy.PaperRules;
import gradepost.policy.RecorderRules;
import gradepost.policy.RideFault;
import gradepost.policy.RideRules;
import gradepost.policy.SignOffRules;
import gradepost.policy.StripLayer;
import gradepost.policy.Subject;
import gradepost.source.policy.PolicyTables.Said;
import gradepost.source.stock.BrakeTables;
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
import gradepost.yaml.Scalar;
import java.util.List;

/** The key table of a policy's rules for sign-off papers. */
final class SignOffTables {
  private static final Scalar<Double> SHARE =
      Scalar.Quantity.of(QuantityKind.PERCENT, "1 %", "100 %");

  static final Key<Said<Double>> PAPERS =
      said("papers", count("a number of papers", 1, 12), "Knowledge papers, of equal weight.");
  static final Key<Said<Double>> QUESTIONS =
      said("questions", count("a number of questions", 12, 60), "Questions in each paper.");
  static final Key<Said<Double>> PASS_MARK =
      said("pass-mark", SHARE, "Share of right answers that passes.");
  static final Key<Said<List<Subject>>> MUST_PASS =
      said(
          "must-pass",
          ListOf.any(Scalar.Choice.of(Subject.class)),
          "Subjects in which every answer has to be right.");
  static final Key<Said<List<StripLayer>>> BLANK_STRIP =
      said(
          "blank-strip",
          ListOf.some(Scalar.Choice.of(StripLayer.class)),
          "What is left out of the strip that the learner fills in.");

  static final Key<Said<Length>> EARLY =
      said("early", Common.length("0 m", "2 km"), "How far before its point the brake may go on.");
  static final Key<Said<Length>> LATE =
      said("late", Common.length("0 m", "500 m"), "How far after its point the brake may go on.");
  static final Key<Said<Speed>> SPEED_WITHIN =
      said(
          "speed-within",
          PolicyTables.difference(),
          "By how much the speed at the point may differ.");
  static final Key<Said<Pressure>> PRESSURE_WITHIN =
      said(
          "pressure-within",
          BrakeTables.PRESSURE,
          "By how much the pressure of the first application may differ.");
  static final Key<Said<Length>> STOP_SHORT =
      said(
          "stop-short", Common.length("0 m", "100 m"), "How far short of its mark is a good stop.");
  static final Key<Said<Length>> STOP_PAST =
      said("stop-past", Common.length("0 m", "50 m"), "How far past its mark is a good stop.");
  static final Key<Said<Speed>> OVERSPEED =
      said(
          "overspeed",
          PolicyTables.difference(),
          "Less than this over the permissible speed is no fault.");
  static final Key<Said<Span>> OVERSPEED_FOR =
      usual(
          "overspeed-for",
          time("0 s", "10 s"),
          new Span(2),
          "2 s",
          "Nor is what lasts no longer than this, where it was recorded.");
  static final Key<Said<Double>> LEAST_OBSERVED =
      said("least-observed", SHARE, "Share of the points that has to be observed for a result.");
  static final Key<Said<Double>> PASS_SCORE =
      said("pass-score", SHARE, "Share of the points that passes.");
  static final Key<Said<List<RideFault>>> FAILS =
      said(
          "fails",
          ListOf.any(Scalar.Choice.of(RideFault.class)),
          "What fails a ride whatever its score.");
  static final Key<Said<Double>> SCALE_WITHIN =
      usual(
          "scale-within",
          Scalar.Quantity.of(QuantityKind.PERCENT, "0 %", "10 %"),
          RecorderRules.USUAL.scaleWithin(),
          "3 %",
          "A leg is not scored if the recorder's metre differs from the road's by more than this.");
  static final Key<Said<Double>> SLIP =
      usual(
          "slip",
          Scalar.Quantity.of(QuantityKind.PERCENT, "0 %", "30 %"),
          RecorderRules.USUAL.slip(),
          "5 %",
          "A wheel that slips or slides counts wrongly by as much as this.");
  static final Key<Said<Acceleration>> SLIP_FROM =
      usual(
          "slip-from",
          Scalar.Quantity.of(QuantityKind.ACCELERATION, "0.05 m/s2", "3 m/s2"),
          RecorderRules.USUAL.slipFrom(),
          "0.3 m/s2",
          "A wheel may slip or slide where the speed changes by as much as this.");
  static final Key<Said<Span>> CLOCK_WITHIN =
      usual(
          "clock-within",
          time("0 s", "2 s"),
          RecorderRules.USUAL.clockWithin(),
          "0.2 s",
          "The time of a line may be wrong by as much as this.");
  static final Key<Said<Span>> LONGEST_GAP =
      usual(
          "longest-gap",
          time("1 s", "60 s"),
          RecorderRules.USUAL.longestGap(),
          "5 s",
          "What lies between two lines further apart than this was not observed.");
  static final ObjectSchema<RecorderRules> RECORDER_SHAPE =
      ObjectSchema.of(
          "the recorder",
          List.of(SCALE_WITHIN, SLIP, SLIP_FROM, CLOCK_WITHIN, LONGEST_GAP),
          v ->
              new RecorderRules(
                  v.get(SCALE_WITHIN).value(),
                  v.get(SLIP).value(),
                  v.get(SLIP_FROM).value(),
                  v.get(CLOCK_WITHIN).value(),
                  v.get(LONGEST_GAP).value()));
  static final Key<RecorderRules> RECORDER =
      Key.preset(
          "recorder",
          RECORDER_SHAPE,
          RecorderRules.USUAL,
          "the usual values",
          "What is believed of a recorder that counts by a wheel.");
  static final ObjectSchema<RideRules> RIDE_SHAPE =
      ObjectSchema.of(
          "the score of a ride",
          List.of(
              EARLY,
              LATE,
              SPEED_WITHIN,
              PRESSURE_WITHIN,
              STOP_SHORT,
              STOP_PAST,
              OVERSPEED,
              OVERSPEED_FOR,
              LEAST_OBSERVED,
              PASS_SCORE,
              FAILS,
              RECORDER),
          v ->
              new RideRules(
                  v.get(EARLY).value(),
                  v.get(LATE).value(),
                  v.get(SPEED_WITHIN).value(),
                  v.get(PRESSURE_WITHIN).value(),
                  v.get(STOP_SHORT).value(),
                  v.get(STOP_PAST).value(),
                  v.get(OVERSPEED).value(),
                  v.get(OVERSPEED_FOR).value(),
                  v.get(LEAST_OBSERVED).value(),
                  v.get(PASS_SCORE).value(),
                  v.get(FAILS).value(),
                  v.get(RECORDER)));
  static final Key<RideRules> RIDE =
      Key.required("ride", RIDE_SHAPE, "How an assessed ride is scored.");

  static final Key<Said<Double>> LAPSE =
      said("lapse-months", count("months", 1, 60), "Months without a trip until it lapses.");
  static final Key<Said<Double>> REFRESH =
      said("refresh-trips", count("trips", 1, 60), "Trips with an instructor that bring it back.");
  static final Key<Said<Double>> REVIEW =
      said("review-months", count("months", 1, 60), "Months from signing to the first review.");
  static final Key<Said<Double>> DAY_TRIPS = trips("day-trips", "by day");
  static final Key<Said<Double>> NIGHT_TRIPS = trips("night-trips", "by night");
  static final Key<Said<Double>> POOR_RAIL_TRIPS = trips("poor-rail-trips", "on damp or low rail");
  static final Key<Said<Double>> KEEP =
      PolicyTables.perhaps(
          "keep-months",
          count("months", 1, 600),
          "Months for which the records of somebody who left are kept; for ever if not given.");
  static final ObjectSchema<Currency> CURRENCY_SHAPE =
      ObjectSchema.of(
          "the currency",
          List.of(LAPSE, REFRESH, REVIEW, DAY_TRIPS, NIGHT_TRIPS, POOR_RAIL_TRIPS, KEEP),
          v ->
              new Currency(
                  v.get(LAPSE).value().intValue(),
                  v.get(REFRESH).value().intValue(),
                  v.get(REVIEW).value().intValue(),
                  new Currency.Trips(
                      v.get(DAY_TRIPS).value().intValue(),
                      v.get(NIGHT_TRIPS).value().intValue(),
                      v.get(POOR_RAIL_TRIPS).value().intValue()),
                  v.find(KEEP).map(kept -> kept.value().intValue())));
  static final Key<Currency> CURRENCY =
      Key.required("currency", CURRENCY_SHAPE, "How long a signature stands.");

  static final ObjectSchema<SignOffRules> SIGN_OFF =
      ObjectSchema.of(
          "the rules of signing off",
          List.of(PAPERS, QUESTIONS, PASS_MARK, MUST_PASS, BLANK_STRIP, RIDE, CURRENCY),
          v ->
              new SignOffRules(
                  new PaperRules(
                      v.get(PAPERS).value().intValue(),
                      v.get(QUESTIONS).value().intValue(),
                      v.get(PASS_MARK).value(),
                      v.get(MUST_PASS).value(),
                      v.get(BLANK_STRIP).value()),
                  v.get(RIDE),
                  v.get(CURRENCY)));

  private static Key<Said<Double>> trips(String name, String when) {
    return usual(
        name,
        count("trips", 0, 60),
        0.0,
        "none in particular",
        "Least trips before signing, " + when + ".");
  }

  private static Scalar.Quantity<Span> time(String least, String most) {
    return Scalar.Quantity.of(QuantityKind.TIME, least, most);
  }

  private static Scalar<Double> count(String noun, int least, int most) {
    return new Scalar.PlainNumber(noun, true, least, most);
  }

  private SignOffTables() {}
}
