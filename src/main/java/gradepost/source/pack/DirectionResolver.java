package gradepost.source.pack;

import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.Stretch;
import gradepost.route.place.Direction;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.source.pack.PackTable.TypedCall;
import gradepost.source.pack.PackTable.TypedDirection;
import gradepost.source.route.Coverage;
import gradepost.source.route.RouteFrame;
import gradepost.task.Call;
import gradepost.text.Mistakes.Three;
import gradepost.units.Nearest;
import gradepost.units.Span;
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
                PackMistakes.UNKNOWN_DIRECTION,
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
      TypedCall call = typed.calls().get(i);
      if (i == 0 && call.booked().isPresent()) {
        in.error(in.spot(call, PackTable.BOOKED), PackMistakes.BOOKED_TO_THE_FIRST);
      }
      call(call, end, direction.get(), linesKnown ? lines : route.lines()).ifPresent(calls::add);
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
          find(
              typed.lines().get(i),
              route.lines(),
              RunningLine::name,
              PackMistakes.UNKNOWN_RUNNING_LINE,
              spot);
      line.filter(l -> !l.directions().contains(direction))
          .ifPresent(
              l ->
                  in.error(
                      spot,
                      PackMistakes.LINE_NOT_SIGNALLED.with(route.nameOf(direction), l.name())));
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
                  find(
                      name,
                      route.junctions(),
                      Junction::name,
                      (word, known, near) ->
                          known.isEmpty()
                              ? PackMistakes.NO_JUNCTIONS.with(word)
                              : PackMistakes.UNKNOWN_JUNCTION.with(word, known, near),
                      nameSpot);
              junction
                  .filter(j -> !j.applies().directions().contains(direction))
                  .ifPresent(
                      j ->
                          in.error(
                              spot,
                              PackMistakes.JUNCTION_FOR_OTHERS.with(
                                  j.name(), route.nameOf(direction))));
              junction
                  .flatMap(
                      j ->
                          find(
                              way,
                              j.routes(),
                              JunctionRoute::name,
                              (word, known, near) ->
                                  PackMistakes.UNKNOWN_WAY.with(word, known, near, j.name()),
                              spot))
                  .ifPresent(r -> chosen.put(name, r));
            });
    return chosen;
  }

  private Optional<Call> call(
      TypedCall typed, boolean end, Direction direction, List<RunningLine> lines) {
    if (!end && typed.dwell().isEmpty()) {
      in.error(in.spot(typed), PackMistakes.NO_DWELL.with(PackTable.DWELL.kind()));
    }
    Optional<Station> station =
        find(
            typed.station(),
            route.stations(),
            Station::name,
            PackMistakes.UNKNOWN_STATION,
            in.spot(typed, PackTable.STATION));
    SourcePosition spot = in.spot(typed, PackTable.PLATFORM);
    Optional<Platform> platform =
        station.flatMap(
            s ->
                find(
                    typed.platform(),
                    s.platforms(),
                    Platform::number,
                    (name, known, near) ->
                        PackMistakes.UNKNOWN_PLATFORM.with(name, known, near, s.name()),
                    spot));
    Set<String> taken = lines.stream().map(RunningLine::name).collect(Collectors.toSet());
    platform
        .filter(p -> !p.applies().to(direction, taken))
        .ifPresent(
            p ->
                in.error(
                    spot,
                    PackMistakes.PLATFORM_NOT_REACHED.with(
                        p.number(), typed.station(), route.nameOf(direction))));
    return platform.map(
        p ->
            in.readAs(
                typed,
                new Call(station.get(), p, typed.dwell().orElse(new Span(0)), typed.booked())));
  }

  private void inOrderOfTravel(TypedDirection typed, List<Call> calls, Direction direction) {
    for (int i = 1; i < calls.size(); i++) {
      if (leavingEndM(calls.get(i), direction)
          <= leavingEndM(calls.get(i - 1), direction) + SLACK_M) {
        in.error(
            in.spot(typed.calls().get(i)),
            PackMistakes.CALLS_OUT_OF_ORDER.with(
                typed.calls().get(i).station(),
                typed.calls().get(i - 1).station(),
                route.nameOf(direction)));
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
          PackMistakes.LINES_LEAVE_A_GAP.with(
              route.nameOf(direction), frame.place(gap.fromM()), frame.place(gap.toM())));
    }
  }

  private <T> Optional<T> find(
      String name,
      Collection<T> all,
      java.util.function.Function<T, String> nameOf,
      Three<String, Collection<String>, Optional<String>> mistake,
      SourcePosition spot) {
    Optional<T> found = all.stream().filter(t -> nameOf.apply(t).equals(name)).findFirst();
    if (found.isEmpty()) {
      List<String> known = all.stream().map(nameOf).toList();
      in.error(spot, mistake.with(name, known, Nearest.to(name, known)));
    }
    return found;
  }
}
