package gradepost.route;

import static gradepost.route.TwoSections.FALLS;
import static gradepost.route.TwoSections.LENGTH_M;
import static gradepost.route.TwoSections.RISES;
import static gradepost.route.TwoSections.hill;
import static gradepost.route.TwoSections.path;
import static gradepost.route.TwoSections.shore;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.units.Exact;
import gradepost.units.UnitStyle;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Property: mileage and distance run of a line whose mileage rises, jumps and falls. */
class PathTest {
  private static final double SMALL_M = 1e-6;

  @Test
  void distanceIsCountedFromTheEndThatIsMetFirst() {
    Path down = path(Direction.FORWARD);
    assertThat(down.lengthM()).isEqualTo(LENGTH_M);
    assertThat(down.metresAt(hill(1995))).isZero();
    assertThat(down.metresAt(hill(3000))).isEqualTo(1005);
    assertThat(down.metresAt(hill(5205))).isEqualTo(3210);
    assertThat(down.metresAt(shore(6108))).isEqualTo(3210);
    assertThat(down.metresAt(shore(6000))).isEqualTo(3318);
    assertThat(down.metresAt(shore(4004))).isEqualTo(LENGTH_M);
    Path up = path(Direction.BACKWARD);
    assertThat(up.metresAt(shore(4004))).isZero();
    assertThat(up.metresAt(shore(6000))).isEqualTo(1996);
    assertThat(up.metresAt(hill(5205))).isEqualTo(2104);
    assertThat(up.metresAt(hill(3000))).isEqualTo(4309);
  }

  /** 4,500 m is on both sections: which one is meant makes 1,313 m of difference. */
  @Test
  void aMileageOnTwoSectionsIsTwoPlaces() {
    Path down = path(Direction.FORWARD);
    assertThat(down.metresAt(hill(4500))).isEqualTo(2505);
    assertThat(down.metresAt(shore(4500))).isEqualTo(4818);
    assertThat(down.text(2505)).isEqualTo("4.50 km (Hill)");
    assertThat(down.text(4818)).isEqualTo("4.50 km (Shore)");
    assertThat(down.text(1005)).isEqualTo("3.00 km");
  }

  @ParameterizedTest
  @EnumSource
  void aPlaceAndItsDistanceAreOne(Direction direction) {
    Path path = path(direction);
    Random random = new Random(7);
    for (int i = 0; i < 2000; i++) {
      double metres = random.nextDouble() * LENGTH_M;
      assertThat(path.metresAt(path.locationAt(metres))).isCloseTo(metres, within(SMALL_M));
    }
    assertThat(path.metresAt(path.locationAt(0))).isZero();
    assertThat(path.metresAt(path.locationAt(LENGTH_M))).isCloseTo(LENGTH_M, within(SMALL_M));
  }

  @Test
  void bothDirectionsTogetherMakeTheWholeLine() {
    Random random = new Random(8);
    for (int i = 0; i < 500; i++) {
      Location place = path(Direction.FORWARD).locationAt(random.nextDouble() * LENGTH_M);
      double down = path(Direction.FORWARD).metresAt(place);
      double up = path(Direction.BACKWARD).metresAt(place);
      assertThat(down + up).isCloseTo(LENGTH_M, within(SMALL_M));
    }
  }

  @Test
  void onTheSeamTheSectionAheadIsNamed() {
    assertThat(path(Direction.FORWARD).locationAt(3210)).isEqualTo(shore(6108));
    assertThat(path(Direction.FORWARD).locationAt(3209.5)).isEqualTo(hill(5204.5));
    assertThat(path(Direction.BACKWARD).locationAt(2104)).isEqualTo(hill(5205));
    assertThat(path(Direction.BACKWARD).sectionAt(2103.9)).isEqualTo(FALLS);
    assertThat(path(Direction.BACKWARD).sectionAt(2104)).isEqualTo(RISES);
  }

  @Test
  void sectionsComeInTheOrderOfTravel() {
    assertThat(path(Direction.FORWARD).sections()).containsExactly(RISES, FALLS);
    assertThat(path(Direction.BACKWARD).sections()).containsExactly(FALLS, RISES);
  }

  @Test
  void mileageRisesOrFallsByTheSectionAndTheDirection() {
    assertThat(path(Direction.FORWARD).mileageRisesAt(100)).isTrue();
    assertThat(path(Direction.FORWARD).mileageRisesAt(4000)).isFalse();
    assertThat(path(Direction.BACKWARD).mileageRisesAt(100)).isTrue();
    assertThat(path(Direction.BACKWARD).mileageRisesAt(4000)).isFalse();
  }

  @Test
  void aPlaceOffTheRouteIsRefused() {
    Path path = path(Direction.FORWARD);
    assertThatThrownBy(() -> path.metresAt(hill(1994.9)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("off its section");
    assertThatThrownBy(() -> path.metresAt(shore(6108.1))).hasMessageContaining("off its section");
    assertThatThrownBy(() -> path.metresAt(new Location("Moor", RISES.from())))
        .hasMessageContaining("no section of Made up");
    assertThatThrownBy(() -> path.locationAt(-0.1)).hasMessageContaining("off the route");
    assertThatThrownBy(() -> path.locationAt(LENGTH_M + 0.1)).hasMessageContaining("off the route");
  }

  /** In km the grid is 10 m of mileage: 1,995 to 5,205 up, and 6,108 to 4,004 down. */
  @Test
  void thePrintGridIsThatOfTheMileage() {
    Path down = path(Direction.FORWARD);
    assertThat(down.printedAtOrBefore(1008)).isEqualTo(1005);
    assertThat(down.printedAtOrAfter(1008)).isEqualTo(1015);
    assertThat(down.printedAtOrBefore(1005)).isEqualTo(1005);
    assertThat(down.printedAtOrAfter(1005)).isEqualTo(1005);
    assertThat(down.printedAtOrBefore(3)).isZero();
    assertThat(down.printedAtOrAfter(3)).isEqualTo(5);
    assertThat(down.printedAtOrBefore(3216)).isEqualTo(3210);
    assertThat(down.printedAtOrBefore(3218)).isEqualTo(3218);
    assertThat(down.printedAtOrBefore(3219)).isEqualTo(3218);
    assertThat(down.printedAtOrAfter(3219)).isEqualTo(3228);
    assertThat(down.printedAtOrAfter(3208)).isEqualTo(3210);
    assertThat(down.printedAtOrAfter(5312)).isEqualTo(LENGTH_M);
  }

  /** A place told on the grid is never past the place meant, and less than a step before it. */
  @ParameterizedTest
  @EnumSource
  void aPlaceOfTheGridIsWithinAStepBeforeAndAfter(UnitStyle units) {
    double step = units == UnitStyle.MILES ? Exact.CHAIN_M : 10;
    for (Direction direction : Direction.values()) {
      Path path = new Path(TwoSections.route(units), direction);
      Random random = new Random(9);
      for (int i = 0; i < 2000; i++) {
        double metres = random.nextDouble() * LENGTH_M;
        double before = path.printedAtOrBefore(metres);
        double after = path.printedAtOrAfter(metres);
        assertThat(before).isBetween(metres - step, metres + SMALL_M);
        assertThat(after).isBetween(metres - SMALL_M, metres + step);
        assertThat(onGridOrSeam(path, before, step)).as("before %s", metres).isTrue();
        assertThat(onGridOrSeam(path, after, step)).as("after %s", metres).isTrue();
      }
    }
  }

  private static boolean onGridOrSeam(Path path, double metres, double step) {
    double seam = path.direction() == Direction.FORWARD ? 3210 : 2104;
    double steps = path.locationAt(metres).mileage().metres() / step;
    return Math.abs(steps - Math.rint(steps)) < 1e-6
        || Math.abs(metres - seam) < SMALL_M
        || metres < SMALL_M
        || metres > LENGTH_M - SMALL_M;
  }

  @Test
  void theTextOfAPlaceOffTheEndIsThatOfTheEnd() {
    Path path = path(Direction.FORWARD);
    assertThat(path.text(-40)).isEqualTo(path.text(0)).isEqualTo("2.00 km");
    assertThat(path.text(LENGTH_M + 40)).isEqualTo(path.text(LENGTH_M)).startsWith("4.00 km");
  }
}
