package gradepost.source;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: one slip in a stock file gives one answer, word for word, at its place. */
class VehicleProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.STOCK, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "bare mass",
            "tare: 40 t",
            "tare: «40",
            "error: tare \"40\" has no unit; allowed: a mass, such as 38 t or 500 kg, from 1 t to 300 t"
                + "\n"
                + "  Maybe 40 lb or 40 t"),
        slip(
            "bare percentage",
            "rotating: 10 %",
            "rotating: «10",
            "error: rotating \"10\" has no unit; allowed: a percentage, such as 5 %, from 0 % to 40 %, or a mass, such as 38 t or 500 kg, from 0 t to 120 t"
                + "\n"
                + "  Maybe 10 %"),
        slip(
            "masses out of order",
            "seated: 45 t",
            "seated: «39 t",
            "error: seated is less than tare; allowed: tare, seated and crush, each at least the one before"),
        slip(
            "rotating mass of another kind",
            "rotating: 10 %",
            "rotating: «10 mph",
            "error: rotating \"10 mph\" is a speed, not a percentage; allowed: a percentage, such as 5 %, from 0 % to 40 %, or a mass, such as 38 t or 500 kg, from 0 t to 120 t"),
        slip(
            "rotating mass above the vehicle's share",
            "rotating: 10 %",
            "rotating: «16.1 t",
            "error: rotating is more than 40 % of tare; allowed: 0 % to 40 % of tare"),
        slip(
            "rotating mass out of range",
            "rotating: 10 %",
            "rotating: «130 t",
            "error: rotating \"130 t\" is out of range; allowed: a percentage, such as 5 %, from 0 % to 40 %, or a mass, such as 38 t or 500 kg, from 0 t to 120 t"),
        slip(
            "valve off the vehicle",
            "rotating: 10 %",
            "rotating: 10 %, valve-at: «25 m",
            "error: valve-at is more than length; allowed: a length from 0 m to length"),
        slip(
            "bare place of a valve",
            "rotating: 10 %",
            "rotating: 10 %, valve-at: «12",
            "error: valve-at \"12\" has no unit; allowed: a length, such as 20 m, 60 yd, 7 ch or 64 ft 6 in, from 0 m to 60 m"
                + "\n"
                + "  Maybe 12 ch or 12 m"),
        slip(
            "vehicle unknown",
            "vehicles: [DMS, TS, TS, DMS]",
            "vehicles: [DMS, «TT, TS, DMS]",
            "error: there is no vehicle \"TT\"; allowed: DMS, TS"),
        slip(
            "formation without power",
            "vehicles: [DMS, TS]}",
            "vehicles: [TS, TS]}",
            "stock/unit.yaml:10:5: error: formation \"2-car\" has no motored vehicle; allowed: one vehicle at least with a motored-share above 0 %"),
        slip(
            "vehicle twice",
            "type: TS",
            "type: «DMS",
            "error: the type \"DMS\" is given twice under vehicles, first on line 6, column 12; allowed: each type once"),
        slip(
            "law unknown",
            "law: rockl",
            "law: «rokcl",
            "error: law \"rokcl\" is not known; allowed: rockl, degree, inverse-radius, none"
                + "\n"
                + "  Maybe rockl"),
        slip(
            "law missing",
            "curve-resistance: {law: rockl}",
            "curve-resistance: «{k: 700}",
            "error: curve resistance lacks the key \"law\"; allowed: curve resistance with law: rockl, degree, inverse-radius, none"),
        slip(
            "key of another law",
            "curve-resistance: {law: rockl}",
            "curve-resistance: {law: rockl, «k: 700}",
            "error: curve resistance by Röckl has no key \"k\"; allowed: law"),
        slip(
            "bare resistance",
            "a: 14 N/t",
            "a: «14",
            "error: a \"14\" has no unit; allowed: a resistance by mass, such as 14 N/t, from 0 N/t to 500 N/t"
                + "\n"
                + "  Maybe 14 N/t"),
        slip(
            "effort does not rise",
            "{speed: 20 mph, force: 30 kN}, {speed: 40 mph",
            "{speed: 20 mph, force: 30 kN}, {speed: «15 mph",
            "error: the speeds of the effort do not rise here; allowed: each above the one before"),
        slip(
            "bare rate",
            "application: 20 psi/s, release: 15 psi/s",
            "application: «20, release: 15 psi/s",
            "error: application \"20\" has no unit; allowed: a rate of pressure, such as 12 psi/s or 0.8 bar/s, from 0.1 psi/s to 500 psi/s"
                + "\n"
                + "  Maybe 20 psi/s or 20 bar/s"),
        slip(
            "friction does not rise",
            "{speed: 60 mph, friction",
            "{speed: «0 mph, friction",
            "error: the speeds of the table do not rise here; allowed: each above the one before"),
        slip(
            "threshold too high",
            "threshold: 4 psi",
            "threshold: «55 psi",
            "error: threshold is not below at-pressure; allowed: less than at-pressure"),
        slip(
            "bare deceleration",
            "0.85 m/s2",
            "«0.85",
            "error: mean-deceleration \"0.85\" has no unit; allowed: an acceleration, such as 0.8 m/s2, 9 %g, 2 mph/s or 3 km/h/s, from 0.1 m/s2 to 3 m/s2"
                + "\n"
                + "  Maybe 0.85 mph/s or 0.85 m/s2"),
        slip(
            "bare time",
            "time-per-notch: 3 s",
            "time-per-notch: «3",
            "error: time-per-notch \"3\" has no unit; allowed: a time, such as 2 s, 500 ms or 5 min, from 0 s to 60 s"
                + "\n"
                + "  Maybe 3 s"),
        slip(
            "speed of an action at once",
            "action: simultaneous,",
            "action: simultaneous, «speed: 250 m/s,",
            "error: a brake system that acts at once has no key \"speed\"; allowed: name, short, role, action, dead-time, application, release, gradual-release, control, full, pipe, recharge"),
        slip(
            "no propagation speed",
            "action: propagated, speed: 250 m/s, dead-time: 500 ms",
            "action: propagated, dead-time: 500 ms",
            "stock/unit.yaml:25:7: error: a brake system that acts along the pipe lacks the key \"speed\"; allowed: a speed, such as 40 mph or 64 km/h, from 20 m/s to 400 m/s"),
        slip(
            "step above full",
            "control: {steps: [30 psi, 60 psi]}",
            "control: «{steps: [30 psi, 70 psi]}",
            "error: a step is above full, which is 60 psi (4.1 bar); allowed: steps that rise to full"),
        slip(
            "last step below full",
            "control: {steps: [30 psi, 60 psi]}",
            "control: «{steps: [30 psi, 50 psi]}",
            "error: the last step is 50 psi (3.4 bar), and full is 60 psi (4.1 bar); allowed: steps that rise to full"));
  }

  private static Arguments slip(String slip, String from, String to, String expected) {
    return arguments(slip, from, to, expected);
  }
}
