package gradepost.app;

import gradepost.policy.TerminalStep;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.route.station.Platform;
import gradepost.task.Assignment;
import gradepost.task.Call;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * What is permissible for the front of a train, worked out a second time: every restriction,
 * notice, way over points, terminal step and the train's own maximum, each from its beginning until
 * the rear has cleared its end.
 *
 * @param name what the papers call it
 * @param toM where the rear of the train has cleared it
 */
record Lowest(String name, double fromM, double toM, double mps) {

  /** All that stands for the train of a paper. */
  static List<Lowest> limits(SmallLines.Paper paper) {
    Assignment a = paper.plan().assignment();
    double train = a.formation().vehicles().stream().mapToDouble(v -> v.length().metres()).sum();
    List<Lowest> all = new ArrayList<>();
    all.add(new Lowest("the train’s own maximum", -1, 1e9, a.stock().maximum().metresPerSecond()));
    a.route().restrictions().stream()
        .filter(r -> r.applies().to(a.direction(), a.lines()))
        .forEach(
            r -> {
              double mps = r.speed().metresPerSecond();
              for (var d : r.differentials()) {
                if (a.stock().trainClasses().contains(d.trainClass())) {
                  mps = d.speed().metresPerSecond();
                }
              }
              all.add(of(a, r.name(), r.extent(), train, mps));
            });
    a.restrictions().stream()
        .filter(r -> r.applies().to(a.direction(), a.lines()))
        .forEach(
            r -> all.add(of(a, r.reference(), r.extent(), train, r.speed().metresPerSecond())));
    a.route().junctions().stream()
        .filter(j -> j.applies().to(a.direction(), a.lines()))
        .forEach(
            j ->
                all.add(
                    of(
                        a,
                        j.name(),
                        j.extent(),
                        train,
                        j.routes().get(0).speed().metresPerSecond())));
    Call last = a.calls().get(a.calls().size() - 1);
    Platform platform = last.platform();
    if (platform.bufferStops().isPresent()) {
      double mark =
          platform.stopMarks().stream()
              .filter(m -> m.cars() == a.formation().cars() && m.direction() == a.direction())
              .mapToDouble(m -> at(a, m.location()))
              .findFirst()
              .orElseThrow();
      for (TerminalStep step : a.policy().terminal()) {
        all.add(
            new Lowest(
                "terminal platform",
                mark - step.beforeMark().metres(),
                1e9,
                step.speed().metresPerSecond()));
      }
    }
    return all;
  }

  private static Lowest of(Assignment a, String name, Extent extent, double train, double mps) {
    double one = at(a, extent.from());
    double other = at(a, extent.to());
    return new Lowest(name, Math.min(one, other), Math.max(one, other) + train, mps);
  }

  /** Metres run from the start of the route, by its sections. */
  static double at(Assignment a, Location place) {
    double forward = 0;
    double length = 0;
    for (Section s : a.route().sections()) {
      if (s.name().equals(place.section())) {
        forward = length + Math.abs(place.mileage().metres() - s.from().metres());
      }
      length += Math.abs(s.to().metres() - s.from().metres());
    }
    return a.direction() == Direction.FORWARD ? forward : length - forward;
  }

  boolean holds(double atM) {
    return fromM <= atM && atM < toM;
  }

  static double at(List<Lowest> limits, double atM) {
    return limits.stream().filter(l -> l.holds(atM)).mapToDouble(Lowest::mps).min().orElseThrow();
  }

  /** The lowest on a stretch of the route. */
  static double over(SmallLines.Paper paper, Extent extent) {
    Assignment a = paper.plan().assignment();
    List<Lowest> limits = limits(paper);
    double one = at(a, extent.from());
    double other = at(a, extent.to());
    double from = Math.min(one, other);
    double to = Math.max(one, other);
    TreeSet<Double> places = new TreeSet<>(List.of(from));
    limits.stream().map(Lowest::fromM).filter(x -> x > from && x < to).forEach(places::add);
    return places.stream().mapToDouble(x -> at(limits, x)).min().orElseThrow();
  }
}
