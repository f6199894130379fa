package gradepost.drive;

import gradepost.policy.Policy;
import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.Landmark;
import gradepost.route.PermanentRestriction;
import gradepost.route.RailGap;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.route.station.StopMark;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.units.Gradient;
import gradepost.units.Length;
import gradepost.units.Mileage;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A line in plain metres from its forward start, and the train that runs on it: what {@link
 * RandomLines} makes up and what can be made smaller when something fails.
 *
 * @param seam where the second section, of falling mileage, begins; the length where there is none
 * @param restrictions besides the line's own speed {@code lineMps}
 */
public record RandomLine(
    UnitStyle units,
    double lengthM,
    double seam,
    double lineMps,
    List<Slope> slopes,
    List<Bend> bends,
    List<Slack> restrictions,
    List<Gap> gaps,
    List<Halt> halts,
    List<Double> landmarks,
    Stock stock,
    Policy policy,
    Formation formation,
    LoadCase load,
    Direction direction) {

  record Slope(double fromM, double toM, double permille) {}

  record Bend(double fromM, double toM, double radiusM, boolean checkRail) {}

  record Slack(double fromM, double toM, double speedMps) {}

  record Gap(double fromM, double toM) {}

  /** A platform; {@code buffers} where the road ends at it in the direction of travel. */
  record Halt(double fromM, double toM, boolean buffers) {}

  private static final double FIRST_M = 3218.688;

  private Location at(double metres) {
    return metres < seam || seam >= lengthM
        ? new Location("Lower", new Mileage(FIRST_M + metres))
        : new Location("Upper", new Mileage(4 * FIRST_M + lengthM - metres));
  }

  /** The end of a stretch, on the section in which the stretch ends. */
  private Location endAt(double metres) {
    return metres <= seam || seam >= lengthM
        ? new Location("Lower", new Mileage(FIRST_M + metres))
        : new Location("Upper", new Mileage(4 * FIRST_M + lengthM - metres));
  }

  private Extent extent(double from, double to) {
    return new Extent(at(from), endAt(to));
  }

  public Assignment assignment() {
    Route route = route();
    List<Call> calls = new ArrayList<>();
    for (Station station : route.stations()) {
      calls.add(new Call(station, station.platforms().get(0), new Span(30)));
    }
    if (direction == Direction.BACKWARD) {
      Collections.reverse(calls);
    }
    return new Assignment(
        route,
        direction,
        Set.of("Single"),
        Map.of(),
        calls,
        stock,
        direction == Direction.FORWARD ? formation : formation.reversed(),
        load,
        policy,
        List.of());
  }

  private Route route() {
    List<Section> sections = new ArrayList<>();
    double lower = Math.min(seam, lengthM);
    sections.add(new Section("Lower", new Mileage(FIRST_M), new Mileage(FIRST_M + lower)));
    if (seam < lengthM) {
      sections.add(
          new Section(
              "Upper", new Mileage(4 * FIRST_M + lengthM - seam), new Mileage(4 * FIRST_M)));
    }
    List<PermanentRestriction> speeds = new ArrayList<>();
    speeds.add(speed("line", 0, lengthM, lineMps));
    for (Slack slack : restrictions) {
      speeds.add(
          speed(
              "slack at " + Math.round(slack.fromM()),
              slack.fromM(),
              slack.toM(),
              slack.speedMps()));
    }
    return new Route(
        "Made-up line",
        "",
        units,
        "Down",
        "Up",
        "",
        sections,
        List.of(
            new RunningLine("Single", List.of(), Set.of(Direction.FORWARD, Direction.BACKWARD))),
        slopes.stream()
            .map(s -> new GradientPiece(extent(s.fromM(), s.toM()), new Gradient(s.permille())))
            .toList(),
        bends.stream()
            .map(
                b ->
                    new Curve(
                        extent(b.fromM(), b.toM()),
                        Hand.LEFT,
                        new Length(b.radiusM()),
                        new Length(0.1),
                        b.checkRail() ? CheckRail.LOW_RAIL : CheckRail.NONE))
            .toList(),
        speeds,
        List.of(),
        stations(),
        List.of(),
        landmarks.stream()
            .map(
                m ->
                    new Landmark(
                        "mark " + Math.round(m),
                        at(m),
                        Applies.EVERYWHERE,
                        Hand.LEFT,
                        true,
                        new Length(200)))
            .toList(),
        List.of(),
        gaps.stream()
            .map(g -> new RailGap("gap", extent(g.fromM(), g.toM()), Applies.EVERYWHERE))
            .toList(),
        List.of(),
        List.of(),
        List.of());
  }

  private PermanentRestriction speed(String name, double from, double to, double mps) {
    return new PermanentRestriction(
        name, extent(from, to), Applies.EVERYWHERE, new Speed(mps), List.of(), List.of(), "");
  }

  private List<Station> stations() {
    List<Station> stations = new ArrayList<>();
    int cars = formation.cars();
    double inset = units.placeStepM() / 2;
    for (Halt halt : halts) {
      double buffersAt = direction == Direction.FORWARD ? halt.toM() + inset : halt.fromM() - inset;
      stations.add(
          new Station(
              "Halt " + stations.size(),
              "H" + stations.size(),
              List.of(
                  new Platform(
                      "1",
                      extent(halt.fromM(), halt.toM()),
                      Applies.EVERYWHERE,
                      Hand.LEFT,
                      halt.buffers() ? Optional.of(at(buffersAt)) : Optional.empty(),
                      List.of(
                          new StopMark(cars, endAt(halt.toM() - inset), Direction.FORWARD),
                          new StopMark(cars, at(halt.fromM() + inset), Direction.BACKWARD)),
                      ""))));
    }
    return stations;
  }
}
