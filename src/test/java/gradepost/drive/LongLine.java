package gradepost.drive;

import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.Landmark;
import gradepost.route.PermanentRestriction;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.Signal;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.route.station.StopMark;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.units.Gradient;
import gradepost.units.Length;
import gradepost.units.Mileage;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * An invented line as long as is wanted: the same ten kilometres with a station, again and again.
 */
public final class LongLine {
  private static final String LINE = "Long line";
  private static final double REPEAT_KM = 10;
  private static final double[] PERMILLE = {0, -8, 5, 0, -12, 10, -4, 0, 12, -3};

  public static Assignment assignment(int km) {
    Route route = route(km);
    List<Call> calls = new ArrayList<>();
    for (Station station : route.stations()) {
      calls.add(new Call(station, station.platforms().get(0), new Span(30)));
    }
    Assignment mill = Mill.assignment(Direction.FORWARD, "4-car");
    return new Assignment(
        route,
        Direction.FORWARD,
        Set.of("Single"),
        Map.of(),
        calls,
        mill.stock(),
        mill.formation(),
        mill.load(),
        mill.policy(),
        List.of());
  }

  private static Location at(double km) {
    return new Location(LINE, new Mileage(km * 1000));
  }

  private static Extent extent(double from, double to) {
    return new Extent(at(from), at(to));
  }

  private static Route route(int km) {
    List<GradientPiece> gradients = new ArrayList<>();
    List<Landmark> landmarks = new ArrayList<>();
    List<Curve> curves = new ArrayList<>();
    List<PermanentRestriction> restrictions = new ArrayList<>();
    List<Station> stations = new ArrayList<>();
    List<Signal> signals = new ArrayList<>();
    restrictions.add(restriction("line", 0, km, 60));
    for (int i = 0; i < km; i++) {
      gradients.add(
          new GradientPiece(extent(i, i + 1), new Gradient(PERMILLE[i % PERMILLE.length])));
      for (int k = 0; k < 5; k++) {
        landmarks.add(
            new Landmark(
                "hut " + (5 * i + k),
                at(i + 0.2 * k),
                Applies.EVERYWHERE,
                Hand.LEFT,
                k % 2 == 0,
                new Length(150)));
      }
      signals.add(
          new Signal(
              "L " + i,
              i % 2 == 0 ? Signal.Kind.DISTANT : Signal.Kind.STOP,
              at(i + 0.45),
              Direction.FORWARD,
              "Single",
              Optional.empty(),
              List.of(),
              ""));
    }
    for (double from = 0; from + REPEAT_KM <= km; from += REPEAT_KM) {
      stations.add(station(from + 0.3));
      curves.add(
          new Curve(
              extent(from + 4, from + 4.4),
              Hand.LEFT,
              new Length(250),
              new Length(0.1),
              CheckRail.NONE));
      restrictions.add(restriction("curve " + from, from + 3.9, from + 4.5, 30));
    }
    stations.add(station(km - 0.5));
    return new Route(
        LINE,
        "invented",
        UnitStyle.METRIC,
        "Down",
        "Up",
        "kilometre posts",
        List.of(new Section(LINE, new Mileage(0), new Mileage(km * 1000.0))),
        List.of(new RunningLine("Single", List.of(), Set.of(Direction.FORWARD))),
        gradients,
        curves,
        restrictions,
        List.of(),
        stations,
        signals,
        landmarks,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  private static PermanentRestriction restriction(String name, double from, double to, double mph) {
    Extent extent = extent(from, to);
    return new PermanentRestriction(
        name,
        extent,
        Applies.EVERYWHERE,
        Speed.ofMph(mph),
        List.of(),
        List.of(new Board(BoardKind.WARNING, extent.from(), Direction.FORWARD)),
        "");
  }

  private static Station station(double km) {
    String name = "Stop at " + km;
    return new Station(
        name,
        name,
        List.of(
            new Platform(
                "1",
                extent(km - 0.2, km),
                Applies.EVERYWHERE,
                Hand.LEFT,
                Optional.empty(),
                List.of(new StopMark(4, at(km - 0.02), Direction.FORWARD)),
                "")));
  }

  private LongLine() {}
}
