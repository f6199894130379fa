package gradepost.stock.law;

import gradepost.units.Exact;
import gradepost.units.Speed;
import java.util.List;
import java.util.function.Function;

/**
 * Friction by a table, linear between its points and level beyond its ends.
 *
 * @param points in rising order of speed
 */
public record FrictionTable(List<Point> points) implements BlockLaw {

  /** One reading. */
  public record Point(Speed speed, double friction) {}

  public FrictionTable {
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a friction table has a point at least");
    }
    for (int i = 1; i < points.size(); i++) {
      if (points.get(i).speed().compareTo(points.get(i - 1).speed()) <= 0) {
        throw new IllegalArgumentException("a friction table rises in speed");
      }
    }
  }

  /**
   * Cast iron on steel in motion by Galton's trials, Proc. IMechE 1878–79 (values from memory): 5
   * to 60 mph.
   */
  public static FrictionTable galton() {
    double[][] read = {
      {5, 0.273}, {10, 0.242}, {20, 0.192}, {30, 0.164}, {40, 0.140}, {50, 0.116}, {60, 0.074}
    };
    return new FrictionTable(
        java.util.Arrays.stream(read)
            .map(r -> new Point(new Speed(r[0] * Exact.MPH_MPS), r[1]))
            .toList());
  }

  @Override
  public double friction(double speedMps) {
    Point low = points.get(0);
    if (speedMps <= low.speed().metresPerSecond()) {
      return low.friction();
    }
    for (int i = 1; i < points.size(); i++) {
      Point high = points.get(i);
      if (speedMps <= high.speed().metresPerSecond()) {
        double from = low.speed().metresPerSecond();
        double share = (speedMps - from) / (high.speed().metresPerSecond() - from);
        return low.friction() + share * (high.friction() - low.friction());
      }
      low = high;
    }
    return low.friction();
  }

  @Override
  public <T> T match(
      Function<ConstantBlocks, T> constant,
      Function<CastIronKarwatzki, T> castIron,
      Function<FrictionTable, T> table,
      Function<DecelerationSteps, T> steps) {
    return table.apply(this);
  }
}
