package gradepost.told.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Mill;
import gradepost.route.Path;
import gradepost.route.TwoSections;
import gradepost.route.place.Direction;
import gradepost.units.Exact;
import gradepost.units.UnitStyle;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Property: whatever is rounded for print leans to the side on which nobody is misled. */
class PrintGridTest {
  private static final double HAIR = 1e-6;
  private static final PrintGrid METRIC = grid(UnitStyle.METRIC, Direction.FORWARD);
  private static final PrintGrid MILES = grid(UnitStyle.MILES, Direction.FORWARD);

  private static PrintGrid grid(UnitStyle units, Direction direction) {
    return new PrintGrid(new Path(TwoSections.route(units), direction));
  }

  private static PrintedPlace mileage(String section, long steps, boolean named) {
    return new PrintedPlace.Mileage(section, steps, named);
  }

  private static PrintedPlace before(long metres) {
    return new PrintedPlace.Before(new PrintedLength(metres, UnitStyle.METRIC));
  }

  /** The mileage begins at 1,995 and rises; 4,500 m is on the other section too. */
  @Test
  void aPlaceThatTheDriverComesToIsAtOrBeforeIt() {
    assertThat(METRIC.place(1008)).isEqualTo(mileage("Hill", 300, false));
    assertThat(METRIC.place(1005)).isEqualTo(mileage("Hill", 300, false));
    assertThat(METRIC.place(1004.9)).isEqualTo(mileage("Hill", 299, false));
    assertThat(METRIC.place(2509)).isEqualTo(mileage("Hill", 450, true));
    assertThat(METRIC.place(3219)).isEqualTo(mileage("Shore", 610, false));
    assertThat(METRIC.placePast(1008)).isEqualTo(mileage("Hill", 301, false));
    assertThat(METRIC.placePast(1005)).isEqualTo(mileage("Hill", 300, false));
    assertThat(METRIC.placePast(3219)).isEqualTo(mileage("Shore", 609, false));
  }

  /** The nearest step to 1,995 m would be behind the places that follow it. */
  @Test
  void behindTheStartOfASectionThatIsOffTheGridTheStepBeforeItIsTold() {
    assertThat(METRIC.place(3)).isEqualTo(mileage("Hill", 199, false));
    assertThat(METRIC.metres(METRIC.place(3), 500)).isZero();
    assertThat(METRIC.placePast(3)).isEqualTo(mileage("Hill", 200, false));
  }

  @Test
  void aPlaceOffTheRouteIsToldAsItsEnd() {
    assertThat(METRIC.place(-40)).isEqualTo(METRIC.place(0));
    double end = TwoSections.LENGTH_M;
    assertThat(METRIC.place(end + 40)).isEqualTo(METRIC.place(end));
  }

  /** The target is at 1,105 m, which is the mileage of 3,100 m. */
  @Test
  void nearItsTargetAPlaceIsToldBySoMuchBeforeIt() {
    double target = 1105;
    assertThat(METRIC.placeTo(1030, target)).isEqualTo(before(75));
    assertThat(METRIC.placeTo(1029.8, target)).isEqualTo(before(76));
    assertThat(METRIC.placeTo(1005.1, target)).isEqualTo(before(100));
    assertThat(METRIC.placeTo(1005, target)).isEqualTo(mileage("Hill", 300, false));
    assertThat(METRIC.placeTo(1003, target)).isEqualTo(before(102));
    assertThat(METRIC.placeTo(1003.5, target)).isEqualTo(mileage("Hill", 299, false));
    assertThat(METRIC.placeTo(1104.4, target)).isEqualTo(before(1));
    assertThat(METRIC.placeTo(1104.6, target)).isEqualTo(mileage("Hill", 309, false));
    assertThat(METRIC.isNear(99.9)).isTrue();
    assertThat(METRIC.isNear(100)).isFalse();
  }

  /** What is told is never past what is meant, and less than a step of the grid before it. */
  @ParameterizedTest
  @EnumSource
  void whatIsToldIsNeverPastWhatIsMeant(UnitStyle units) {
    for (Direction direction : Direction.values()) {
      PrintGrid grid = grid(units, direction);
      double seam = direction == Direction.FORWARD ? 3210 : 2104;
      double step = units.placeStepM();
      Random random = new Random(3);
      for (int i = 0; i < 3000; i++) {
        double at = random.nextDouble() * (TwoSections.LENGTH_M - 300);
        double target = at + random.nextDouble() * 250;
        double told = grid.metres(grid.placeTo(at, target), target);
        assertThat(told).as("%s to %s", at, target).isBetween(at - step, at + HAIR);
        // The end of a section that is off the grid is told by the next section's first step.
        double past = Math.abs(at - seam) < step ? 2 * step : step;
        assertThat(grid.metres(grid.placePast(at), target)).isBetween(at - HAIR, at + past);
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void whatIsPlannedOnTheGridIsToldAsItWasPlanned(UnitStyle units) {
    PrintGrid grid = grid(units, Direction.FORWARD);
    Random random = new Random(4);
    for (int i = 0; i < 3000; i++) {
      double exact = 100 + random.nextDouble() * 2900;
      double target = Math.min(exact + 0.6 + random.nextDouble() * 250, 3200);
      double planned = grid.plannable(exact, target, target);
      assertThat(planned).isBetween(exact - units.placeStepM(), exact + HAIR);
      assertThat(grid.metres(grid.placeTo(planned, target), target))
          .isCloseTo(planned, within(HAIR));
      double fine = grid.plannableToTheUnit(exact, target);
      assertThat(fine).isBetween(exact - units.lengthUnitM() - HAIR, exact + HAIR);
    }
  }

  /** By fives from 100 m on, by the metre from 40 m on. */
  @Test
  void aPlannedPlaceIsOnACoarseGridNearItsTarget() {
    assertThat(METRIC.plannable(1050.3, 1105, 1105)).isEqualTo(1050);
    assertThat(METRIC.plannable(1065, 1105, 1105)).isEqualTo(1065);
    assertThat(METRIC.plannable(1064.9, 1105, 1105)).isEqualTo(1060);
    assertThat(METRIC.plannable(1078.3, 1105, 1105)).isEqualTo(1078);
    assertThat(METRIC.plannable(1000, 1105, 1105)).isEqualTo(995);
    assertThat(METRIC.plannableToTheUnit(1000.4, 1105)).isEqualTo(1000);
    assertThat(METRIC.plannable(1064.9, 1105, 1182)).isEqualTo(1062);
    assertThat(METRIC.plannable(1000, 1105, 1182)).isEqualTo(995);
    assertThat(MILES.plannable(1105 - 20.5 * Exact.YARD_M, 1105, 1105))
        .isCloseTo(1105 - 21 * Exact.YARD_M, within(HAIR));
    assertThat(MILES.plannable(1105 - 61 * Exact.YARD_M, 1105, 1105))
        .isCloseTo(1105 - 65 * Exact.YARD_M, within(HAIR));
  }

  @Test
  void aPlaceIsSpeltByTheUnitsOfItsRoute() {
    assertThat(METRIC.text(new PrintedPlace.Mileage("Hill", 1246, false))).isEqualTo("12.46 km");
    assertThat(METRIC.text(new PrintedPlace.Mileage("Hill", 450, true)))
        .isEqualTo("4.50 km (Hill)");
    PrintedPlace.Mileage post = new PrintedPlace.Mileage("Hill", 5 * 80 + 28, false);
    assertThat(MILES.text(post)).isEqualTo("5m 28ch");
    assertThat(MILES.text(new PrintedPlace.Landmark("mill", post))).isEqualTo("5m 28ch");
  }

  /** A landmark stands where it stands, whatever mileage is printed beside it. */
  @Test
  void aLandmarkMeansItsOwnPlace() {
    Path path = new Path(Mill.route(), Direction.FORWARD);
    PrintGrid grid = new PrintGrid(path);
    double hut = 21 * Exact.CHAIN_M;
    PrintedPlace told = grid.landmark("hut 21", hut, 9000);
    assertThat(told)
        .isEqualTo(
            new PrintedPlace.Landmark("hut 21", new PrintedPlace.Mileage("Mill line", 21, false)));
    assertThat(grid.metres(told, 9000)).isCloseTo(hut, within(HAIR));
    assertThat(grid.landmark("hut 21", hut, hut + 50)).isEqualTo(grid.placeTo(hut, hut + 50));
    PrintedPlace moved = grid.landmark("hut 21", hut + Exact.CHAIN_M, 9000);
    assertThatThrownBy(() -> grid.metres(moved, 9000)).hasMessageContaining("no such landmark");
    PrintedPlace renamed = grid.landmark("barn", hut, 9000);
    assertThatThrownBy(() -> grid.metres(renamed, 9000)).hasMessageContaining("barn");
  }

  /** 20 m/s are 44.74 mph, and 72 km/h exactly. */
  @Test
  void aSpeedToHaveIsRoundedDownAndTheWorstOneUp() {
    assertThat(MILES.speed(20).text()).isEqualTo("44 mph");
    assertThat(MILES.speedAtMost(20).text()).isEqualTo("45 mph");
    assertThat(METRIC.speed(20).text()).isEqualTo("72 km/h");
    assertThat(METRIC.speedAtMost(20).text()).isEqualTo("72 km/h");
    assertThat(METRIC.speed(19.9).number()).isEqualTo(71);
    assertThat(METRIC.speedAtMost(20.1).number()).isEqualTo(73);
    assertThat(MILES.speed(20).mps()).isCloseTo(44 * 0.44704, within(1e-9));
    assertThat(METRIC.speed(20).mps()).isCloseTo(20, within(1e-9));
  }

  @Test
  void whatABrakeHasLeftIsRoundedDownAndASetPressureIsTheNearest() {
    assertThat(METRIC.pressure(216_000).text()).isEqualTo("2.2 bar");
    assertThat(METRIC.pressureLeft(219_000).text()).isEqualTo("2.1 bar");
    assertThat(METRIC.pressureLeft(220_000).text()).isEqualTo("2.2 bar");
    assertThat(MILES.pressure(27.6 * Exact.PSI_PA).text()).isEqualTo("28 psi");
    assertThat(MILES.pressureLeft(27.9 * Exact.PSI_PA).steps()).isEqualTo(27);
    assertThat(MILES.pressure(28 * Exact.PSI_PA).pascals())
        .isCloseTo(28 * Exact.PSI_PA, within(1e-6));
  }

  @Test
  void roomIsRoundedDownAndAnOverrunUp() {
    assertThat(METRIC.room(10.9).text()).isEqualTo("10 m");
    assertThat(METRIC.lengthUp(10.1).text()).isEqualTo("11 m");
    assertThat(METRIC.room(10).number()).isEqualTo(10);
    assertThat(METRIC.lengthUp(10).number()).isEqualTo(10);
    assertThat(MILES.room(9.2).text()).isEqualTo("10 yd");
    assertThat(MILES.lengthUp(9.2).text()).isEqualTo("11 yd");
    assertThat(MILES.room(9.2).metres()).isCloseTo(9.144, within(1e-9));
    assertThat(new PrintedLength(0, UnitStyle.MILES).metres()).isZero();
    assertThatThrownBy(() -> new PrintedLength(-1, UnitStyle.MILES))
        .hasMessage("a length is not negative: -1");
  }

  @Test
  void timeLeftIsRoundedDownAndTimeNeededUp() {
    assertThat(METRIC.time(2.4).seconds()).isEqualTo(2);
    assertThat(METRIC.time(2.5).seconds()).isEqualTo(3);
    assertThat(METRIC.timeLeft(7.9).seconds()).isEqualTo(7);
    assertThat(METRIC.timeLeft(8 - 1e-9).seconds()).isEqualTo(8);
    assertThat(METRIC.timeNeeded(7.1).seconds()).isEqualTo(8);
    assertThat(METRIC.timeNeeded(7 + 1e-9).seconds()).isEqualTo(7);
  }

  @Test
  void aShareThatMustNotLookSmallerIsRoundedUp() {
    assertThat(METRIC.share(0.164)).isEqualTo(16);
    assertThat(METRIC.share(0.165)).isEqualTo(17);
    assertThat(METRIC.shareAtMost(0.1601)).isEqualTo(17);
    assertThat(METRIC.shareAtMost(0.16)).isEqualTo(16);
    assertThat(METRIC.shareAtMost(0)).isZero();
  }
}
