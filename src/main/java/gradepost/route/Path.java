package gradepost.route;

import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.units.DistanceRun;
import gradepost.units.Mileage;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * A route as met in one direction: the only place where a lineside mileage becomes a distance run
 * and the other way round.
 */
public final class Path {
  private final Route route;
  private final Direction direction;
  private final List<Section> sections;
  private final double[] startM;
  private final double lengthM;

  public Path(Route route, Direction direction) {
    this.route = route;
    this.direction = direction;
    List<Section> ordered = new ArrayList<>(route.sections());
    if (direction == Direction.BACKWARD) {
      Collections.reverse(ordered);
    }
    this.sections = List.copyOf(ordered);
    this.startM = new double[sections.size()];
    double sum = 0;
    for (int i = 0; i < startM.length; i++) {
      startM[i] = sum;
      sum += sections.get(i).lengthM();
    }
    this.lengthM = sum;
  }

  /** The route, by its lineside places. */
  public Route route() {
    return route;
  }

  /** The direction of travel. */
  public Direction direction() {
    return direction;
  }

  /** The units of the route. */
  public UnitStyle units() {
    return route.units();
  }

  /** From the start of the first section to the end of the last one. */
  public double lengthM() {
    return lengthM;
  }

  /** Names of the sections in the order of travel. */
  public List<Section> sections() {
    return sections;
  }

  /**
   * How far along the path a lineside place lies.
   *
   * @throws IllegalArgumentException when it is on no section of the route
   */
  public DistanceRun at(Location location) {
    return new DistanceRun(metresAt(location));
  }

  /** {@link #at} as plain metres, for the kernel. */
  public double metresAt(Location location) {
    for (int i = 0; i < startM.length; i++) {
      Section section = sections.get(i);
      if (section.name().equals(location.section())) {
        if (!section.holds(location.mileage())) {
          throw new IllegalArgumentException(location + " is off its section");
        }
        return startM[i] + Math.abs(location.mileage().metres() - entry(section).metres());
      }
    }
    throw new IllegalArgumentException(location + " is on no section of " + route.name());
  }

  /**
   * Where a train on this path meets an extent, and where that ends; front of the train.
   *
   * @throws IllegalArgumentException when it is on no section of the route
   */
  public Stretch span(Extent extent) {
    double one = metresAt(extent.from());
    double other = metresAt(extent.to());
    return new Stretch(Math.min(one, other), Math.max(one, other));
  }

  /**
   * The lineside place after so many metres. On the seam of two sections the one ahead is named.
   *
   * @throws IllegalArgumentException when it is off the route
   */
  public Location locationAt(double distanceM) {
    if (distanceM < -Section.SLACK_M || distanceM > lengthM + Section.SLACK_M) {
      throw new IllegalArgumentException(distanceM + " m is off the route (0 to " + lengthM + ")");
    }
    int i = sectionIndexAt(distanceM);
    Section section = sections.get(i);
    double within = Math.min(Math.max(distanceM - startM[i], 0), section.lengthM());
    boolean rises = exit(section).metres() > entry(section).metres();
    double metres = entry(section).metres() + (rises ? within : -within);
    return new Location(section.name(), new Mileage(metres));
  }

  /** The section that a place lies on; on a seam the one ahead. */
  public Section sectionAt(double distanceM) {
    return sections.get(sectionIndexAt(distanceM));
  }

  /** Whether mileage rises in the direction of travel there. */
  public boolean mileageRisesAt(double distanceM) {
    Section section = sectionAt(distanceM);
    return exit(section).metres() > entry(section).metres();
  }

  /**
   * The last place at or before {@code distanceM} whose mileage is a whole step of the print grid
   * ({@link UnitStyle#placeStepM()}); the start of the section where the grid has none before it.
   */
  public double printedAtOrBefore(double distanceM) {
    int i = sectionIndexAt(distanceM);
    Section section = sections.get(i);
    double step = units().placeStepM();
    double from = entry(section).metres();
    boolean rises = exit(section).metres() > from;
    double within = Math.min(Math.max(distanceM - startM[i], 0), section.lengthM());
    double mileage = from + (rises ? within : -within);
    double slack = 1e-6;
    double printed =
        rises
            ? Math.floor((mileage + slack) / step) * step
            : Math.ceil((mileage - slack) / step) * step;
    return startM[i] + Math.max(0, rises ? printed - from : from - printed);
  }

  /** The first such place at or after {@code distanceM}, or the end of the section. */
  public double printedAtOrAfter(double distanceM) {
    double before = printedAtOrBefore(distanceM);
    if (before >= distanceM - 1e-6) {
      return before;
    }
    int i = sectionIndexAt(distanceM);
    double end = startM[i] + sections.get(i).lengthM();
    double next = printedAtOrBefore(Math.min(end, distanceM + units().placeStepM()));
    return next >= distanceM - 1e-6 ? next : end;
  }

  /** Mileage text of a place: "5m 28ch", "12.46 km", "12.46 km (Coast)" as {@link Route#text}. */
  public String text(double distanceM) {
    return route.text(locationAt(Math.min(Math.max(distanceM, 0), lengthM)));
  }

  private int sectionIndexAt(double distanceM) {
    int i = 0;
    while (i + 1 < startM.length && distanceM >= startM[i + 1] - 1e-9) {
      i++;
    }
    return i;
  }

  private Mileage entry(Section section) {
    return direction == Direction.FORWARD ? section.from() : section.to();
  }

  private Mileage exit(Section section) {
    return direction == Direction.FORWARD ? section.to() : section.from();
  }
}
