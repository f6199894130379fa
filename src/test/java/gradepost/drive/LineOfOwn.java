package gradepost.drive;

import gradepost.policy.Policy;
import gradepost.route.place.Direction;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.task.Assignment;
import gradepost.units.UnitStyle;
import java.util.List;

/** A short metric line of two halts on one gradient, for Mill's unit of four. */
final class LineOfOwn {
  private static final double LENGTH_M = 1400;
  private static final double FROM_M = 150;
  private static final double TO_M = 1300;

  static Assignment of(double permille, double lineMps, List<RandomLine.Gap> gaps) {
    return of(permille, lineMps, gaps, Mill.policy());
  }

  static Assignment of(double permille, double lineMps, List<RandomLine.Gap> gaps, Policy policy) {
    Stock stock = Mill.stock();
    return new RandomLine(
            UnitStyle.METRIC,
            LENGTH_M,
            LENGTH_M,
            lineMps,
            List.of(new RandomLine.Slope(0, LENGTH_M, permille)),
            List.of(),
            List.of(),
            gaps,
            List.of(
                new RandomLine.Halt(FROM_M - 100, FROM_M, false),
                new RandomLine.Halt(TO_M - 100, TO_M, false)),
            List.of(),
            stock,
            policy,
            stock.formations().get(0),
            LoadCase.SEATED,
            Direction.FORWARD)
        .assignment();
  }

  private LineOfOwn() {}
}
