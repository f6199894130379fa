package gradepost.source.route;

import gradepost.route.Path;
import gradepost.text.Hole;
import gradepost.units.Length;
import gradepost.units.Mileage;
import gradepost.units.Rounding;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.Locale;

/** Holes of texts about a line: places, lengths and speeds in the units of its route. */
public final class LineHoles {

  /** A place of the line; places that are written alike are equal. */
  public static final class Place {
    private final String text;

    private Place(String text) {
      this.text = text;
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Place place && text.equals(place.text);
    }

    @Override
    public int hashCode() {
      return text.hashCode();
    }

    /** So many metres along a path, as the lineside has it. */
    public static Place of(Path path, double metres) {
      return new Place(path.text(metres));
    }

    static Place of(UnitStyle units, Mileage mileage) {
      return new Place(units.mileage(mileage));
    }
  }

  /** A quantity, and the units in which the route has it. */
  public record InUnits<Q>(UnitStyle units, Q quantity) {}

  /** A hole for a place, as the lineside has it. */
  public static Hole<Place> place(String name) {
    return new Hole<>(name, place -> place.text);
  }

  /** A hole for a length that is told of as too long: rounded up. */
  public static Hole<InUnits<Length>> lengthUp(String name) {
    return new Hole<>(name, l -> l.units().length(l.quantity().metres(), Rounding.UP));
  }

  /** A hole for a length that is a limit: rounded down. */
  public static Hole<InUnits<Length>> lengthDown(String name) {
    return new Hole<>(name, l -> l.units().length(l.quantity().metres(), Rounding.DOWN));
  }

  /** A hole for a speed that stands on the line, which is a whole number of its units. */
  public static Hole<InUnits<Speed>> speed(String name) {
    return new Hole<>(name, s -> s.units().speed(s.quantity().metresPerSecond(), Rounding.NEAREST));
  }

  /** A hole for so many metres more, negative for less, in whole millimetres: "67 mm". */
  static Hole<Double> millimetresMore(String name) {
    return new Hole<>(name, metres -> String.format(Locale.ROOT, "%.0f mm", metres * 1000));
  }

  private LineHoles() {}
}
