package gradepost.drive.check;

import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.plan.Sightings;
import gradepost.route.Path;
import gradepost.route.Signal;
import gradepost.route.audit.AuditText;
import gradepost.told.print.PrintGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Braking points that a driver has nothing to count from: no cue within the policy's time before
 * them, on the planned run. What a cue is, {@link Sightings} says, as it does for the papers. An
 * AWS magnet is no cue there, but it is heard: a clerk may record it as one.
 */
public final class CueAudit {
  /** Arithmetic leaves less than this of a place, m: a cue at the very time is in time. */
  private static final double HAIR_M = 1e-3;

  private final Plan plan;
  private final Path path;
  private final PrintGrid grid;
  private final Sightings sightings;
  private final double withinS;

  public CueAudit(Plan plan) {
    this.plan = plan;
    this.path = plan.assignment().path();
    this.grid = new PrintGrid(path);
    this.sightings = new Sightings(plan.assignment(), grid);
    this.withinS = plan.assignment().policy().practice().line().cueWithin().seconds();
  }

  /** Told of what is missing, and what stands in its sentence. */
  public interface Listener {
    /** A cue that is missing, or all of them at once; what is to be said; what stands in that. */
    void found(AuditText text, Map<String, String> values);
  }

  /** A braking point, and from where on a cue for it would be in time; distances run. */
  private record Point(String target, double fromM, double atM, double speedMps) {}

  /**
   * Tells of each braking point without a cue, in the order of travel. Where nothing is surveyed
   * that could be one, it tells so once, with the point at which the train is fastest.
   */
  public void missing(Listener listener) {
    List<Point> points = points();
    List<Point> byDay = points.stream().filter(p -> !cue(p, false)).toList();
    List<Point> atNight = points.stream().filter(p -> !cue(p, true)).toList();
    if (!sightings.surveyed(false)) {
      summary(AuditText.CUE_MISSING_NO_SURVEY, points, atNight, listener);
      return;
    }
    if (!sightings.surveyed(true)) {
      summary(AuditText.CUE_MISSING_NO_SURVEY_AT_NIGHT, points, atNight, listener);
      each(AuditText.CUE_MISSING_NONE, byDay, listener);
      return;
    }
    for (Point point : atNight) {
      if (byDay.contains(point)) {
        listener.found(AuditText.CUE_MISSING_NONE, values(point));
      } else {
        atNight(point, listener);
      }
    }
  }

  private void summary(AuditText text, List<Point> points, List<Point> without, Listener told) {
    without.stream()
        .max(Comparator.comparingDouble(Point::speedMps))
        .ifPresent(
            first -> {
              Map<String, String> values = values(first);
              values.put("missing", Integer.toString(without.size()));
              values.put("points", Integer.toString(points.size()));
              told.found(text, values);
            });
  }

  private void each(AuditText text, List<Point> points, Listener listener) {
    points.forEach(point -> listener.found(text, values(point)));
  }

  private void atNight(Point point, Listener listener) {
    Map<String, String> values = values(point);
    Optional<Signal> heard = magnet(point);
    heard.ifPresent(
        signal -> {
          values.remove("from");
          values.put("signal", signal.id());
          values.put("magnet", path.text(magnetM(signal)));
        });
    listener.found(
        heard.isPresent() ? AuditText.CUE_MISSING_MAGNET : AuditText.CUE_MISSING_AT_NIGHT, values);
  }

  /** One for each application of the brake, those that a paper tells by the same place once. */
  private List<Point> points() {
    if (plan.trace().points().isEmpty()) {
      return List.of();
    }
    Run run = new Run(plan.trace());
    List<Point> out = new ArrayList<>();
    Set<Map<String, String>> said = new LinkedHashSet<>();
    for (Approach approach : plan.approaches()) {
      for (Application application : approach.applications()) {
        double at = application.brakingPointM();
        double from = Math.max(standBefore(at), run.placeAt(run.timeAt(at) - withinS));
        Point point = new Point(approach.target().name(), from, at, application.brakingSpeedMps());
        if (said.add(values(point))) {
          out.add(point);
        }
      }
    }
    return out;
  }

  /** A count does not begin before the train last stood. */
  private double standBefore(double atM) {
    return plan.approaches().stream()
        .filter(a -> a.target().isStop() && a.endM() < atM)
        .mapToDouble(Approach::endM)
        .max()
        .orElse(0);
  }

  private boolean cue(Point point, boolean night) {
    return sightings.between(point.fromM() - HAIR_M, point.atM(), night);
  }

  /** The last signal on this train's way whose magnet is passed there. */
  private Optional<Signal> magnet(Point point) {
    return plan.assignment().route().signals().stream()
        .filter(s -> s.direction() == plan.assignment().direction())
        .filter(s -> s.line().isEmpty() || plan.assignment().lines().contains(s.line()))
        .filter(s -> s.aws().isPresent())
        .filter(s -> magnetM(s) >= point.fromM() - HAIR_M && magnetM(s) <= point.atM())
        .max(Comparator.comparingDouble(this::magnetM));
  }

  private double magnetM(Signal signal) {
    return path.metresAt(signal.aws().orElse(signal.location()));
  }

  /** The stretch as a paper would print it: no end of it lies outside. */
  private Map<String, String> values(Point point) {
    Map<String, String> values = new HashMap<>();
    values.put("target", point.target());
    values.put("time", grid.time(withinS).seconds() + " s");
    values.put("place", path.text(path.printedAtOrBefore(point.atM())));
    double from = path.printedAtOrAfter(point.fromM());
    values.put("from", path.text(from <= point.atM() ? from : point.fromM()));
    return values;
  }
}
