package gradepost.briefing.line;

import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.RunningLine;
import gradepost.route.Signal;
import gradepost.route.SignalRoute;
import gradepost.route.place.Extent;
import gradepost.route.place.Section;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Stops;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The ways through a junction that trains of one direction can be sent, and what shows each. */
public final class JunctionWays {
  /** Between the two lines that a way is named by. */
  private static final String TO = " to ";

  /** What a signal shows for a way. */
  public record Shown(Lineside.Over<Signal> signal, SignalRoute route) {}

  private final Assignment assignment;
  private final Lineside lineside;

  public JunctionWays(Assignment assignment, Lineside lineside) {
    this.assignment = assignment;
    this.lineside = lineside;
  }

  /** The junctions on the way of this train, in the order of travel. */
  public List<Lineside.Over<Junction>> junctions() {
    return assignment.route().junctions().stream()
        .filter(j -> lineside.applies(j.applies()))
        .map(j -> lineside.over(j, j.extent()))
        .toList();
  }

  /**
   * Whether this direction can take it. A way that is named by two lines is of the direction that
   * is signalled on both and comes to the junction on the first; of another nothing is known.
   */
  public boolean ofThisDirection(JunctionRoute way, Lineside.Over<Junction> junction) {
    String[] ends = way.name().split(TO, -1);
    return ends.length != 2
        || (line(ends[0]).map(l -> runs(l) && before(l, junction.fromM())).orElse(true)
            && line(ends[1]).map(this::runs).orElse(true));
  }

  /**
   * Whether the train comes over the points from behind: it is on this way before them. Of a way
   * that is named by two lines the second is then the one that all ways share; any other is named
   * by the section or the platform that the train comes from.
   */
  public boolean trailing(JunctionRoute way, Lineside.Over<Junction> junction) {
    String[] ends = way.name().split(TO, -1);
    if (ends.length == 2) {
      return junction.what().routes().stream()
          .filter(r -> !r.equals(way))
          .flatMap(r -> Arrays.stream(r.name().split(TO, -1)))
          .anyMatch(ends[1]::equals);
    }
    double startM = 0;
    for (Section section : assignment.path().sections()) {
      double endM = startM + section.lengthM();
      if (section.name().equals(way.name())) {
        return endM <= junction.toM() + 1;
      }
      startM = endM;
    }
    return assignment.calls().stream()
        .min(Comparator.comparingDouble(c -> Math.abs(markM(c) - junction.fromM())))
        .filter(c -> way.name().endsWith(" " + c.platform().number()))
        .filter(c -> markM(c) < junction.fromM())
        .isPresent();
  }

  private double markM(Call call) {
    return Stops.markM(assignment, call);
  }

  private Optional<RunningLine> line(String name) {
    return assignment.route().lines().stream().filter(l -> l.name().equals(name)).findFirst();
  }

  private boolean runs(RunningLine line) {
    return line.directions().contains(assignment.direction());
  }

  private boolean before(RunningLine line, double atM) {
    List<Extent> extents = line.extents();
    return extents.isEmpty()
        || extents.stream().anyMatch(e -> lineside.over(line, e).fromM() < atM - 1);
  }

  /**
   * The junction's own signal, where it shows the way: the last one before it that can show danger.
   * One further back leads to another junction. A name that is the way's own, or that of the line
   * beyond, is what it shows; of one signal with one route, the speed.
   */
  public Optional<Shown> shown(JunctionRoute way, Lineside.Over<Junction> junction) {
    return lineside.signals().stream()
        .filter(s -> s.fromM() <= junction.fromM() + 0.01)
        .filter(s -> s.what().kind().stops())
        .reduce((a, next) -> next)
        .flatMap(
            s ->
                s.what().routes().stream()
                    .filter(r -> leads(r, way, s.what().routes().size()))
                    .findFirst()
                    .map(r -> new Shown(s, r)));
  }

  private static boolean leads(SignalRoute route, JunctionRoute way, int routes) {
    return way.name().equals(route.leadsTo())
        || way.name().endsWith(TO + route.leadsTo())
        || (routes == 1 && route.speed().filter(way.speed()::equals).isPresent());
  }
}
