package gradepost.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.units.Length;
import gradepost.units.Mileage;
import gradepost.units.UnitStyle;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property. Stretches on a line of two sections, one of rising mileage and one of falling. */
class PathSpanTest {
  private static final Section RISES = new Section("A", new Mileage(2000), new Mileage(5000));
  private static final Section FALLS = new Section("B", new Mileage(9000), new Mileage(8000));
  private static final Route ROUTE = line();

  /** From 1,000 m along A over the seam to 300 m along B: 2,300 m in all. */
  private static final Extent OVER_THE_SEAM =
      new Extent(new Location("A", new Mileage(3000)), new Location("B", new Mileage(8700)));

  @Test
  void aStretchIsMetAtItsNearerEndInBothDirections() {
    assertThat(new Path(ROUTE, Direction.FORWARD).span(OVER_THE_SEAM))
        .isEqualTo(new Stretch(1000, 3300));
    assertThat(new Path(ROUTE, Direction.BACKWARD).span(OVER_THE_SEAM))
        .isEqualTo(new Stretch(700, 3000));
  }

  @Test
  void itDoesNotMatterWhichEndIsNamedFirst() {
    Extent turned = new Extent(OVER_THE_SEAM.to(), OVER_THE_SEAM.from());
    for (Direction direction : Direction.values()) {
      Path path = new Path(ROUTE, direction);
      assertThat(path.span(turned)).isEqualTo(path.span(OVER_THE_SEAM));
    }
  }

  @Test
  void aPlaceIsOffAStretchByTheNearerEnd() {
    Stretch stretch = new Stretch(100, 250);
    assertThat(stretch.lengthM()).isEqualTo(150);
    assertThat(stretch.offM(70)).isEqualTo(30);
    assertThat(stretch.offM(100)).isZero();
    assertThat(stretch.offM(250)).isZero();
    assertThat(stretch.offM(260)).isEqualTo(10);
  }

  @Test
  void stretchesThatOnlyTouchDoNotOverlap() {
    Stretch stretch = new Stretch(100, 250);
    assertThat(stretch.overlaps(new Stretch(250, 300))).isFalse();
    assertThat(stretch.overlaps(new Stretch(249, 300))).isTrue();
    assertThat(new Stretch(0, 101).overlaps(stretch)).isTrue();
    assertThat(new Stretch(0, 100).overlaps(stretch)).isFalse();
  }

  @Test
  void aStretchDoesNotEndBeforeItBegins() {
    assertThatThrownBy(() -> new Stretch(2, 1)).hasMessageContaining("ends before it begins");
    assertThatThrownBy(() -> new Stretch(Double.NaN, 1)).hasMessageContaining("NaN");
  }

  private static Route line() {
    return new Route(
        "Made up",
        "",
        UnitStyle.METRIC,
        "Down",
        "Up",
        "",
        List.of(RISES, FALLS),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Length(1.5));
  }
}
