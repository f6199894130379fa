package gradepost.route;

import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.units.Length;
import gradepost.units.Mileage;
import gradepost.units.UnitStyle;
import java.util.List;

/**
 * An invented line of two sections. On the first the mileage rises, on the second it falls, and
 * from one to the other it jumps; a part of it is on both.
 */
public final class TwoSections {
  /** 3,210 m from 1,995 to 5,205: neither end is a whole step of a grid of 10 m. */
  static final Section RISES = new Section("Hill", new Mileage(1995), new Mileage(5205));

  /** 2,104 m from 6,108 down to 4,004. */
  static final Section FALLS = new Section("Shore", new Mileage(6108), new Mileage(4004));

  public static final double LENGTH_M = 3210 + 2104;

  public static Path path(Direction direction) {
    return new Path(route(UnitStyle.METRIC), direction);
  }

  public static Route route(UnitStyle units) {
    return route(units, List.of(RISES, FALLS));
  }

  static Route route(UnitStyle units, List<Section> sections) {
    return new Route(
        "Made up",
        "invented",
        units,
        "Down",
        "Up",
        "posts",
        sections,
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

  static Location hill(double metres) {
    return new Location("Hill", new Mileage(metres));
  }

  static Location shore(double metres) {
    return new Location("Shore", new Mileage(metres));
  }

  private TwoSections() {}
}
