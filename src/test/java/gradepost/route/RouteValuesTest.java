package gradepost.route;

import static gradepost.route.TwoSections.hill;
import static gradepost.route.TwoSections.shore;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.pack.TemporaryRestriction;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Section;
import gradepost.units.Length;
import gradepost.units.Mileage;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Property: the values that a route is made of, each for itself. */
class RouteValuesTest {
  private static final Applies DOWN_MAIN =
      new Applies(Set.of(Direction.FORWARD), Set.of("Down Main"));
  private static final Extent EXTENT = new Extent(hill(2000), hill(2400));
  private static final LocalDateTime IMPOSED = LocalDateTime.of(2026, 3, 2, 4, 0);
  private static final LocalDateTime END = LocalDateTime.of(2026, 3, 9, 4, 0);

  @Test
  void aSectionHoldsItsEndsAndWhatIsBetween() {
    Section falls = new Section("Shore", new Mileage(6108), new Mileage(4004));
    assertThat(falls.rises()).isFalse();
    assertThat(falls.lengthM()).isEqualTo(2104);
    assertThat(falls.holds(new Mileage(6108))).isTrue();
    assertThat(falls.holds(new Mileage(4004))).isTrue();
    assertThat(falls.holds(new Mileage(6108.01))).isFalse();
    assertThat(falls.holds(new Mileage(4003.99))).isFalse();
    assertThat(new Section("Hill", new Mileage(0), new Mileage(1)).rises()).isTrue();
    assertThatThrownBy(() -> new Section("Moor", new Mileage(5), new Mileage(5)))
        .hasMessage("section Moor has no length");
  }

  @Test
  void aRouteHasASectionAndKeepsWhatItWasGiven() {
    assertThatThrownBy(() -> TwoSections.route(UnitStyle.METRIC, List.of()))
        .hasMessage("a route has a section at least");
    List<Section> given = new ArrayList<>(List.of(TwoSections.RISES));
    Route route = TwoSections.route(UnitStyle.MILES, given);
    given.clear();
    assertThat(route.sections()).containsExactly(TwoSections.RISES);
    assertThat(route.nameOf(Direction.FORWARD)).isEqualTo("Down");
    assertThat(route.nameOf(Direction.BACKWARD)).isEqualTo("Up");
  }

  /** The section is named only where the mileage alone could mean two places. */
  @Test
  void aMileageIsToldWithItsSectionWhereItIsOnTwo() {
    Route route = TwoSections.route(UnitStyle.METRIC);
    assertThat(route.text(hill(3990))).isEqualTo("3.99 km");
    assertThat(route.text(hill(4004))).isEqualTo("4.00 km (Hill)");
    assertThat(route.text(shore(5205))).isEqualTo("5.21 km (Shore)");
    assertThat(route.text(shore(5210))).isEqualTo("5.21 km");
  }

  @Test
  void somethingStandsForADirectionOnALine() {
    assertThat(DOWN_MAIN.to(Direction.FORWARD, Set.of("Down Loop", "Down Main"))).isTrue();
    assertThat(DOWN_MAIN.to(Direction.FORWARD, Set.of("Down Loop"))).isFalse();
    assertThat(DOWN_MAIN.to(Direction.BACKWARD, Set.of("Down Main"))).isFalse();
    Applies anyLine = new Applies(Set.of(Direction.BACKWARD), Set.of());
    assertThat(anyLine.to(Direction.BACKWARD, Set.of())).isTrue();
    assertThat(anyLine.to(Direction.FORWARD, Set.of("Down Main"))).isFalse();
    assertThat(Applies.EVERYWHERE.to(Direction.FORWARD, Set.of("any"))).isTrue();
    assertThat(Applies.EVERYWHERE.to(Direction.BACKWARD, Set.of("any"))).isTrue();
    assertThatThrownBy(() -> new Applies(Set.of(), Set.of())).hasMessageContaining("one direction");
  }

  /** The order in which directions were typed must not show in any output. */
  @Test
  void directionsAreInOneOrder() {
    Set<Direction> turned = new LinkedHashSet<>(List.of(Direction.BACKWARD, Direction.FORWARD));
    assertThat(new Applies(turned, Set.of()).directions())
        .containsExactly(Direction.FORWARD, Direction.BACKWARD);
    assertThat(new RunningLine("Main", List.of(), turned).directions())
        .containsExactly(Direction.FORWARD, Direction.BACKWARD);
    assertThat(Direction.FORWARD.opposite()).isEqualTo(Direction.BACKWARD);
    assertThat(Direction.BACKWARD.opposite()).isEqualTo(Direction.FORWARD);
    assertThat(Hand.LEFT.opposite()).isEqualTo(Hand.RIGHT);
    assertThat(Hand.RIGHT.opposite()).isEqualTo(Hand.LEFT);
  }

  /** A differential may be lower than the general speed: then it is the one that stands. */
  @Test
  void theHighestDifferentialOfTheTrainsOwnClassesStands() {
    PermanentRestriction curve =
        new PermanentRestriction(
            "Mill curve",
            EXTENT,
            DOWN_MAIN,
            Speed.ofKmh(60),
            List.of(
                new Differential("MU", Speed.ofKmh(80)),
                new Differential("LIGHT", Speed.ofKmh(70)),
                new Differential("HEAVY", Speed.ofKmh(40))),
            List.of(),
            "");
    assertThat(curve.speedFor(List.of())).isEqualTo(Speed.ofKmh(60));
    assertThat(curve.speedFor(List.of("OTHER"))).isEqualTo(Speed.ofKmh(60));
    assertThat(curve.speedFor(List.of("HEAVY"))).isEqualTo(Speed.ofKmh(40));
    assertThat(curve.speedFor(List.of("LIGHT", "MU"))).isEqualTo(Speed.ofKmh(80));
    assertThat(curve.speedFor(List.of("HEAVY", "LIGHT"))).isEqualTo(Speed.ofKmh(70));
    TemporaryRestriction notice =
        notice(
            TemporaryRestriction.Status.IN_FORCE,
            List.of(new Differential("HEAVY", Speed.ofKmh(10))),
            Optional.empty());
    assertThat(notice.speedFor(List.of("HEAVY"))).isEqualTo(Speed.ofKmh(10));
    assertThat(notice.speedFor(List.of("MU"))).isEqualTo(Speed.ofKmh(30));
  }

  @Test
  void aNoticeStandsFromTheHourOfItsBeginningUntilItsEnd() {
    TemporaryRestriction notice =
        notice(TemporaryRestriction.Status.PLANNED, List.of(), Optional.of(END));
    assertThat(notice.standsBetween(IMPOSED.minusDays(2), IMPOSED)).isFalse();
    assertThat(notice.standsBetween(IMPOSED.minusDays(2), IMPOSED.plusMinutes(1))).isTrue();
    assertThat(notice.standsBetween(END.minusMinutes(1), END.plusDays(9))).isTrue();
    assertThat(notice.standsBetween(END, END.plusDays(9))).isFalse();
    TemporaryRestriction endless =
        notice(TemporaryRestriction.Status.IN_FORCE, List.of(), Optional.empty());
    assertThat(endless.standsBetween(END.plusYears(9), END.plusYears(10))).isTrue();
    assertThat(endless.standsBetween(IMPOSED.minusDays(1), IMPOSED)).isFalse();
    for (TemporaryRestriction.Status status : TemporaryRestriction.Status.values()) {
      assertThat(notice(status, List.of(), Optional.empty()).standsBetween(IMPOSED, END))
          .as(status.name())
          .isEqualTo(status != TemporaryRestriction.Status.WITHDRAWN);
    }
  }

  private static TemporaryRestriction notice(
      TemporaryRestriction.Status status,
      List<Differential> differentials,
      Optional<LocalDateTime> until) {
    return new TemporaryRestriction(
        "T 1",
        TemporaryRestriction.Kind.TEMPORARY,
        status,
        EXTENT,
        DOWN_MAIN,
        Speed.ofKmh(30),
        differentials,
        Optional.empty(),
        "wet bed",
        IMPOSED,
        until,
        Optional.empty(),
        List.of(),
        "");
  }

  @Test
  void onlyTwoKindsOfSignalsCanShowDanger() {
    assertThat(Signal.Kind.values())
        .filteredOn(Signal.Kind::stops)
        .containsExactly(Signal.Kind.STOP, Signal.Kind.STOP_AND_CAUTION);
  }

  @Test
  void aCurveHasARadiusAndAJunctionAWayThrough() {
    assertThatThrownBy(
            () -> new Curve(EXTENT, Hand.LEFT, new Length(0), new Length(0.1), CheckRail.NONE))
        .hasMessage("a curve has a radius");
    assertThatThrownBy(() -> new Junction("East", EXTENT, DOWN_MAIN, List.of()))
        .hasMessage("junction East leads nowhere");
  }
}
