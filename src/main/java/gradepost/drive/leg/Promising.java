package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.leg.LegChooser.Way;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * From which ways of driving a leg better ones are looked for near by: first from the cheapest that
 * is in time, then from those that promise most. What is too slow is in it for what it spares, at a
 * price.
 */
final class Promising {
  private final PlannerSettings.Choice settings;
  private final double allowedS;
  private final List<Way> left;
  private final Set<Shape> tried = new HashSet<>();

  /** Ways that have this in common are taken for one. */
  private record Shape(int movements, long thousandths) {}

  /**
   * @param ways never empty
   * @param allowedS the time that the leg may take
   */
  Promising(List<Way> ways, PlannerSettings.Choice settings, double allowedS) {
    this.settings = settings;
    this.allowedS = allowedS;
    Comparator<Way> cheapest = Comparator.comparingDouble(this::cost);
    Way first =
        ways.stream()
            .filter(w -> w.stands() && w.timeS() <= allowedS)
            .min(cheapest)
            .orElseGet(() -> LegImprover.best(ways.get(0), ways, allowedS));
    this.left = new ArrayList<>(ways);
    left.sort(cheapest);
    left.remove(first);
    left.add(0, first);
  }

  /**
   * The next one; empty where enough were tried and one stands, or none is likely to lead to
   * anything better.
   *
   * @param best that was found until now
   */
  Optional<Way> next(Way best) {
    left.removeIf(w -> tried.contains(shape(w)));
    if (left.isEmpty() || (tried.size() >= settings.seeds() && best.stands())) {
      return Optional.empty();
    }
    Way next = left.get(0);
    if (!tried.isEmpty() && cost(next) > cost(best) + settings.behind() * best.rows()) {
      return Optional.empty();
    }
    tried.add(shape(next));
    return Optional.of(next);
  }

  private static Shape shape(Way way) {
    return new Shape(way.rerun().movements(), Math.round(1000 * way.dear()));
  }

  /** As in comparing ways, with a price on being late and on movements for a moment. */
  private double cost(Way way) {
    if (!way.stands()) {
      return Double.POSITIVE_INFINITY;
    }
    double late = Math.max(0, Math.log(way.timeS() / allowedS));
    return way.dear() + settings.late() * late + settings.momentary() * way.idle();
  }
}
