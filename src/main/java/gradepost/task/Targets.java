package gradepost.task;

import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.Path;
import gradepost.route.place.Location;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Finds what a run has to be braked for, in order of travel. */
public final class Targets {

  /** The stops and the falls of the permissible speed. */
  public static List<Target> of(Assignment assignment, Ceiling ceiling) {
    List<Target> targets = new ArrayList<>();
    double start = Stops.markM(assignment, assignment.calls().get(0));
    for (Call call : assignment.calls().subList(1, assignment.calls().size())) {
      targets.add(Stops.target(assignment, call));
    }
    double end = targets.get(targets.size() - 1).atM();
    List<CeilingStep> steps = ceiling.steps();
    for (int i = 1; i < steps.size(); i++) {
      CeilingStep before = steps.get(i - 1);
      CeilingStep step = steps.get(i);
      boolean falls = step.speedMps() < before.speedMps();
      if (falls && step.fromM() > start && step.fromM() < end) {
        targets.add(lower(assignment, before, step, end));
      }
    }
    targets.sort(Comparator.comparingDouble(Target::atM));
    return targets;
  }

  private static Target lower(
      Assignment assignment, CeilingStep before, CeilingStep step, double endM) {
    return step.cause().equals(Ceiling.TERMINAL)
        ? new Target.TerminalStep(
            step.cause(), step.fromM(), step.speedMps(), before.speedMps(), endM)
        : reduction(assignment, before, step);
  }

  private static Target.Reduction reduction(
      Assignment assignment, CeilingStep before, CeilingStep step) {
    Path path = assignment.path();
    Target.Reduction.Kind kind = kind(assignment, step.cause());
    Optional<Board> warning =
        boards(assignment, step.cause()).stream()
            .filter(b -> b.direction() == assignment.direction())
            .filter(b -> b.kind() == BoardKind.WARNING)
            .filter(b -> path.metresAt(b.location()) <= step.fromM() + 0.01)
            .min(Comparator.comparingDouble(b -> path.metresAt(b.location())));
    Optional<Location> place = warning.map(Board::location);
    return new Target.Reduction(
        step.cause(),
        kind,
        step.cause(),
        step.fromM(),
        step.speedMps(),
        before.speedMps(),
        place,
        place.map(path::metresAt));
  }

  private static Target.Reduction.Kind kind(Assignment assignment, String cause) {
    if (assignment.restrictions().stream().anyMatch(r -> r.reference().equals(cause))) {
      return Target.Reduction.Kind.TEMPORARY;
    }
    if (assignment.route().junctions().stream().anyMatch(j -> j.name().equals(cause))) {
      return Target.Reduction.Kind.JUNCTION;
    }
    return Target.Reduction.Kind.PERMANENT;
  }

  /** The boards of what sets a permissible speed, by its name or reference. */
  public static List<Board> boards(Assignment assignment, String cause) {
    List<Board> boards = new ArrayList<>();
    assignment.restrictions().stream()
        .filter(r -> r.reference().equals(cause))
        .forEach(r -> boards.addAll(r.boards()));
    assignment.route().restrictions().stream()
        .filter(r -> r.name().equals(cause))
        .forEach(r -> boards.addAll(r.boards()));
    return boards;
  }

  private Targets() {}
}
