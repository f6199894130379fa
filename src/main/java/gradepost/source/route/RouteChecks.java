package gradepost.source.route;

import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.LineHoles.Place;
import gradepost.route.PermanentRestriction;
import gradepost.route.RunningLine;
import gradepost.route.Signal;
import gradepost.route.Stretch;
import gradepost.route.place.Direction;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.yaml.Common;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.Values;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Checks of the parts of a route against each other. */
final class RouteChecks {
  /** Ends that are the same place in two spellings differ by the arithmetic only. */
  private static final double SLACK_M = 1e-3;

  static void gradients(Values v) {
    if (frameUnknown(v) || v.find(RouteTable.GRADIENTS).isEmpty()) {
      return;
    }
    RouteFrame frame = RouteFrame.of(v.in());
    List<GradientPiece> ordered = new ArrayList<>(v.get(RouteTable.GRADIENTS));
    ordered.sort(Comparator.comparingDouble(g -> frame.span(g.extent()).fromM()));
    double reached = 0;
    for (GradientPiece piece : ordered) {
      Stretch span = frame.span(piece.extent());
      double from = span.fromM();
      SourcePosition spot = v.in().spot(piece, RouteKeys.FROM);
      if (from > reached + SLACK_M) {
        v.in().error(spot, RouteMistakes.NO_GRADIENT.with(frame.place(reached), frame.place(from)));
      } else if (from < reached - SLACK_M) {
        double end = Math.min(reached, span.toM());
        v.in().error(spot, RouteMistakes.TWO_GRADIENTS.with(frame.place(from), frame.place(end)));
      }
      reached = Math.max(reached, span.toM());
    }
    if (reached < frame.lengthM() - SLACK_M) {
      v.error(
          RouteTable.GRADIENTS,
          RouteMistakes.NO_GRADIENT_AT_THE_END.with(
              frame.place(reached), frame.place(frame.lengthM())));
    }
  }

  static void curves(Values v) {
    if (frameUnknown(v) || v.find(RouteTable.CURVES).isEmpty()) {
      return;
    }
    RouteFrame frame = RouteFrame.of(v.in());
    List<Curve> ordered = new ArrayList<>(v.get(RouteTable.CURVES));
    ordered.sort(Comparator.comparingDouble(c -> frame.span(c.extent()).fromM()));
    double reached = 0;
    for (Curve curve : ordered) {
      double from = frame.span(curve.extent()).fromM();
      double to = frame.span(curve.extent()).toM();
      if (from < reached - SLACK_M) {
        v.in()
            .error(
                v.in().spot(curve, RouteKeys.FROM),
                RouteMistakes.TWO_CURVES.with(
                    frame.place(from), frame.place(Math.min(reached, to))));
      }
      reached = Math.max(reached, to);
    }
  }

  /** Every line, where it exists and in each direction signalled, has a permissible speed. */
  static void permissibleSpeeds(Values v) {
    if (frameUnknown(v)
        || v.find(RouteTable.RESTRICTIONS).isEmpty()
        || v.find(RouteTable.LINES).isEmpty()) {
      return;
    }
    RouteFrame frame = RouteFrame.of(v.in());
    for (Direction direction : Direction.values()) {
      Map<List<Place>, List<String>> linesByGap = new LinkedHashMap<>();
      for (RunningLine line : v.get(RouteTable.LINES)) {
        if (line.directions().contains(direction)) {
          for (Stretch gap : gaps(line, direction, v)) {
            List<Place> ends = List.of(frame.place(gap.fromM()), frame.place(gap.toM()));
            linesByGap.computeIfAbsent(ends, e -> new ArrayList<>()).add(line.name());
          }
        }
      }
      linesByGap.forEach(
          (ends, lines) ->
              v.error(
                  RouteTable.RESTRICTIONS,
                  RouteMistakes.NO_PERMISSIBLE_SPEED.with(
                      frame.nameOf(direction), ends.get(0), ends.get(1), lines)));
    }
  }

  private static List<Stretch> gaps(RunningLine line, Direction direction, Values v) {
    Coverage coverage = new Coverage(SLACK_M);
    for (PermanentRestriction restriction : v.get(RouteTable.RESTRICTIONS)) {
      if (restriction.applies().to(direction, java.util.Set.of(line.name()))) {
        coverage.add(RouteFrame.of(v.in()).span(restriction.extent()));
      }
    }
    List<Stretch> gaps = new ArrayList<>();
    for (Stretch stretch : existing(line, v)) {
      gaps.addAll(coverage.gaps(stretch.fromM(), stretch.toM()));
    }
    return gaps;
  }

  private static List<Stretch> existing(RunningLine line, Values v) {
    return line.extents().isEmpty()
        ? List.of(new Stretch(0, RouteFrame.of(v.in()).lengthM()))
        : line.extents().stream().map(e -> RouteFrame.of(v.in()).span(e)).toList();
  }

  static void signals(Values v) {
    Common.whenBoth(
        v,
        RouteTable.SIGNALS,
        RouteTable.LINES,
        (signals, lines) -> {
          for (Signal signal : signals) {
            lines.stream()
                .filter(l -> l.name().equals(signal.line()))
                .filter(l -> !l.directions().contains(signal.direction()))
                .forEach(
                    l ->
                        v.in()
                            .error(
                                v.in().spot(signal, RouteKeys.DIRECTION),
                                RouteMistakes.SIGNAL_OFF_ITS_LINE.with(
                                    signal.id(),
                                    RouteFrame.of(v.in()).nameOf(signal.direction()),
                                    l.name())));
          }
        });
  }

  static void stations(Values v) {
    Common.whenBoth(
        v,
        RouteTable.STATIONS,
        RouteTable.LINES,
        (stations, lines) -> {
          for (Station station : stations) {
            for (Platform platform : station.platforms()) {
              boolean served =
                  lines.stream()
                      .filter(
                          l ->
                              platform.applies().lines().isEmpty()
                                  || platform.applies().lines().contains(l.name()))
                      .anyMatch(
                          l ->
                              platform.applies().directions().stream()
                                  .anyMatch(l.directions()::contains));
              if (!served) {
                v.in()
                    .error(
                        v.in().spot(platform),
                        RouteMistakes.PLATFORM_WITHOUT_LINE.with(
                            platform.number(), station.name()));
              }
            }
          }
        });
  }

  private static boolean frameUnknown(Values v) {
    return RouteFrame.of(v.in()).sections().isEmpty() || RouteFrame.of(v.in()).names().isEmpty();
  }

  private RouteChecks() {}
}
