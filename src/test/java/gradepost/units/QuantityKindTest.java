package gradepost.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import gradepost.text.Mistake;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Validation of factors (exact by the international yard and pound of 1959; g by CGPM 1901) and
 * property of the texts: what is not understood is answered with what is allowed.
 */
class QuantityKindTest {

  @ParameterizedTest(name = "{1}")
  @MethodSource("good")
  void reads(QuantityKind<?> kind, String text, double si) {
    assertThat(si(kind, text)).isCloseTo(si, within(1e-9 * Math.max(1, Math.abs(si))));
  }

  private static <Q> double si(QuantityKind<Q> kind, String text) {
    return kind.si(kind.require(text));
  }

  static Stream<Arguments> good() {
    return Stream.of(
        arguments(QuantityKind.SPEED, "40 mph", 40 * 0.44704),
        arguments(QuantityKind.SPEED, "64 km/h", 64 / 3.6),
        arguments(QuantityKind.SPEED, "250 m/s", 250.0),
        arguments(QuantityKind.SPEED, "40\u00a0mph", 40 * 0.44704),
        arguments(QuantityKind.SPEED, "40mph", 40 * 0.44704),
        arguments(QuantityKind.MILEAGE, "3m 24ch", 3 * 1609.344 + 24 * 20.1168),
        arguments(QuantityKind.MILEAGE, "3m 24.5ch", 3 * 1609.344 + 24.5 * 20.1168),
        // 48m 69ch is 78 636.571 m, derived from the exact chain.
        arguments(QuantityKind.MILEAGE, "48m 69ch", 78636.5712),
        arguments(QuantityKind.MILEAGE, "12.460 km", 12460.0),
        arguments(QuantityKind.LENGTH, "7 ch", 140.8176),
        arguments(QuantityKind.LENGTH, "60 yd", 54.864),
        arguments(QuantityKind.LENGTH, "64 ft 6 in", 64.5 * 0.3048),
        arguments(QuantityKind.LENGTH, "64.5 ft", 64.5 * 0.3048),
        arguments(QuantityKind.LENGTH, "3 mi", 4828.032),
        arguments(QuantityKind.LENGTH, "1.2 km", 1200.0),
        arguments(QuantityKind.LENGTH, "75 mm", 0.075),
        arguments(QuantityKind.PRESSURE, "50 psi", 344737.8646584),
        // Technical atmosphere, 98.0665 kPa by definition.
        arguments(QuantityKind.PRESSURE, "5 kg/cm2", 490332.5),
        arguments(QuantityKind.PRESSURE, "1.5 kg/cm\u00b2", 147099.75),
        arguments(QuantityKind.PRESSURE_RATE, "0.5 kg/cm2/s", 49033.25),
        arguments(QuantityKind.PRESSURE, "3.5 bar", 350000.0),
        arguments(QuantityKind.PRESSURE_RATE, "0.8 bar/s", 80000.0),
        arguments(QuantityKind.GRADIENT, "1 in 80 rising", 12.5),
        arguments(QuantityKind.GRADIENT, "1 in 66 falling", -1000.0 / 66),
        arguments(QuantityKind.GRADIENT, "12.5‰ rising", 12.5),
        arguments(QuantityKind.GRADIENT, "12.5 permille falling", -12.5),
        arguments(QuantityKind.GRADIENT, "1.25 % rising", 12.5),
        arguments(QuantityKind.GRADIENT, "level", 0.0),
        arguments(QuantityKind.MASS, "38 t", 38000.0),
        arguments(QuantityKind.MASS, "500 kg", 500.0),
        arguments(QuantityKind.FORCE, "40 kN", 40000.0),
        arguments(QuantityKind.TIME, "500 ms", 0.5),
        arguments(QuantityKind.TIME, "5 min", 300.0),
        // 9 %g is 0.883 m/s², read in a trade article as usual British practice.
        arguments(QuantityKind.ACCELERATION, "9 %g", 0.8825985),
        arguments(QuantityKind.ACCELERATION, "0.8 m/s²", 0.8),
        arguments(QuantityKind.ACCELERATION, "2 mph/s", 0.89408),
        arguments(QuantityKind.ACCELERATION, "3 km/h/s", 3 / 3.6),
        arguments(QuantityKind.VOLTAGE, "750 V", 750.0),
        arguments(QuantityKind.VOLTAGE, "1.5 kV", 1500.0),
        arguments(QuantityKind.CURRENT, "350 A", 350.0),
        arguments(QuantityKind.ELECTRICAL_RESISTANCE, "0.1 ohm", 0.1),
        arguments(QuantityKind.ROTATION, "1150 rpm", 1150.0),
        arguments(QuantityKind.PERCENT, "5 %", 0.05),
        arguments(QuantityKind.PERCENT, "5%", 0.05),
        arguments(QuantityKind.PER_TONNE, "14 N/t", 14.0),
        arguments(QuantityKind.PER_TONNE_AND_SPEED, "0.2 N/t per m/s", 0.2),
        arguments(QuantityKind.PER_SPEED_SQUARED, "6 N per (m/s)²", 6.0),
        arguments(QuantityKind.PER_KILONEWTON, "0.5 N/kN", 0.5),
        arguments(QuantityKind.AREA, "120 sq ft", 120 * 0.09290304),
        arguments(QuantityKind.AREA, "10 m²", 10.0));
  }

  @ParameterizedTest(name = "{0}: ''{1}''")
  @MethodSource("bad")
  void refuses(QuantityKind<?> kind, String text, String what, String maybe) {
    Mistake told = told(kind, text);
    assertThat(told.what()).isEqualTo("key " + what);
    assertThat(told.allowed()).isEqualTo(kind.allowed());
    assertThat(told.maybe()).isEqualTo(maybe);
  }

  private static <Q> Mistake told(QuantityKind<Q> kind, String text) {
    return kind.parse(text)
        .match(
            ok -> {
              throw new AssertionError(text + " was read");
            },
            bad -> bad.told("key", kind));
  }

  static Stream<Arguments> bad() {
    return Stream.of(
        arguments(QuantityKind.SPEED, "40", "\"40\" has no unit", "40 mph or 40 km/h"),
        arguments(
            QuantityKind.SPEED, "40 kph", "\"40 kph\" has an unknown unit \"kph\"", "40 km/h"),
        arguments(QuantityKind.SPEED, "40 mhp", "\"40 mhp\" has an unknown unit \"mhp\"", "40 mph"),
        arguments(QuantityKind.SPEED, "-40 mph", "\"-40 mph\" is negative", "40 mph"),
        arguments(QuantityKind.SPEED, "40 psi", "\"40 psi\" is a pressure, not a speed", ""),
        arguments(QuantityKind.SPEED, "fast", "\"fast\" does not begin with a number", ""),
        arguments(QuantityKind.SPEED, "", "is empty", ""),
        arguments(QuantityKind.PRESSURE, "3,5 bar", "\"3,5 bar\" has a decimal comma", "3.5 bar"),
        arguments(QuantityKind.TIME, "2", "\"2\" has no unit", "2 s"),
        arguments(QuantityKind.TIME, "2 sec", "\"2 sec\" has an unknown unit \"sec\"", "2 s"),
        arguments(
            QuantityKind.LENGTH,
            "64 ft 13 in",
            "\"64 ft 13 in\" has a second part that is not less than one ft",
            ""),
        arguments(QuantityKind.MILEAGE, "3.24", "\"3.24\" has no unit", "3m 24ch or 3.24 km"),
        arguments(QuantityKind.MILEAGE, "3", "\"3\" has no unit", "3m 00ch or 3 km"),
        arguments(QuantityKind.MILEAGE, "3m", "\"3m\" is not a mileage", "3m 00ch"),
        arguments(QuantityKind.MILEAGE, "24ch", "\"24ch\" is not a mileage", "0m 24ch"),
        arguments(QuantityKind.MILEAGE, "3 mi 24 c", "\"3 mi 24 c\" is not a mileage", "3m 24ch"),
        arguments(QuantityKind.MILEAGE, "3M 24CH", "\"3M 24CH\" is not a mileage", "3m 24ch"),
        arguments(
            QuantityKind.MILEAGE,
            "3m 84ch",
            "\"3m 84ch\" has 80 chains or more, and 80 chains make a mile",
            "4m 04ch"),
        arguments(QuantityKind.MILEAGE, "12460 m", "\"12460 m\" is not a mileage", "12.460 km"),
        arguments(
            QuantityKind.GRADIENT,
            "1 in 80",
            "\"1 in 80\" does not say which way",
            "1 in 80 rising or 1 in 80 falling"),
        arguments(
            QuantityKind.GRADIENT, "1:80 F", "\"1:80 F\" is not a gradient", "1 in 80 falling"),
        arguments(
            QuantityKind.GRADIENT,
            "rising 1 in 80",
            "\"rising 1 in 80\" is not a gradient",
            "1 in 80 rising"),
        arguments(QuantityKind.GRADIENT, "Level", "\"Level\" is not a gradient", "level"),
        arguments(
            QuantityKind.GRADIENT,
            "1 in 0 rising",
            "\"1 in 0 rising\" is steeper than 1 in 1",
            ""));
  }

  @Test
  void doesNotDependOnTheLocale() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(QuantityKind.SPEED.parse("40.5 mph")).isInstanceOf(Parsed.Ok.class);
      assertThat(told(QuantityKind.MILEAGE, "3.04"))
          .hasToString(
              "key \"3.04\" has no unit; allowed: a mileage, such as 3m 24ch or 12.460 km;"
                  + " maybe: 3m 04ch or 3.04 km");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void suggestsOnlySlipsOfTheHand() {
    java.util.List<String> known = java.util.List.of("radius", "cant", "WL 12", "Up");
    assertThat(Nearest.to("raduis", known)).contains("radius");
    assertThat(Nearest.to("CANT", known)).contains("cant");
    assertThat(Nearest.to("WL 13", known)).isEmpty();
    assertThat(Nearest.to("gradient", known)).isEmpty();
    assertThat(Nearest.to("Upp", known)).contains("Up");
  }
}
