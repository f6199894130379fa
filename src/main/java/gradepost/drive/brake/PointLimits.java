package gradepost.drive.brake;

import gradepost.task.Target;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Where the brake has to be on by, for some of the targets, whatever the braking itself would
 * allow. A braking point is never later than its limit; it may be earlier.
 *
 * @param byM distance run in metres, on the print grid
 */
public record PointLimits(Map<Target, Double> byM) {
  /** None. */
  public static final PointLimits NONE = new PointLimits(Map.of());

  public PointLimits {
    byM = Map.copyOf(byM);
  }

  /** The place for a target, m; infinite where there is none. */
  public double of(Target target) {
    return byM.getOrDefault(target, Double.POSITIVE_INFINITY);
  }

  /** Whether there are none. */
  public boolean isEmpty() {
    return byM.isEmpty();
  }

  /** Those of some targets, in their order, which is that of travel. */
  public Map<Target, Double> among(List<Target> targets) {
    Map<Target, Double> own = new LinkedHashMap<>();
    targets.stream().filter(byM::containsKey).forEach(t -> own.put(t, of(t)));
    return own;
  }

  /** These and others; of two for one target the earlier. */
  public PointLimits and(PointLimits others) {
    Map<Target, Double> both = new HashMap<>(byM);
    others.byM.forEach((target, atM) -> both.merge(target, atM, Math::min));
    return new PointLimits(both);
  }
}
