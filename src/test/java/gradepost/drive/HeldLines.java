package gradepost.drive;

import gradepost.plan.Plan;
import gradepost.policy.Policy;
import gradepost.route.place.Direction;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.task.Assignment;
import gradepost.units.UnitStyle;
import java.util.List;

/** Metric lines of two halts and one low permissible speed, on which a speed has to be held. */
public final class HeldLines {
  private static final double LENGTH_M = 6000;

  /** A run that holds a speed with power, and one that holds it with the brake. */
  public static List<Plan> plans() {
    return List.of(Planner.plan(withPower()), Planner.plan(withBrake()));
  }

  /** Up 2 ‰ at 25 km/h. */
  public static Assignment withPower() {
    return of(2, 25, Mill.stock(), Mill.policy());
  }

  /** Down 20 ‰ at 40 km/h. */
  public static Assignment withBrake() {
    return of(-20, 40, Mill.stock(), Mill.policy());
  }

  /** The same fall, with a brake that only releases in full. */
  public static Assignment withFullRelease() {
    return of(-20, 40, Arrangements.onePipe(), Arrangements.fullRelease());
  }

  private static Assignment of(double permille, double kmh, Stock stock, Policy policy) {
    return new RandomLine(
            UnitStyle.METRIC,
            LENGTH_M,
            LENGTH_M,
            kmh / 3.6,
            List.of(new RandomLine.Slope(0, LENGTH_M, permille)),
            List.of(),
            List.of(),
            List.of(),
            List.of(new RandomLine.Halt(50, 150, false), new RandomLine.Halt(5700, 5800, false)),
            List.of(),
            stock,
            policy,
            stock.formations().get(0),
            LoadCase.SEATED,
            Direction.FORWARD)
        .assignment();
  }

  private HeldLines() {}
}
