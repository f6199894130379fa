package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.policy.RunRules;
import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.units.Span;
import gradepost.units.Speed;
import org.junit.jupiter.api.Test;

/** By hand: the policy's speeds under a ceiling, in whole units of 1 m/s. */
class BandTest {
  private static final RunRules RUN =
      new RunRules(
          new Speed(3),
          new Speed(9),
          new Span(10),
          new Span(12),
          new Speed(1),
          new Speed(6),
          new Pressure(7e4),
          0.05,
          new Length(100));

  private static final Band BAND = new Band(RUN, 1);

  private static void speeds(double ceiling, double off, double on, double from, double to) {
    assertThat(BAND.offMps(ceiling)).as("off").isCloseTo(off, within(1e-9));
    assertThat(BAND.onMps(ceiling)).as("on").isCloseTo(on, within(1e-9));
    assertThat(BAND.checkFromMps(ceiling)).as("from").isCloseTo(from, within(1e-9));
    assertThat(BAND.checkToMps(ceiling)).as("to").isCloseTo(to, within(1e-9));
  }

  /** 3, 9, 1 and 6 m/s below 40. */
  @Test
  void soMuchBelowAHighCeiling() {
    speeds(40, 37, 31, 39, 34);
    speeds(40.7, 37, 31, 39, 34);
  }

  /** Not below eight, seven, nine and seven tenths: of 10, 8, 7, 9 and 7; of 5, 4, 3.5, 4.5. */
  @Test
  void notBelowAShareOfALowOne() {
    speeds(10, 8, 6, 9, 7);
    speeds(5, 3, 1, 4, 2);
  }

  /** Power comes off a whole unit under the checking speed, and on two under that, at least. */
  @Test
  void theSpeedsOfANarrowBandDoNotMeet() {
    RunRules narrow = RUN.with(new Speed(0), new Speed(0), new Span(12));
    Band band = new Band(narrow, 1);
    assertThat(band.checkFromMps(40)).isCloseTo(39, within(1e-9));
    assertThat(band.offMps(40)).isCloseTo(38, within(1e-9));
    assertThat(band.onMps(40)).isCloseTo(36, within(1e-9));
    assertThat(band.offMps(1)).isCloseTo(1, within(1e-9));
  }

  /** In miles an hour: 60 less 3 m/s is 53.3, and less 6 m/s 46.6. */
  @Test
  void theSpeedsAreWholeUnits() {
    double mph = 0.44704;
    Band band = new Band(RUN, mph);
    assertThat(band.offMps(60 * mph)).isCloseTo(53 * mph, within(1e-9));
    assertThat(band.checkToMps(60 * mph)).isCloseTo(46 * mph, within(1e-9));
  }
}
