package gradepost.motion;

import gradepost.stock.law.BlockLaw;
import gradepost.stock.law.DecelerationSteps;
import gradepost.stock.law.FrictionTable;
import java.util.List;

/**
 * A block law as pieces of speed: within a piece it is smooth, and linear where the law is a table,
 * so that a step which ends on every corner meets no kink and no jump. A smooth law is one piece.
 */
final class BlockCurve {
  private final BlockLaw law;
  private final boolean smooth;

  /** Piece {@code i} lies between corner {@code i − 1} and corner {@code i}. */
  private final double[] corner;

  /** Where a piece's level is counted from. */
  private final double[] from;

  private final double[] level;
  private final double[] slope;

  private BlockCurve(
      BlockLaw law, boolean smooth, double[] corner, double[] level, double[] slope) {
    this.law = law;
    this.smooth = smooth;
    this.corner = corner;
    this.from = new double[corner.length + 1];
    System.arraycopy(corner, 0, from, 1, corner.length);
    this.level = level;
    this.slope = slope;
  }

  static BlockCurve of(BlockLaw law) {
    return law.match(
        constant -> linear(constant, new double[0], new double[] {1}, new double[1]),
        castIron -> new BlockCurve(castIron, true, new double[0], new double[1], new double[1]),
        BlockCurve::table,
        BlockCurve::steps);
  }

  private static BlockCurve linear(BlockLaw law, double[] corner, double[] level, double[] slope) {
    return new BlockCurve(law, false, corner, level, slope);
  }

  private static BlockCurve table(FrictionTable table) {
    List<FrictionTable.Point> points = table.points();
    int n = points.size();
    double[] corner = new double[n];
    double[] level = new double[n + 1];
    double[] slope = new double[n + 1];
    for (int i = 0; i < n; i++) {
      corner[i] = points.get(i).speed().metresPerSecond();
      level[i + 1] = points.get(i).friction();
    }
    level[0] = level[1];
    for (int i = 1; i < n; i++) {
      slope[i] = (level[i + 1] - level[i]) / (corner[i] - corner[i - 1]);
    }
    return linear(table, corner, level, slope);
  }

  private static BlockCurve steps(DecelerationSteps steps) {
    List<DecelerationSteps.Step> list = steps.steps();
    int n = list.size();
    double[] corner = new double[n - 1];
    double[] level = new double[n];
    for (int i = 0; i < n; i++) {
      level[i] = list.get(i).deceleration().metresPerSecond2();
      if (i < n - 1) {
        corner[i] = list.get(i).upTo().metresPerSecond();
      }
    }
    return linear(steps, corner, level, new double[n]);
  }

  BlockLaw law() {
    return law;
  }

  int pieces() {
    return corner.length + 1;
  }

  /** The piece in which a train of this speed is; on a corner the lower one if it slows. */
  int piece(double speed, boolean slows) {
    int i = 0;
    while (i < corner.length && (slows ? corner[i] < speed - 1e-9 : corner[i] <= speed + 1e-9)) {
      i++;
    }
    return i;
  }

  /** Lower end of a piece. */
  double low(int piece) {
    return piece == 0 ? Double.NEGATIVE_INFINITY : corner[piece - 1];
  }

  /** Upper end of a piece. */
  double high(int piece) {
    return piece == corner.length ? Double.POSITIVE_INFINITY : corner[piece];
  }

  /** Friction by the rule of this piece, also a little outside it. */
  double friction(int piece, double speed) {
    return smooth ? law.friction(speed) : level[piece] + slope[piece] * (speed - from[piece]);
  }

  /**
   * Integral of {@code v/friction(v)} from a stand: braked by this friction alone, distance is this
   * times inertia over the force at friction 1. Simpson's rule on each smooth piece.
   */
  double speedOverFriction(double to) {
    double sum = 0;
    double from = 0;
    for (int i = 0; i < pieces() && from < to; i++) {
      double end = Math.min(to, high(i));
      if (end > from) {
        sum += simpson(i, from, end);
        from = end;
      }
    }
    return sum;
  }

  private double simpson(int piece, double from, double to) {
    int strips = 200;
    double h = (to - from) / strips;
    double sum = 0;
    for (int i = 0; i <= strips; i++) {
      double v = from + i * h;
      double weight = i == 0 || i == strips ? 1 : i % 2 == 1 ? 4 : 2;
      sum += weight * v / friction(piece, v);
    }
    return sum * h / 3;
  }
}
