package gradepost.plan;

import gradepost.stock.BrakeSystem;
import java.util.List;

/**
 * What the train does by itself, as loaded for the plan.
 *
 * @param balancing for each notch, on each gradient
 * @param reaching how far it takes to get to speed
 * @param stops full service and emergency, on the safe side
 * @param pipe what the gauges show for a reduction, where a pipe governs the brake
 */
public record TrainFigures(
    List<Balance> balancing, List<Reach> reaching, List<FullStop> stops, List<Reduction> pipe) {
  public TrainFigures {
    balancing = List.copyOf(balancing);
    reaching = List.copyOf(reaching);
    stops = List.copyOf(stops);
    pipe = List.copyOf(pipe);
  }

  /**
   * The balancing speed ({@link gradepost.motion.Balance}).
   *
   * @param notch −1 with power off
   * @param permille gradient, rising positive
   * @param speedMps 0 where the train does not start, or rolls to a stand; infinite where it gains
   *     at any speed
   */
  public record Balance(int notch, double permille, double speedMps) {}

  /** Distance and time from a stand on the level, notch by notch up to this one. */
  public record Reach(int notch, double speedMps, double distanceM, double timeS) {}

  /**
   * A stop.
   *
   * @param permille gradient, rising positive
   * @param distanceM infinite where the gradient beats the brake
   */
  public record FullStop(BrakeSystem brake, double permille, double fromMps, double distanceM) {}

  /** One reading of the gauges. */
  public record Reduction(
      BrakeSystem brake, double reductionPa, double pipePa, double cylinderPa) {}
}
