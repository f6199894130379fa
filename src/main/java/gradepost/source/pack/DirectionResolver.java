package gradepost.source.pack;

import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.Path;
import gradepost.route.Platform;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.Station;
import gradepost.route.Stretch;
import gradepost.route.place.Direction;
import gradepost.source.pack.PackTable.TypedCall;
import gradepost.source.pack.PackTable.TypedDirection;
import gradepost.source.route.Coverage;
import gradepost.source.route.RouteFrame;
import gradepost.task.Call;
import gradepost.units.Nearest;
import gradepost.units.Span;
import gradepost.yaml.Nodes;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds on the route what one direction of a pack names. */
final class DirectionResolver {
  private static final double SLACK_M = 1e-3;

  private final Route route;
  private final RouteFrame frame;
  private final Reader in;

  DirectionResolver(Route route, Reader in) {
    this.route = route;
    this.frame = RouteFrame.of(route);
    this.in = in;
  }

  Optional<DirectionPart> resolve(TypedDirection typed) {
    int before = in.count();
    Optional<Direction> direction =
        find(
                typed.direction(),
                frame.names().entrySet().stream().toList(),
                Map.Entry::getValue,
                "direction",
                "",
                in.spot(typed, PackTable.DIRECTION))
            .map(Map.Entry::getKey);
    if (direction.isEmpty()) {
      return Optional.empty();
    }
    List<RunningLine> lines = lines(typed, direction.get());
    Map<String, JunctionRoute> junctions = junctions(typed, direction.get());
    boolean linesKnown = lines.size() == typed.lines().size();
    List<Call> calls = new ArrayList<>();
    for (int i = 0; i < typed.calls().size(); i++) {
      boolean end = i == 0 || i == typed.calls().size() - 1;
      call(typed.calls().get(i), end, direction.get(), linesKnown ? lines : route.lines())
          .ifPresent(calls::add);
    }
    if (calls.size() == typed.calls().size()) {
      inOrderOfTravel(typed, calls, direction.get());
      if (linesKnown) {
        linesReach(typed, lines, calls, direction.get());
      }
    }
    return in.count() > before
        ? Optional.empty()
        : Optional.of(
            new DirectionPart(
                direction.get(),
                typed.lines(),
                junctions,
                calls,
                typed.highRisk(),
                typed.formationRisks()));
  }

  private List<RunningLine> lines(TypedDirection typed, Direction direction) {
    List<RunningLine> lines = new ArrayList<>();
    for (int i = 0; i < typed.lines().size(); i++) {
      SourcePosition spot = in.spot(typed, PackTable.LINES, i);
      Optional<RunningLine> line =
          find(typed.lines().get(i), route.lines(), RunningLine::name, "running line", "", spot);
      line.filter(l -> !l.directions().contains(direction))
          .ifPresent(
              l ->
                  in.error(
                      spot,
                      "%s trains are not signalled on %s"
                          .formatted(route.nameOf(direction), l.name()),
                      "lines signalled for them",
                      ""));
      line.ifPresent(lines::add);
    }
    return lines;
  }

  private Map<String, JunctionRoute> junctions(TypedDirection typed, Direction direction) {
    Map<String, JunctionRoute> chosen = new LinkedHashMap<>();
    typed
        .junctions()
        .forEach(
            (name, way) -> {
              SourcePosition spot = in.spot(typed, PackTable.JUNCTIONS, name);
              SourcePosition nameSpot = in.keySpot(typed, PackTable.JUNCTIONS, name);
              Optional<Junction> junction =
                  find(name, route.junctions(), Junction::name, "junction", "", nameSpot);
              junction
                  .filter(j -> !j.applies().directions().contains(direction))
                  .ifPresent(
                      j ->
                          in.error(
                              spot,
                              "junction %s does not stand for %s trains"
                                  .formatted(j.name(), route.nameOf(direction)),
                              "junctions that they meet",
                              ""));
              junction
                  .flatMap(
                      j ->
                          find(
                              way,
                              j.routes(),
                              JunctionRoute::name,
                              "way",
                              " through " + j.name(),
                              spot))
                  .ifPresent(r -> chosen.put(name, r));
            });
    return chosen;
  }

  private Optional<Call> call(
      TypedCall typed, boolean end, Direction direction, List<RunningLine> lines) {
    if (!end && typed.dwell().isEmpty()) {
      in.error(
          in.spot(typed),
          "a call between the first and the last lacks the key \"dwell\"",
          PackTable.DWELL.kind().allowed(),
          "");
    }
    Optional<Station> station =
        find(
            typed.station(),
            route.stations(),
            Station::name,
            "station",
            "",
            in.spot(typed, PackTable.STATION));
    SourcePosition spot = in.spot(typed, PackTable.PLATFORM);
    Optional<Platform> platform =
        station.flatMap(
            s ->
                find(
                    typed.platform(),
                    s.platforms(),
                    Platform::number,
                    "platform",
                    " at " + s.name(),
                    spot));
    Set<String> taken = lines.stream().map(RunningLine::name).collect(Collectors.toSet());
    platform
        .filter(p -> !p.applies().to(direction, taken))
        .ifPresent(
            p ->
                in.error(
                    spot,
                    "platform %s of %s is not reached by %s trains on the lines taken"
                        .formatted(p.number(), typed.station(), route.nameOf(direction)),
                    "a platform of their lines and direction",
                    ""));
    return platform.map(p -> new Call(station.get(), p, typed.dwell().orElse(new Span(0))));
  }

  private void inOrderOfTravel(TypedDirection typed, List<Call> calls, Direction direction) {
    for (int i = 1; i < calls.size(); i++) {
      if (leavingEndM(calls.get(i), direction)
          <= leavingEndM(calls.get(i - 1), direction) + SLACK_M) {
        in.error(
            in.spot(typed.calls().get(i)),
            "%s does not come after %s for %s trains"
                .formatted(
                    typed.calls().get(i).station(),
                    typed.calls().get(i - 1).station(),
                    route.nameOf(direction)),
            "calls in order of travel",
            "");
      }
    }
  }

  private double leavingEndM(Call call, Direction direction) {
    return new Path(route, direction).span(call.platform().extent()).toM();
  }

  /** The lines taken, end to end, reach from the first platform to the last. */
  private void linesReach(
      TypedDirection typed, List<RunningLine> lines, List<Call> calls, Direction direction) {
    Coverage coverage = new Coverage(SLACK_M);
    for (RunningLine line : lines) {
      if (line.extents().isEmpty()) {
        return;
      }
      line.extents().forEach(e -> coverage.add(frame.span(e)));
    }
    Stretch first = frame.span(calls.get(0).platform().extent());
    Stretch last = frame.span(calls.get(calls.size() - 1).platform().extent());
    double from = Math.min(first.toM(), last.toM());
    double to = Math.max(first.fromM(), last.fromM());
    for (Stretch gap : coverage.gaps(from, to)) {
      in.error(
          in.spot(typed, PackTable.LINES),
          "the lines taken by %s trains leave out %s to %s"
              .formatted(route.nameOf(direction), frame.text(gap.fromM()), frame.text(gap.toM())),
          "lines that reach from the first call to the last",
          "");
    }
  }

  private <T> Optional<T> find(
      String name,
      Collection<T> all,
      java.util.function.Function<T, String> nameOf,
      String what,
      String where,
      SourcePosition spot) {
    Optional<T> found = all.stream().filter(t -> nameOf.apply(t).equals(name)).findFirst();
    if (found.isEmpty()) {
      List<String> known = all.stream().map(nameOf).toList();
      in.error(
          spot,
          "there is no " + what + " " + Nodes.shown(name) + where,
          known.isEmpty() ? "none is known" : String.join(", ", known),
          Nearest.to(name, known).orElse(""));
    }
    return found;
  }
}
