package gradepost.source.stock;

import gradepost.stock.BrakeSystem;
import gradepost.stock.FailureSign;
import gradepost.stock.GaugeReading;
import gradepost.stock.LeavingTest;
import gradepost.stock.PipeLaw;
import gradepost.units.Nearest;
import gradepost.units.Pressure;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.Values;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Key tables of the tests before leaving and of the signs that a brake has failed. */
final class CareTables {
  private static final double SLACK_PA = 100;

  /** One step of the coarser gauge that is printed: a range this wide always holds a mark of it. */
  private static final double NARROWEST_PA = Pressure.ofBar(0.1).pascals();

  static final Key<GaugeReading.Gauge> GAUGE =
      Key.required(
          "gauge", Scalar.Choice.of(GaugeReading.Gauge.class), "Which gauge, and in which cab.");
  static final Key<Pressure> LEAST =
      Key.required("from", BrakeTables.PRESSURE, "The lowest pressure that is right.");
  static final Key<Pressure> MOST =
      Key.required("to", BrakeTables.PRESSURE, "The highest pressure that is right.");

  static final ObjectSchema<GaugeReading> READING =
      ObjectSchema.of(
              "what a gauge shows",
              List.of(GAUGE, LEAST, MOST),
              v -> new GaugeReading(v.get(GAUGE), v.get(LEAST), v.get(MOST)))
          .checked(CareTables::canBeRead);

  static final Key<String> ACTION =
      Key.required("do", Common.prose("an instruction"), "What is done, as an instruction.");
  static final Key<GaugeReading> SHOWS_THEN =
      Key.optional("shows", READING, "What a gauge must then show.");
  static final ObjectSchema<LeavingTest.Step> STEP =
      ObjectSchema.of(
          "a step of a test",
          List.of(ACTION, SHOWS_THEN),
          v -> new LeavingTest.Step(v.get(ACTION), v.find(SHOWS_THEN)));

  static final Key<String> NAME = Common.name("What is tested; unique in the file.");
  static final Key<String> TESTED =
      Key.required("brake", Common.text("the short name of a brake"), "The brake that is tested.");
  static final Key<List<LeavingTest.Step>> STEPS =
      Key.required("steps", ListOf.some(STEP).upTo(12), "What is done, in order.");
  static final ObjectSchema<LeavingTest> TEST =
      ObjectSchema.of(
          "a test before leaving",
          List.of(NAME, TESTED, STEPS),
          v -> new LeavingTest(v.get(NAME), v.get(TESTED), v.get(STEPS)));

  static final Key<String> FAILED =
      Key.required("brake", Common.text("the short name of a brake"), "The brake that has failed.");
  static final Key<FailureSign.By> BY =
      Key.required("by", Scalar.Choice.of(FailureSign.By.class), "How the driver meets it.");
  static final Key<String> WHAT =
      Key.required("what", Common.prose("words"), "What is seen, heard or felt.");
  static final Key<GaugeReading> SHOWS = Key.optional("shows", READING, "What a gauge then shows.");
  static final ObjectSchema<FailureSign> SIGN =
      ObjectSchema.of(
          "a sign of failure",
          List.of(FAILED, BY, WHAT, SHOWS),
          v -> new FailureSign(v.get(FAILED), v.get(BY), v.get(WHAT), v.find(SHOWS)));

  private static void canBeRead(Values v) {
    Common.whenBoth(
        v,
        LEAST,
        MOST,
        (least, most) -> {
          if (most.pascals() - least.pascals() < NARROWEST_PA - SLACK_PA) {
            v.error(MOST, StockMistakes.READING_TOO_NARROW);
          }
        });
  }

  /** The brakes exist, and the gauges can show what they are said to show. */
  static void ofThisTrain(Values v) {
    v.find(StockTable.BRAKES).ifPresent(brakes -> ofThisTrain(v, brakes.systems()));
  }

  private static void ofThisTrain(Values v, List<BrakeSystem> brakes) {
    for (LeavingTest test : v.find(StockTable.BEFORE_LEAVING).orElse(List.of())) {
      brake(test.brake(), v.in().spot(test, TESTED), brakes, v)
          .ifPresent(
              brake ->
                  test.steps().stream()
                      .flatMap(step -> step.shows().stream())
                      .forEach(reading -> shown(reading, brake, brakes, v)));
    }
    for (FailureSign sign : v.find(StockTable.SIGNS_OF_FAILURE).orElse(List.of())) {
      brake(sign.brake(), v.in().spot(sign, FAILED), brakes, v)
          .ifPresent(brake -> sign.shows().ifPresent(reading -> shown(reading, brake, brakes, v)));
    }
  }

  private static Optional<BrakeSystem> brake(
      String called, SourcePosition spot, List<BrakeSystem> brakes, Values v) {
    Optional<BrakeSystem> found =
        brakes.stream().filter(b -> b.shortName().equals(called)).findFirst();
    if (found.isEmpty()) {
      List<String> known = brakes.stream().map(BrakeSystem::shortName).toList();
      v.in()
          .error(spot, StockMistakes.UNKNOWN_BRAKE.with(called, known, Nearest.to(called, known)));
    }
    return found;
  }

  private static void shown(
      GaugeReading reading, BrakeSystem brake, List<BrakeSystem> brakes, Values v) {
    if (!reading.gauge().showsPipe()) {
      if (above(reading, brake.full())) {
        v.in()
            .error(
                spot(reading, brake.full(), v),
                StockMistakes.READING_ABOVE_FULL.with(brake.shortName(), brake.full()));
      }
      return;
    }
    Optional<Pressure> pipe =
        brakes.stream()
            .flatMap(b -> b.pipe().stream())
            .map(PipeLaw::pipe)
            .max(Comparator.naturalOrder());
    if (pipe.isEmpty()) {
      v.in()
          .error(
              v.in().spot(reading, GAUGE),
              StockMistakes.READING_WITHOUT_PIPE.with(reading.gauge().ofCylinder()));
    } else if (above(reading, pipe.get())) {
      v.in().error(spot(reading, pipe.get(), v), StockMistakes.READING_ABOVE_PIPE.with(pipe.get()));
    }
  }

  private static boolean above(GaugeReading reading, Pressure most) {
    return reading.most().pascals() > most.pascals() + SLACK_PA;
  }

  /** At the end of the range that lies above first. */
  private static SourcePosition spot(GaugeReading reading, Pressure most, Values v) {
    boolean both = reading.least().pascals() > most.pascals() + SLACK_PA;
    return v.in().spot(reading, both ? LEAST : MOST);
  }

  private CareTables() {}
}
