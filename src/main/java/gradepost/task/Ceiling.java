package gradepost.task;

import gradepost.pack.TemporaryRestriction;
import gradepost.policy.TerminalStep;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.route.Stretch;
import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * The permissible speed for the front of one train, as a step function of distance run: the lowest
 * of everything that stands. A restriction begins for the front and ends when the rear has cleared
 * it.
 */
public final class Ceiling {
  /** What sets the steps of the speed up a terminal platform. */
  static final String TERMINAL = "TERMINAL";

  private final List<CeilingStep> steps;

  public Ceiling(List<CeilingStep> steps) {
    this.steps = List.copyOf(steps);
  }

  /** What one cause allows, from where the front meets it to where it ends for the front. */
  record Limit(double fromM, double toM, double speedMps, String cause) {}

  /** Resolves what stands for this train, its last stop's terminal ceilings included. */
  public static Ceiling of(Assignment assignment) {
    Path path = assignment.path();
    double trainM = assignment.formation().lengthM();
    List<String> classes = assignment.stock().trainClasses();
    List<Limit> limits = new ArrayList<>();
    limits.add(
        new Limit(
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            assignment.stock().maximum().metresPerSecond(),
            "train"));
    assignment
        .degraded()
        .ifPresent(
            run ->
                limits.add(
                    new Limit(
                        Double.NEGATIVE_INFINITY,
                        Double.POSITIVE_INFINITY,
                        run.permit().atMost().metresPerSecond(),
                        run.edition().name())));
    for (PermanentRestriction r : assignment.route().restrictions()) {
      if (stands(assignment, r.applies())) {
        limits.add(
            limit(path, r.extent(), trainM, r.speedFor(classes).metresPerSecond(), r.name()));
      }
    }
    for (TemporaryRestriction r : assignment.restrictions()) {
      if (stands(assignment, r.applies())) {
        limits.add(
            limit(path, r.extent(), trainM, r.speedFor(classes).metresPerSecond(), r.reference()));
      }
    }
    for (Junction junction : assignment.route().junctions()) {
      if (stands(assignment, junction.applies())) {
        JunctionRoute taken =
            assignment.junctionRoutes().getOrDefault(junction.name(), junction.routes().get(0));
        limits.add(
            limit(
                path, junction.extent(), trainM, taken.speed().metresPerSecond(), junction.name()));
      }
    }
    Call last = assignment.calls().get(assignment.calls().size() - 1);
    if (last.platform().bufferStops().isPresent()) {
      double mark = Stops.markM(assignment, last);
      for (TerminalStep step : assignment.policy().terminal()) {
        limits.add(
            new Limit(
                mark - step.beforeMark().metres(),
                Double.POSITIVE_INFINITY,
                step.speed().metresPerSecond(),
                TERMINAL));
      }
    }
    return lowest(limits, path.lengthM());
  }

  /** Whether something stands for this train on its lines. */
  public static boolean stands(Assignment assignment, Applies applies) {
    return applies.to(assignment.direction(), assignment.lines());
  }

  private static Limit limit(
      Path path, Extent extent, double trainM, double speedMps, String cause) {
    Stretch span = path.span(extent);
    // A train that stands at the start of the path is under whatever begins there.
    double start = span.fromM() < 0.01 ? Double.NEGATIVE_INFINITY : span.fromM();
    return new Limit(start, span.toM() + trainM, speedMps, cause);
  }

  /**
   * The lowest of the limits over 0 … {@code lengthM}; the first named of equals is the cause, and
   * where it ends and another has the same speed, that one goes on.
   */
  static Ceiling lowest(List<Limit> limits, double lengthM) {
    TreeSet<Double> edges = new TreeSet<>(List.of(0.0, lengthM));
    for (Limit limit : limits) {
      for (double edge : new double[] {limit.fromM(), limit.toM()}) {
        if (edge > 0 && edge < lengthM) {
          edges.add(edge);
        }
      }
    }
    List<CeilingStep> steps = new ArrayList<>();
    Double from = null;
    for (double to : edges) {
      if (from != null && to - from > 1e-9) {
        double middle = (from + to) / 2;
        Limit low = null;
        for (Limit limit : limits) {
          if (limit.fromM() <= middle
              && middle < limit.toM()
              && (low == null || limit.speedMps() < low.speedMps())) {
            low = limit;
          }
        }
        if (low != null) {
          append(steps, new CeilingStep(from, to, low.speedMps(), low.cause()));
        }
      }
      from = to;
    }
    return new Ceiling(steps);
  }

  private static void append(List<CeilingStep> steps, CeilingStep next) {
    if (!steps.isEmpty()) {
      CeilingStep last = steps.get(steps.size() - 1);
      if (last.speedMps() == next.speedMps()) {
        steps.set(steps.size() - 1, last.on(next.toM(), next.cause()));
        return;
      }
    }
    steps.add(next);
  }

  /** The steps in the order of travel, without gaps. */
  public List<CeilingStep> steps() {
    return steps;
  }

  /** The step that holds a place; at a seam the one ahead. The end steps go on. */
  public CeilingStep at(double distanceM) {
    int low = 0;
    int high = steps.size() - 1;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (distanceM >= steps.get(middle).toM()) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return steps.get(low);
  }

  /** Permissible speed for the front at a distance run, m/s. */
  public double speedAt(double distanceM) {
    return at(distanceM).speedMps();
  }

  /** The lowest speed from one place to another. */
  public double lowest(double fromM, double toM) {
    double lowest = speedAt(fromM);
    for (CeilingStep step : steps) {
      if (step.fromM() > fromM && step.fromM() <= toM) {
        lowest = Math.min(lowest, step.speedMps());
      }
    }
    return lowest;
  }
}
