package gradepost.drive;

import gradepost.plan.Application;
import gradepost.plan.Finding;
import gradepost.plan.SpeedRow;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Whether a train that is faster than planned has to brake for a later target before it would brake
 * for a lower speed. Each table by speed knows its own target alone: between them the earlier place
 * counts.
 */
final class NextFirst {
  private static final double SAME_MPS = 0.05;
  private static final Comparator<SpeedRow.Point> BY_SPEED =
      Comparator.comparingDouble(SpeedRow.Point::speedMps);

  private NextFirst() {}

  /**
   * A target with the tables by speed of its page.
   *
   * @param applications those of the page, and that of a faster train
   */
  record Page(Target.OfApproach target, List<Application> applications) {}

  /**
   * One finding for each later target and state of the rail for which that is so.
   *
   * @param later the pages behind it, in order of travel
   */
  static List<Finding> of(Page page, List<Page> later) {
    List<Finding> out = new ArrayList<>();
    if (!page.target().isLowerSpeed()) {
      return out;
    }
    for (Page next : later) {
      of(page, next, SpeedRow::planned).ifPresent(out::add);
      of(page, next, SpeedRow::poorest).ifPresent(out::add);
      if (next.target().isStop()) {
        break;
      }
    }
    return out;
  }

  private static Optional<Finding> of(
      Page page, Page next, Function<SpeedRow, Optional<SpeedRow.Point>> rail) {
    return points(page, rail)
        .filter(
            own -> row(next, rail, own.speedMps()).filter(p -> p.atM() <= own.atM()).isPresent())
        .min(BY_SPEED)
        .map(p -> new Finding.NextFirst(p.rail(), p.speedMps(), next.target().name()));
  }

  /** Between two speeds the faster one counts; above the highest, that one at least. */
  private static Optional<SpeedRow.Point> row(
      Page page, Function<SpeedRow, Optional<SpeedRow.Point>> rail, double speedMps) {
    return points(page, rail)
        .filter(p -> p.speedMps() >= speedMps - SAME_MPS)
        .min(BY_SPEED)
        .or(() -> points(page, rail).max(BY_SPEED));
  }

  private static Stream<SpeedRow.Point> points(
      Page page, Function<SpeedRow, Optional<SpeedRow.Point>> rail) {
    return page.applications().stream()
        .flatMap(a -> a.bySpeed().stream())
        .flatMap(r -> rail.apply(r).stream());
  }
}
