package gradepost.drive.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Changed;
import gradepost.drive.EvenLine;
import gradepost.drive.Mill;
import gradepost.route.Landmark;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Hand;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.Length;
import java.util.List;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/**
 * Validation, by counting: places on {@link EvenLine}, whose print grid has one at 1.312 m and
 * every 10 m from there. The policy's reach for a landmark is 100 m.
 */
class PlacesTest {
  private static final Target FAR = board(4000);

  private static Target board(double atM) {
    return new Target.TerminalStep("board", atM, 5, 10);
  }

  private static Places places(double... landmarksM) {
    Assignment even = EvenLine.of(0);
    List<Landmark> landmarks =
        DoubleStream.of(landmarksM).mapToObj(m -> landmark(m, Applies.EVERYWHERE)).toList();
    return of(even, landmarks);
  }

  private static Places of(Assignment even, List<Landmark> landmarks) {
    return new Places(Changed.route(even, "landmarks", landmarks));
  }

  private static Landmark landmark(double atM, Applies applies) {
    return new Landmark("hut " + atM, EvenLine.at(atM), applies, Hand.LEFT, true, new Length(200));
  }

  private static void assertPlace(double actual, double expected) {
    assertThat(actual).isCloseTo(expected, within(1e-6));
  }

  @Test
  void withoutALandmarkItIsThePlaceOfTheGridBefore() {
    assertPlace(places().printed(2010, FAR, 0), 2001.312);
    assertPlace(places().printed(2011.312, FAR, 0), 2011.312);
    assertPlace(places().onGrid(2010, FAR), 2001.312);
  }

  @Test
  void aLandmarkIsTakenWithinThePolicysReach() {
    assertPlace(places(1910).printed(2010, FAR, 0), 1910);
    assertPlace(places(1909.9).printed(2010, FAR, 0), 2001.312);
    assertPlace(places(2010).printed(2010, FAR, 0), 2010);
    assertPlace(places(2010.1).printed(2010, FAR, 0), 2001.312);
    assertPlace(places(2300, 1950, 1990, 2050).printed(2010, FAR, 0), 1990);
  }

  /** A fifth of 400 m, where that is less. */
  @Test
  void aLandmarkLengthensTheBrakingByAFifthAtMost() {
    assertPlace(places(1930).printed(2010, board(2410), 0), 1930);
    assertPlace(places(1929.9).printed(2010, board(2410), 0), 2001.312);
  }

  @Test
  void noPlaceIsBeforeTheOneThatItMustNotBeBefore() {
    assertPlace(places(1950).printed(2010, FAR, 1950), 1950);
    assertPlace(places(1950).printed(2010, FAR, 1951), 2001.312);
    assertPlace(places(1950).printed(2010, FAR, 2005), 2005);
    assertPlace(places().printed(2010, board(2078), 2009), 2009);
  }

  /** By fives of metres, then by single ones, each before the target. */
  @Test
  void closeToTheTargetItIsSoFarBeforeIt() {
    Places places = places(2009);
    assertPlace(places.printed(2010, board(2110), 0), 2009);
    assertPlace(places.printed(2010, board(2109.9), 0), 2009.9);
    assertPlace(places.onGrid(2010, board(2110)), 2001.312);
    assertPlace(places.onGrid(2010, board(2109.9)), 2009.9);
    assertPlace(places.onGrid(2010, board(2052)), 2007);
    assertPlace(places.onGrid(2010, board(2050)), 2010);
    assertPlace(places.onGrid(2010, board(2048.5)), 2009.5);
    assertPlace(places.onGrid(2010, board(2048)), 2010);
    assertPlace(places.toTheUnit(2010, board(2052.3)), 2009.3);
    assertPlace(places.toTheUnit(2010, board(2052)), 2010);
  }

  /** Close to the step by fives of metres and by single ones, but before the mark behind it. */
  @Test
  void onTheWayToATerminalStepItIsSoFarBeforeTheMark() {
    Places places = places(2009);
    assertPlace(places.onGrid(2010, step(2110, 2190)), 2001.312);
    assertPlace(places.onGrid(2010, step(2109, 2190.5)), 2005.5);
    assertPlace(places.onGrid(2010, step(2040, 2120.5)), 2009.5);
    assertPlace(places.toTheUnit(2010, step(2110, 2190.5)), 2009.5);
    assertPlace(places.printed(2010, step(2110, 2190), 0), 2009);
    assertPlace(places.printed(2010, step(2109, 2190.5), 0), 2005.5);
  }

  private static Target step(double atM, double markM) {
    return new Target.TerminalStep("step", atM, 5, 10, markM);
  }

  /** By fives of yards, and by single ones: 60 m are 65.6 yd, 30 m are 32.8 yd. */
  @Test
  void inMilesItIsYards() {
    Places places = new Places(Mill.assignment(Direction.FORWARD, "4-car"));
    assertPlace(places.onGrid(2000, board(2060)), 2060 - 70 * 0.9144);
    assertPlace(places.onGrid(2000, board(2030)), 2030 - 33 * 0.9144);
    assertPlace(places.toTheUnit(2000, board(2060)), 2060 - 66 * 0.9144);
  }

  @Test
  void landmarksAreThoseOfThisTrainInTheirOrder() {
    Applies backward = new Applies(Set.of(Direction.BACKWARD), Set.of());
    Places places =
        of(
            EvenLine.of(0),
            List.of(
                landmark(900, Applies.EVERYWHERE),
                landmark(500, backward),
                landmark(100, Applies.EVERYWHERE)));
    assertThat(places.all()).extracting(Landmark::name).containsExactly("hut 100.0", "hut 900.0");
    assertThat(places.lastLandmark(99.9)).isEmpty();
    assertThat(places.lastLandmark(100).map(Landmark::name)).contains("hut 100.0");
    assertThat(places.lastLandmark(899.9).map(Landmark::name)).contains("hut 100.0");
    assertThat(places.lastLandmark(900).map(places::placeOf))
        .hasValueSatisfying(m -> assertPlace(m, 900));
  }
}
