package gradepost.drive.check;

import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CueWindow;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.plan.Sightings;
import gradepost.route.LineHoles.Place;
import gradepost.route.Path;
import gradepost.route.audit.AuditText;
import gradepost.route.audit.AuditText.Train;
import gradepost.route.audit.AuditText.Uncued;
import gradepost.text.Mistake;
import gradepost.text.Mistakes.Four;
import gradepost.told.print.PrintGrid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Braking points that a driver has nothing to count from: no cue within the policy's time before
 * them, on the planned run. What a cue is, {@link Sightings} says, as it does for the papers.
 */
public final class CueAudit {
  /** Arithmetic leaves less than this of a place, m: a cue at the very time is in time. */
  private static final double HAIR_M = 1e-3;

  private final Plan plan;
  private final Path path;
  private final PrintGrid grid;
  private final Sightings sightings;
  private final double withinS;
  private final Train train;

  /**
   * The braking points of a plan.
   *
   * @param train as the findings name it
   */
  public CueAudit(Plan plan, Train train) {
    this.plan = plan;
    this.train = train;
    this.path = plan.assignment().path();
    this.grid = new PrintGrid(path);
    this.sightings = new Sightings(plan.assignment(), grid);
    this.withinS = plan.assignment().policy().practice().line().cueWithin().seconds();
  }

  /** Told of what is missing. */
  public interface Listener {
    /** What is to be said of a cue that is missing, or of all of them at once. */
    void found(Mistake what);
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
      byDay.forEach(point -> none(point, listener));
      return;
    }
    for (Point point : atNight) {
      if (byDay.contains(point)) {
        none(point, listener);
      } else {
        atNight(point, listener);
      }
    }
  }

  private void summary(
      Four<Train, Uncued, Integer, Integer> text,
      List<Point> points,
      List<Point> without,
      Listener told) {
    without.stream()
        .max(Comparator.comparingDouble(Point::speedMps))
        .ifPresent(
            first -> told.found(text.with(train, uncued(first), without.size(), points.size())));
  }

  private void none(Point point, Listener listener) {
    listener.found(AuditText.CUE_MISSING_NONE.with(train, uncued(point)));
  }

  private void atNight(Point point, Listener listener) {
    listener.found(AuditText.CUE_MISSING_AT_NIGHT.with(train, uncued(point)));
  }

  /** One for each application of the brake, those that a paper tells by the same place once. */
  private List<Point> points() {
    if (plan.trace().points().isEmpty()) {
      return List.of();
    }
    CueWindow window = new CueWindow(plan.approaches(), new Run(plan.trace()), withinS);
    List<Point> out = new ArrayList<>();
    Set<Uncued> said = new LinkedHashSet<>();
    for (Approach approach : plan.approaches()) {
      for (Application application : approach.applications()) {
        double at = application.brakingPointM();
        Point point =
            new Point(
                approach.target().name(), window.fromM(at), at, application.brakingSpeedMps());
        if (said.add(uncued(point))) {
          out.add(point);
        }
      }
    }
    return out;
  }

  private boolean cue(Point point, boolean night) {
    return sightings.between(point.fromM() - HAIR_M, point.atM(), night);
  }

  /** The stretch as a paper would print it: no end of it lies outside. */
  private Uncued uncued(Point point) {
    double from = path.printedAtOrAfter(point.fromM());
    return new Uncued(
        point.target(),
        grid.time(withinS).seconds(),
        Place.of(path, from <= point.atM() ? from : point.fromM()),
        Place.of(path, path.printedAtOrBefore(point.atM())));
  }
}
