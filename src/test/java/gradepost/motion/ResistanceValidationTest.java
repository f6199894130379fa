package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.Davis1926;
import gradepost.stock.Railcar1936;
import gradepost.stock.law.CurveResistance;
import gradepost.stock.law.DegreeCurveResistance;
import gradepost.stock.law.InverseRadiusCurveResistance;
import gradepost.stock.law.NoCurveResistance;
import gradepost.stock.law.RocklCurveResistance;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Resistance, gradient and curves: what the stepper feels, in the units of the sources. */
class ResistanceValidationTest {
  private static final double POUND_N = 4.4482216152605;
  private static final double SHORT_TON_T = 0.90718474;

  /** Newtons that hold a train of so many tonnes back at this speed. */
  private static double heldN(Textbook train, Track track, double mps) {
    Stepper stepper = train.on(track);
    stepper.place(0, 5000, mps);
    return -stepper.accelerationMps2() * train.train().inertiaKg();
  }

  private static Track curved(double permille, double radiusM) {
    return new Track(
        Textbook.gradient(permille).elevation(),
        List.of(new CurvePiece(0, 10_000, radiusM, false)));
  }

  private static double radiusOf(double degrees) {
    return 15.24 / Math.sin(Math.toRadians(degrees / 2));
  }

  /** TR0603, TI 850-02, Chakrabarti: 1 % is 20 lb a short ton, 98.1 N/t, 10 N/kN. */
  @Test
  void one_per_cent() {
    double newtons = heldN(Textbook.train(100, 0.08), Textbook.gradient(10), 10);
    assertThat(newtons / POUND_N / (100 / SHORT_TON_T)).isCloseTo(20, within(1e-6));
    assertThat(newtons / 100).isCloseTo(98.1, within(0.05));
    assertThat(newtons / (100 * 9.80665)).isCloseTo(10, within(1e-6));
  }

  /** TR0603: 0.8 lb/ton/degree; 1 % with a curve of 5° is 24 lb a ton. */
  @Test
  void one_per_cent_with_a_curve_of_five_degrees() {
    Textbook train = Textbook.train(100, 0.08).curves(new DegreeCurveResistance(0.8), 0);
    double newtons = heldN(train, curved(10, radiusOf(5)), 10);
    assertThat(newtons / POUND_N / (100 / SHORT_TON_T)).isCloseTo(24, within(1e-6));
  }

  /** TI 850-02 Table B-1: 1.16 % with a curve of 5° is as 1.36 %. */
  @Test
  void equivalent_grade() {
    Textbook train = Textbook.train(100, 0.08).curves(new DegreeCurveResistance(0.8), 0);
    double newtons = heldN(train, curved(11.6, radiusOf(5)), 10);
    assertThat(newtons / (100 * 9806.65) * 100).isCloseTo(1.36, within(0.005));
  }

  /** Röckl, encyclopaedia article on curve resistance. */
  @ParameterizedTest
  @CsvSource({"600,1.193", "400,1.884", "200,2.941"})
  void rockl(double radius, double read) {
    Textbook train = Textbook.train(100, 0.08).curves(new RocklCurveResistance(), 0);
    double newtons = heldN(train, curved(0, radius), 10);
    assertThat(newtons / (100 * 9.80665)).isCloseTo(read, within(0.001));
  }

  @Test
  void rockl_jumps_at_300_and_ends_at_60() {
    CurveResistance law = new RocklCurveResistance();
    assertThat(law.nPerKn(300)).isCloseTo(650.0 / 245, within(1e-9));
    assertThat(law.nPerKn(299.999)).isCloseTo(1.85, within(0.01));
    assertThatThrownBy(() -> law.nPerKn(59)).hasMessageContaining("60 m");
  }

  /**
   * A curve of 1° on a chord of 100 ft has 1746.40 m; so many pounds a ton there, none elsewhere.
   */
  @Test
  void one_degree() {
    Textbook train = Textbook.train(100, 0.08).curves(new DegreeCurveResistance(0.8), 0);
    double newtons = heldN(train, curved(0, 1746.40), 10);
    assertThat(newtons / POUND_N / (100 / SHORT_TON_T)).isCloseTo(0.8, within(1e-5));
    Textbook free = Textbook.train(100, 0.08).curves(new NoCurveResistance(), 0);
    assertThat(heldN(free, curved(0, 1746.40), 10)).isZero();
  }

  @Test
  void inverse_radius() {
    Textbook train = Textbook.train(100, 0.08).curves(new InverseRadiusCurveResistance(700), 0);
    assertThat(heldN(train, curved(0, 350), 10) / 980.665).isCloseTo(2, within(1e-6));
  }

  /** A check rail adds what the data say, here 1.5 N/kN, on the curve that has it. */
  @Test
  void check_rail() {
    Textbook train = Textbook.train(100, 0.08).curves(new InverseRadiusCurveResistance(700), 1.5);
    Track track =
        new Track(Textbook.gradient(0).elevation(), List.of(new CurvePiece(0, 10_000, 350, true)));
    assertThat(heldN(train, track, 10) / 980.665).isCloseTo(3.5, within(1e-6));
  }

  /** Railcar formula of 1936 (a railcar textbook, p. 29): 50 t, 10 m², 125 km/h: 491 kgf. */
  @Test
  void railcar() {
    Textbook train = Textbook.train(50, 0.08).resistance(new Railcar1936(10));
    assertThat(heldN(train, Textbook.gradient(0), 125 / 3.6) / 9.80665).isCloseTo(491, within(1.0));
  }

  /** Davis 1926: w 12.5 tons, n 4, A 120 sq ft at 30 and 60 mph. */
  @ParameterizedTest
  @CsvSource({"30,6.05", "60,10.64"})
  void davis(double mph, double read) {
    Textbook train = Textbook.train(50 * SHORT_TON_T, 0.08).resistance(new Davis1926(120, 34));
    double newtons = heldN(train, Textbook.gradient(0), mph * 0.44704);
    assertThat(newtons / POUND_N / 50).isCloseTo(read, within(0.01));
  }

  /** Only the leading vehicle has the leading area. */
  @Test
  void davis_counts_the_leading_end_once() {
    Textbook two =
        Textbook.empty()
            .vehicle(50 * SHORT_TON_T, 0, 20, 0)
            .vehicle(50 * SHORT_TON_T, 0, 20, 0)
            .resistance(new Davis1926(120, 34));
    double newtons = heldN(two, Textbook.gradient(0), 60 * 0.44704);
    double trailing = 1.3 + 29 / 12.5 + 0.045 * 60 + 0.0005 * 34 * 3600 / 50;
    assertThat(newtons / POUND_N).isCloseTo(50 * (10.64 + trailing), within(0.5));
  }

  /** Gradient and curve count over the length of the train, by the weight of each vehicle. */
  @Test
  void a_long_train_feels_the_mean_under_it() {
    Textbook train = Textbook.empty().vehicle(60, 0, 20, 0).vehicle(30, 0, 30, 0);
    Track summit =
        new Track(
            new PiecewiseLinear(new double[] {0, 1000, 2000}, new double[] {0, 10, 0}), List.of());
    Stepper stepper = train.on(summit);
    stepper.place(0, 1025, 10);
    // Front vehicle wholly down 1 %; rear one 5 m down and 25 m up.
    double expected = 9.80665 * (-60 * 10 + 30 * 10 * (25.0 - 5) / 30);
    assertThat(-stepper.accelerationMps2() * 90_000).isCloseTo(expected, within(1e-3));
  }
}
