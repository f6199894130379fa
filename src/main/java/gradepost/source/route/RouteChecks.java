package gradepost.source.route;

import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.PermanentRestriction;
import gradepost.route.Platform;
import gradepost.route.RunningLine;
import gradepost.route.Signal;
import gradepost.route.Station;
import gradepost.route.Stretch;
import gradepost.route.place.Direction;
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
    String allowed = "gradients that cover the route without gap or overlap";
    for (GradientPiece piece : ordered) {
      Stretch span = frame.span(piece.extent());
      double from = span.fromM();
      SourcePosition spot = v.in().spot(piece, RouteKeys.FROM);
      if (from > reached + SLACK_M) {
        v.in()
            .error(
                spot,
                "no gradient from %s to %s".formatted(frame.text(reached), frame.text(from)),
                allowed,
                "");
      } else if (from < reached - SLACK_M) {
        double end = Math.min(reached, span.toM());
        v.in()
            .error(
                spot,
                "two gradients from %s to %s".formatted(frame.text(from), frame.text(end)),
                allowed,
                "");
      }
      reached = Math.max(reached, span.toM());
    }
    if (reached < frame.lengthM() - SLACK_M) {
      v.error(
          RouteTable.GRADIENTS,
          "no gradient from %s to the end of the route at %s"
              .formatted(frame.text(reached), frame.text(frame.lengthM())),
          allowed,
          "");
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
                "two curves from %s to %s"
                    .formatted(frame.text(from), frame.text(Math.min(reached, to))),
                "one curve at a place",
                "");
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
      Map<String, List<String>> linesByGap = new LinkedHashMap<>();
      for (RunningLine line : v.get(RouteTable.LINES)) {
        if (line.directions().contains(direction)) {
          for (Stretch gap : gaps(line, direction, v)) {
            String where = frame.text(gap.fromM()) + " to " + frame.text(gap.toM());
            linesByGap.computeIfAbsent(where, w -> new ArrayList<>()).add(line.name());
          }
        }
      }
      linesByGap.forEach(
          (where, lines) ->
              v.error(
                  RouteTable.RESTRICTIONS,
                  "no permissible speed for %s trains from %s on %s"
                      .formatted(frame.names().get(direction), where, String.join(", ", lines)),
                  "permissible speeds that leave nothing uncovered",
                  ""));
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
                                "signal %s is for %s trains, which do not run on %s"
                                    .formatted(signal.id(), name(v, signal.direction()), l.name()),
                                "a direction for which the line is signalled",
                                ""));
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
                        "no line leads to platform %s of %s"
                            .formatted(platform.number(), station.name()),
                        "lines signalled in a direction of the platform",
                        "");
              }
            }
          }
        });
  }

  private static String name(Values v, Direction direction) {
    return RouteFrame.of(v.in()).names().getOrDefault(direction, direction.name());
  }

  private static boolean frameUnknown(Values v) {
    return RouteFrame.of(v.in()).sections().isEmpty() || RouteFrame.of(v.in()).names().isEmpty();
  }

  private RouteChecks() {}
}
