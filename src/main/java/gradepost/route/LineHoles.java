package gradepost.route;

import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.text.Hole;
import gradepost.units.Gradient;
import gradepost.units.Length;
import gradepost.units.Mileage;
import gradepost.units.Pressure;
import gradepost.units.Rounding;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.Locale;

/**
 * Holes of texts about a line: places and quantities in the units of its route. Each hole says to
 * which side it rounds.
 */
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

    /** A place of a route, as the lineside has it. */
    public static Place of(Route route, Location location) {
      return new Place(route.text(location));
    }

    /** A mileage by itself. */
    public static Place of(UnitStyle units, Mileage mileage) {
      return new Place(units.mileage(mileage));
    }
  }

  /** Two places with what lies between them. */
  public record Between(Place from, Place to) {}

  /** A quantity, and the units in which the route has it. */
  public record InUnits<Q>(UnitStyle units, Q quantity) {

    /** So many metres, in the units of a route. */
    public static InUnits<Length> metres(UnitStyle units, double metres) {
      return new InUnits<>(units, new Length(metres));
    }

    /** So many metres a second, in the units of a route. */
    public static InUnits<Speed> metresPerSecond(UnitStyle units, double metresPerSecond) {
      return new InUnits<>(units, new Speed(metresPerSecond));
    }
  }

  /** A hole for a place, as the lineside has it. */
  public static Hole<Place> place(String name) {
    return new Hole<>(name, place -> place.text);
  }

  /** The holes {@code {from}} and {@code {to}}. */
  public static Hole<Between> between() {
    return place("from").<Between>of(Between::from).and(place("to").of(Between::to));
  }

  /** A hole for a length that is told of as too long: rounded up. */
  public static Hole<InUnits<Length>> lengthUp(String name) {
    return length(name, Rounding.UP);
  }

  /** A hole for a length that is a limit: rounded down. */
  public static Hole<InUnits<Length>> lengthDown(String name) {
    return length(name, Rounding.DOWN);
  }

  /** A hole for a length that nobody acts on: rounded to the nearest. */
  public static Hole<InUnits<Length>> lengthNearest(String name) {
    return length(name, Rounding.NEAREST);
  }

  /** A hole for so many metres before something, negative for past it: rounded down. */
  public static Hole<InUnits<Double>> metresBeforeDown(String name) {
    return new Hole<>(name, m -> m.units().length(m.quantity(), Rounding.DOWN));
  }

  /** A hole for a side of the line, in small letters. */
  public static Hole<Hand> hand(String name) {
    return new Hole<>(name, hand -> hand.name().toLowerCase(Locale.ROOT));
  }

  /** A hole for whole seconds, as "2 min 05 s". */
  public static Hole<Long> minutes(String name) {
    return new Hole<>(name, s -> String.format(Locale.ROOT, "%d min %02d s", s / 60, s % 60));
  }

  private static Hole<InUnits<Length>> length(String name, Rounding rounding) {
    return new Hole<>(name, l -> l.units().length(l.quantity().metres(), rounding));
  }

  /** A hole for a speed that stands on the line, which is a whole number of its units. */
  public static Hole<InUnits<Speed>> speed(String name) {
    return speed(name, Rounding.NEAREST);
  }

  /** A hole for a speed that is told of as too high: rounded up. */
  public static Hole<InUnits<Speed>> speedUp(String name) {
    return speed(name, Rounding.UP);
  }

  /** A hole for a speed that is a limit: rounded down. */
  public static Hole<InUnits<Speed>> speedDown(String name) {
    return speed(name, Rounding.DOWN);
  }

  private static Hole<InUnits<Speed>> speed(String name, Rounding rounding) {
    return new Hole<>(name, s -> s.units().speed(s.quantity().metresPerSecond(), rounding));
  }

  /** A hole for a pressure, nearest to what the gauge shows. */
  public static Hole<InUnits<Pressure>> pressure(String name) {
    return new Hole<>(name, p -> p.units().pressure(p.quantity().pascals()));
  }

  /** A hole for a gradient: rounded to the steeper side. */
  public static Hole<InUnits<Gradient>> gradient(String name) {
    return new Hole<>(name, g -> g.units().gradient(g.quantity()));
  }

  /** A hole for so many metres more, negative for less, in whole millimetres: "67 mm". */
  public static Hole<Double> millimetresMore(String name) {
    return new Hole<>(name, metres -> String.format(Locale.ROOT, "%.0f mm", metres * 1000));
  }

  private LineHoles() {}
}
