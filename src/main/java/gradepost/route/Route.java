package gradepost.route;

import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.route.station.Station;
import gradepost.units.Length;
import gradepost.units.UnitStyle;
import java.util.List;

/**
 * Everything that is known of a route, by lineside places, for both directions.
 *
 * @param forwardName what trains in the listed order of sections are called (for example Down)
 * @param sections in forward order, joined end to end
 * @param posts how distance is marked at the lineside, in words
 * @param spotHeights surveyed heights, where there are any
 * @param accepted findings of the audit for which somebody answers
 * @param railCentres length between the middles of the two rail heads
 */
public record Route(
    String name,
    String description,
    UnitStyle units,
    String forwardName,
    String backwardName,
    String posts,
    List<Section> sections,
    List<RunningLine> lines,
    List<GradientPiece> gradients,
    List<Curve> curves,
    List<PermanentRestriction> restrictions,
    List<Junction> junctions,
    List<Station> stations,
    List<Signal> signals,
    List<Landmark> landmarks,
    List<Structure> structures,
    List<RailGap> railGaps,
    List<LowAdhesionSite> lowAdhesion,
    List<BrakeTestPlace> brakeTests,
    List<Observation> observations,
    List<SpotHeight> spotHeights,
    List<Accepted> accepted,
    Length railCentres) {

  /** A route of standard gauge without surveyed heights and accepted findings. */
  public Route(
      String name,
      String description,
      UnitStyle units,
      String forwardName,
      String backwardName,
      String posts,
      List<Section> sections,
      List<RunningLine> lines,
      List<GradientPiece> gradients,
      List<Curve> curves,
      List<PermanentRestriction> restrictions,
      List<Junction> junctions,
      List<Station> stations,
      List<Signal> signals,
      List<Landmark> landmarks,
      List<Structure> structures,
      List<RailGap> railGaps,
      List<LowAdhesionSite> lowAdhesion,
      List<BrakeTestPlace> brakeTests,
      List<Observation> observations) {
    this(
        name,
        description,
        units,
        forwardName,
        backwardName,
        posts,
        sections,
        lines,
        gradients,
        curves,
        restrictions,
        junctions,
        stations,
        signals,
        landmarks,
        structures,
        railGaps,
        lowAdhesion,
        brakeTests,
        observations,
        List.of(),
        List.of(),
        CurveSpeed.STANDARD_RAIL_CENTRES);
  }

  public Route {
    sections = List.copyOf(sections);
    lines = List.copyOf(lines);
    gradients = List.copyOf(gradients);
    curves = List.copyOf(curves);
    restrictions = List.copyOf(restrictions);
    junctions = List.copyOf(junctions);
    stations = List.copyOf(stations);
    signals = List.copyOf(signals);
    landmarks = List.copyOf(landmarks);
    structures = List.copyOf(structures);
    railGaps = List.copyOf(railGaps);
    lowAdhesion = List.copyOf(lowAdhesion);
    brakeTests = List.copyOf(brakeTests);
    observations = List.copyOf(observations);
    spotHeights = List.copyOf(spotHeights);
    accepted = List.copyOf(accepted);
    if (sections.isEmpty()) {
      throw new IllegalArgumentException("a route has a section at least");
    }
  }

  /** What trains in this direction are called. */
  public String nameOf(Direction direction) {
    return direction == Direction.FORWARD ? forwardName : backwardName;
  }

  /** A place by its mileage; with its section where the mileage is on more than one. */
  public String text(Location location) {
    String mileage = units.mileage(location.mileage());
    return sections.stream().filter(s -> s.holds(location.mileage())).count() > 1
        ? mileage + " (" + location.section() + ")"
        : mileage;
  }
}
