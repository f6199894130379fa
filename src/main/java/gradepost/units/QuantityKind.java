package gradepost.units;

import static gradepost.units.Unit.metric;
import static gradepost.units.Unit.miles;
import static gradepost.units.Unit.neutral;

import gradepost.text.Allowed;
import gradepost.units.Notation.Result.IsNot;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;

/**
 * A kind of quantity and how it is written in a file: number, space, unit. Reading knows no locale;
 * a text without its unit is refused with the unit that it may lack.
 */
public final class QuantityKind<Q> implements Allowed {
  private static final double LB_F = Exact.POUND_FORCE_N;

  public static final QuantityKind<Speed> SPEED =
      of(
          "a speed",
          "40 mph or 64 km/h",
          List.of(
              miles("mph", Exact.MPH_MPS, "mi/h", "miles/h", "m/h", "miles per hour"),
              metric("km/h", 1 / 3.6, "kmh", "kph", "kmph", "kms/h", "km/hr"),
              metric("m/s", 1, "mps")),
          Speed::new,
          Speed::metresPerSecond);

  public static final QuantityKind<Mileage> MILEAGE =
      new QuantityKind<>("a mileage", new MileageNotation(), Mileage::new, Mileage::metres);

  public static final QuantityKind<Length> LENGTH =
      new QuantityKind<>(
          "a length",
          new UnitNotation(
              List.of(
                  miles("ch", Exact.CHAIN_M, "chain", "chains", "chs"),
                  miles("yd", Exact.YARD_M, "yds", "yard", "yards"),
                  miles("ft", Exact.YARD_M / 3, "foot", "feet", "'"),
                  miles("in", Exact.YARD_M / 36, "inch", "inches", "ins"),
                  miles("mi", Exact.MILE_M, "mile", "miles"),
                  metric("m", 1, "metre", "metres", "meter", "meters", "mtr"),
                  metric("km", 1000, "kms", "kilometres"),
                  metric("cm", 0.01),
                  metric("mm", 0.001)),
              true,
              "20 m, 60 yd, 7 ch or 64 ft 6 in"),
          Length::new,
          Length::metres);

  public static final QuantityKind<Pressure> PRESSURE =
      of(
          "a pressure",
          "50 psi or 3.5 bar",
          List.of(
              miles("psi", Exact.PSI_PA, "lb", "lbs", "lb/in2", "lbf/in2", "lb/sq in"),
              metric("bar", 1e5, "bars"),
              metric("kPa", 1e3),
              metric("kg/cm2", Exact.KG_CM2_PA, "kgf/cm2", "kp/cm2", "kg/cm^2", "kg/sq cm")),
          Pressure::new,
          Pressure::pascals);

  public static final QuantityKind<PressureRate> PRESSURE_RATE =
      of(
          "a rate of pressure",
          "12 psi/s or 0.8 bar/s",
          List.of(
              miles("psi/s", Exact.PSI_PA, "psi per second"),
              metric("bar/s", 1e5, "bar/sec"),
              metric("kg/cm2/s", Exact.KG_CM2_PA, "kgf/cm2/s", "kg/cm2 per second")),
          PressureRate::new,
          PressureRate::pascalsPerSecond);

  public static final QuantityKind<Gradient> GRADIENT =
      new QuantityKind<>("a gradient", new GradientNotation(), Gradient::new, Gradient::permille);

  public static final QuantityKind<Mass> MASS =
      of(
          "a mass",
          "38 t or 500 kg",
          List.of(
              metric("t", 1000, "tonne", "tonnes", "ton", "tons"),
              metric("kg", 1, "kgs"),
              miles("lb", Exact.POUND_KG, "lbs")),
          Mass::new,
          Mass::kilograms);

  public static final QuantityKind<Force> FORCE =
      of(
          "a force",
          "40 kN",
          List.of(metric("kN", 1000), metric("N", 1), miles("lbf", LB_F, "lb", "lbs")),
          Force::new,
          Force::newtons);

  public static final QuantityKind<Span> TIME =
      of(
          "a time",
          "2 s, 500 ms or 5 min",
          List.of(
              neutral("s", 1, "sec", "secs", "second", "seconds"),
              neutral("ms", 0.001),
              neutral("min", 60, "mins", "minute", "minutes"),
              neutral("h", 3600, "hr", "hour", "hours")),
          Span::new,
          Span::seconds);

  public static final QuantityKind<Acceleration> ACCELERATION =
      of(
          "an acceleration",
          "0.8 m/s2, 9 %g, 2 mph/s or 3 km/h/s",
          List.of(
              metric("m/s2", 1, "m/s/s", "m/s^2", "mps2"),
              neutral("%g", Exact.G / 100, "% g"),
              miles("mph/s", Exact.MPH_MPS, "mph per second"),
              metric("km/h/s", 1 / 3.6, "kph/s")),
          Acceleration::new,
          Acceleration::metresPerSecond2);

  /** A share: 5 % is 0.05. */
  public static final QuantityKind<Double> PERCENT =
      plain("a percentage", "5 %", List.of(neutral("%", 0.01, "percent", "per cent", "pc")));

  /** Newtons for each tonne. */
  public static final QuantityKind<Double> PER_TONNE =
      plain("a resistance by mass", "14 N/t", List.of(metric("N/t", 1, "n per t", "n/tonne")));

  /** Newtons for each tonne and m/s. */
  public static final QuantityKind<Double> PER_TONNE_AND_SPEED =
      plain(
          "a resistance by mass and speed",
          "0.2 N/t per m/s",
          List.of(metric("N/t per m/s", 1), metric("N/t per km/h", 3.6)));

  /** Newtons for each (m/s)². */
  public static final QuantityKind<Double> PER_SPEED_SQUARED =
      plain(
          "an air resistance",
          "6 N per (m/s)2",
          List.of(
              metric("N per (m/s)2", 1, "n per m2/s2", "n per (m/s)^2"),
              metric("N per (km/h)2", 3.6 * 3.6)));

  /** Newtons for each kilonewton of weight. */
  public static final QuantityKind<Double> PER_KILONEWTON =
      plain("a resistance by weight", "0.5 N/kN", List.of(neutral("N/kN", 1)));

  /** Square metres. */
  public static final QuantityKind<Double> AREA =
      plain(
          "an area",
          "10 m2 or 120 sq ft",
          List.of(
              miles("sq ft", Exact.YARD_M * Exact.YARD_M / 9, "ft2", "sqft"),
              metric("m2", 1, "sq m", "m^2")));

  /** Volts. */
  public static final QuantityKind<Double> VOLTAGE =
      plain(
          "a voltage",
          "750 V",
          List.of(neutral("V", 1, "volt", "volts"), neutral("kV", 1000, "kilovolts")));

  /** Amperes. */
  public static final QuantityKind<Double> CURRENT =
      plain("a current", "350 A", List.of(neutral("A", 1, "amp", "amps", "ampere", "amperes")));

  /** Ohms. */
  public static final QuantityKind<Double> ELECTRICAL_RESISTANCE =
      plain(
          "an electrical resistance",
          "0.1 ohm",
          List.of(neutral("ohm", 1, "ohms", "Ω", "ω"), neutral("mohm", 0.001, "milliohm", "mω")));

  /** Turns a minute. */
  public static final QuantityKind<Double> ROTATION =
      plain(
          "a speed of rotation",
          "1150 rpm",
          List.of(neutral("rpm", 1, "r/min", "rev/min", "revs/min", "1/min")));

  private static final List<QuantityKind<?>> ALL =
      List.of(
          SPEED,
          MILEAGE,
          LENGTH,
          PRESSURE,
          PRESSURE_RATE,
          GRADIENT,
          MASS,
          FORCE,
          TIME,
          ACCELERATION,
          PERCENT,
          PER_TONNE,
          PER_TONNE_AND_SPEED,
          PER_SPEED_SQUARED,
          PER_KILONEWTON,
          AREA,
          VOLTAGE,
          CURRENT,
          ELECTRICAL_RESISTANCE,
          ROTATION);

  private final String noun;
  private final Notation notation;
  private final DoubleFunction<Q> make;
  private final ToDoubleFunction<Q> si;

  private QuantityKind(
      String noun, Notation notation, DoubleFunction<Q> make, ToDoubleFunction<Q> si) {
    this.noun = noun;
    this.notation = notation;
    this.make = make;
    this.si = si;
  }

  private static <Q> QuantityKind<Q> of(
      String noun,
      String examples,
      List<Unit> units,
      DoubleFunction<Q> make,
      ToDoubleFunction<Q> si) {
    return new QuantityKind<>(noun, new UnitNotation(units, false, examples), make, si);
  }

  private static QuantityKind<Double> plain(String noun, String example, List<Unit> units) {
    return of(noun, example, units, Double::valueOf, Double::doubleValue);
  }

  /** With its article: "a speed". */
  public String noun() {
    return noun;
  }

  /** How it is written: "40 mph or 64 km/h". */
  public String examples() {
    return notation.examples();
  }

  /** A regular expression (ECMA 262) that every text which can be read matches; for schemas. */
  public String pattern() {
    return notation.pattern();
  }

  /** "a speed, such as 40 mph or 64 km/h". */
  @Override
  public String allowed() {
    return UnitMistakes.QUANTITY.of(this);
  }

  /** The number by which two quantities of this kind are compared (SI; ‰ for gradients). */
  public double si(Q quantity) {
    return si.applyAsDouble(quantity);
  }

  /** The quantity that a text holds, or what is wrong with the text. */
  public Parsed<Q> parse(String text) {
    String plain = Typed.plain(text);
    if (plain.isEmpty()) {
      return new Parsed.Bad<>(UnitMistakes.EMPTY::with, List.of());
    }
    return notation
        .read(plain)
        .match(
            is -> new Parsed.Ok<>(make.apply(is.si()), is.convention()),
            not -> bad(text, plain, not));
  }

  private Parsed<Q> bad(String text, String plain, IsNot not) {
    Notation.Why why = not.meant().isEmpty() ? otherKind(plain, not) : not.why();
    return new Parsed.Bad<>(
        (key, allowed, meant) -> why.with(key, text, allowed, meant), not.meant());
  }

  /**
   * The quantity of a text that the program itself holds.
   *
   * @throws IllegalArgumentException when it cannot be read
   */
  public Q require(String text) {
    return parse(text)
        .ok()
        .orElseThrow(() -> new IllegalArgumentException(text + " is not " + noun))
        .value();
  }

  private Notation.Why otherKind(String plain, IsNot not) {
    for (QuantityKind<?> other : ALL) {
      if (other != this && other.notation.read(plain).isUnderstood()) {
        return (key, text, allowed, meant) ->
            UnitMistakes.ANOTHER_KIND.with(key, text, other, this, allowed, meant);
      }
    }
    return not.why();
  }

  @Override
  public String toString() {
    return noun;
  }
}
