package gradepost.stock;

import gradepost.units.Span;
import java.util.List;
import java.util.Optional;

/**
 * A position of the power handle.
 *
 * @param name as engraved or spoken
 * @param effort of one motored vehicle, rising in speed, linear between points; level before the
 *     first point, nothing beyond the last one
 * @param longest it is kept; empty for a running notch, which may be kept as long as is wanted
 */
public record Notch(String name, List<EffortPoint> effort, Optional<Span> longest) {
  public Notch {
    effort = List.copyOf(effort);
    if (effort.isEmpty()) {
      throw new IllegalArgumentException("notch " + name + " has no effort");
    }
    for (int i = 1; i < effort.size(); i++) {
      if (effort.get(i).speed().compareTo(effort.get(i - 1).speed()) <= 0) {
        throw new IllegalArgumentException("the efforts of notch " + name + " rise in speed");
      }
    }
  }

  /** A running notch. */
  public Notch(String name, List<EffortPoint> effort) {
    this(name, effort, Optional.empty());
  }

  /** Tractive effort of one motored vehicle in newtons. */
  public double effortN(double speedMps) {
    EffortPoint low = effort.get(0);
    if (speedMps <= low.speed().metresPerSecond()) {
      return low.effort().newtons();
    }
    for (int i = 1; i < effort.size(); i++) {
      EffortPoint high = effort.get(i);
      if (speedMps <= high.speed().metresPerSecond()) {
        double from = low.speed().metresPerSecond();
        double share = (speedMps - from) / (high.speed().metresPerSecond() - from);
        return low.effort().newtons() + share * (high.effort().newtons() - low.effort().newtons());
      }
      low = high;
    }
    return 0;
  }
}
