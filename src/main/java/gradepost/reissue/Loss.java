package gradepost.reissue;

import gradepost.pack.DailyHours;
import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.route.Differential;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A restriction that later data lack, or in which they hold a train back less.
 *
 * @param then as it was
 * @param now under the same reference; empty where the later data do not have it
 */
public record Loss(TemporaryRestriction then, Optional<TemporaryRestriction> now) {
  /** Two places of the same section that are no farther apart are one. */
  private static final double SAME_M = 1e-3;

  private static final double SAME_MPS = 1e-6;

  /** Whether it is no longer there at all, or is withdrawn. */
  public boolean gone() {
    return now.map(n -> n.status() == Status.WITHDRAWN).orElse(true);
  }

  /**
   * What is lost or eased between two states of the data, in the order of the earlier one. A
   * restriction that was withdrawn, or whose end had come, cannot be lost.
   *
   * @param when the moment at which the later state is looked at
   */
  public static List<Loss> between(
      List<TemporaryRestriction> before, List<TemporaryRestriction> after, LocalDateTime when) {
    Map<String, TemporaryRestriction> now = new HashMap<>();
    after.forEach(r -> now.put(r.reference(), r));
    List<Loss> out = new ArrayList<>();
    for (TemporaryRestriction then : before) {
      boolean over =
          then.status() == Status.WITHDRAWN
              || then.until().map(end -> !end.isAfter(when)).orElse(false);
      Optional<TemporaryRestriction> same = Optional.ofNullable(now.get(then.reference()));
      Loss loss = new Loss(then, same);
      if (!over && (loss.gone() || !holds(same.orElseThrow(), then, when))) {
        out.add(loss);
      }
    }
    return List.copyOf(out);
  }

  /** Whether the later one holds every train back that the earlier one did, as much and as long. */
  private static boolean holds(
      TemporaryRestriction now, TemporaryRestriction then, LocalDateTime when) {
    return noFaster(now, then)
        && covers(now.extent(), then.extent())
        && covers(now.applies(), then.applies())
        && (!now.imposed().isAfter(then.imposed()) || !now.imposed().isAfter(when))
        && now.until()
            .map(end -> then.until().map(old -> !end.isBefore(old)).orElse(false))
            .orElse(true)
        && covers(now.hours(), then.hours());
  }

  private static boolean noFaster(TemporaryRestriction now, TemporaryRestriction then) {
    List<String> classes =
        Stream.concat(now.differentials().stream(), then.differentials().stream())
            .map(Differential::trainClass)
            .toList();
    return Stream.concat(Stream.of(List.<String>of()), classes.stream().map(List::of))
        .allMatch(
            c ->
                now.speedFor(c).metresPerSecond() <= then.speedFor(c).metresPerSecond() + SAME_MPS);
  }

  private static boolean covers(Extent now, Extent then) {
    boolean oneSection =
        Stream.of(now.to(), then.from(), then.to())
            .allMatch(l -> l.section().equals(now.from().section()));
    if (!oneSection) {
      return now.equals(then);
    }
    return low(now) <= low(then) + SAME_M && high(now) >= high(then) - SAME_M;
  }

  private static double low(Extent extent) {
    return Math.min(extent.from().mileage().metres(), extent.to().mileage().metres());
  }

  private static double high(Extent extent) {
    return Math.max(extent.from().mileage().metres(), extent.to().mileage().metres());
  }

  private static boolean covers(Applies now, Applies then) {
    boolean lines =
        now.lines().isEmpty() || (!then.lines().isEmpty() && now.lines().containsAll(then.lines()));
    return lines && now.directions().containsAll(List.<Direction>copyOf(then.directions()));
  }

  private static boolean covers(Optional<DailyHours> now, Optional<DailyHours> then) {
    return now.isEmpty() || now.equals(then);
  }
}
