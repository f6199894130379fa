package gradepost.route.audit;

import gradepost.route.Curve;
import gradepost.route.LineHoles.Between;
import gradepost.route.LineHoles.InUnits;
import gradepost.route.LineHoles.Place;
import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.audit.AuditText.CurveAt;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.units.Length;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** A route laid out in metres in the forward direction, and what its places are called. */
final class Ground {
  private static final double LEAST_M = 0.5;

  private final Route route;
  private final Path forward;
  private final Map<List<Object>, List<Piece>> speeds = new HashMap<>();

  Ground(Route route) {
    this.route = route;
    this.forward = new Path(route, Direction.FORWARD);
  }

  /** A stretch of one permissible speed, and what sets it. */
  record Piece(double fromM, double toM, PermanentRestriction cause) {
    Speed speed() {
      return cause.speed();
    }

    /** The lowest speed that any class of train is given. */
    Speed lowest() {
      return cause.differentials().stream()
          .map(d -> d.speed())
          .reduce(cause.speed(), (a, b) -> a.compareTo(b) <= 0 ? a : b);
    }

    /** The highest speed that any class of train is given. */
    Speed highest() {
      return cause.differentials().stream()
          .map(d -> d.speed())
          .reduce(cause.speed(), (a, b) -> a.compareTo(b) >= 0 ? a : b);
    }
  }

  Route route() {
    return route;
  }

  double at(Location location) {
    return forward.metresAt(location);
  }

  double from(Extent extent) {
    return forward.span(extent).fromM();
  }

  double to(Extent extent) {
    return forward.span(extent).toM();
  }

  double lengthM() {
    return forward.lengthM();
  }

  /** How far one place is beyond another for a train in this direction. */
  double beyond(Direction direction, double placeM, double otherM) {
    return direction == Direction.FORWARD ? placeM - otherM : otherM - placeM;
  }

  /** A mileage as printed; with its section where the route has the mileage twice. */
  Place place(double metres) {
    return Place.of(forward, metres);
  }

  Place place(Location location) {
    return Place.of(route, location);
  }

  Between between(Extent extent) {
    return new Between(place(extent.from()), place(extent.to()));
  }

  CurveAt at(Curve curve) {
    return new CurveAt(curve, between(curve.extent()));
  }

  InUnits<Speed> speed(Speed speed) {
    return new InUnits<>(route.units(), speed);
  }

  InUnits<Length> length(double metres) {
    return InUnits.metres(route.units(), metres);
  }

  String name(Direction direction) {
    return route.nameOf(direction);
  }

  /** The lines for which something stands. */
  List<RunningLine> lines(Applies applies) {
    return route.lines().stream()
        .filter(l -> applies.lines().isEmpty() || applies.lines().contains(l.name()))
        .filter(l -> l.directions().stream().anyMatch(applies.directions()::contains))
        .toList();
  }

  /** Whether a line exists somewhere in a stretch. */
  boolean exists(RunningLine line, double fromM, double toM) {
    return line.extents().isEmpty()
        || line.extents().stream()
            .anyMatch(e -> from(e) <= toM + LEAST_M && to(e) >= fromM - LEAST_M);
  }

  /** The permissible speeds of a line in one direction, in forward order; the lowest stands. */
  List<Piece> speeds(RunningLine line, Direction direction) {
    return speeds.computeIfAbsent(List.of(line, direction), k -> laidOut(line, direction));
  }

  private List<Piece> laidOut(RunningLine line, Direction direction) {
    List<PermanentRestriction> standing =
        route.restrictions().stream()
            .filter(r -> r.applies().to(direction, Set.of(line.name())))
            .toList();
    TreeSet<Double> edges = new TreeSet<>();
    standing.forEach(
        r -> {
          edges.add(from(r.extent()));
          edges.add(to(r.extent()));
        });
    List<Piece> pieces = new ArrayList<>();
    List<Double> at = new ArrayList<>(edges);
    for (int i = 1; i < at.size(); i++) {
      double from = at.get(i - 1);
      double to = at.get(i);
      if (to - from > LEAST_M && exists(line, from + LEAST_M, to - LEAST_M)) {
        standing.stream()
            .filter(r -> from(r.extent()) <= from + 1e-6 && to(r.extent()) >= to - 1e-6)
            .reduce((a, b) -> b.speed().compareTo(a.speed()) < 0 ? b : a)
            .ifPresent(r -> pieces.add(new Piece(from, to, r)));
      }
    }
    return pieces;
  }
}
