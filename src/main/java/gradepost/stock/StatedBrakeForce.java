package gradepost.stock;

import gradepost.stock.law.BlockLaw;
import gradepost.units.Acceleration;
import gradepost.units.Pressure;
import gradepost.units.Speed;

/**
 * From cylinder pressure to force at the rail: linear in {@code p − threshold}, times the block
 * law, scaled so that a train of load {@code statedLoad} braked at {@code statedPressure} from
 * {@code statedFrom} to a stand on level track, brake force alone and no build-up, has the mean
 * deceleration over distance {@code meanDeceleration}.
 *
 * @param threshold pressure that the return springs take
 * @param loadCompensated whether the force follows the load; where not, a full train brakes less
 */
public record StatedBrakeForce(
    Acceleration meanDeceleration,
    Speed statedFrom,
    Pressure statedPressure,
    LoadCase statedLoad,
    Pressure threshold,
    BlockLaw blocks,
    boolean loadCompensated) {
  public StatedBrakeForce {
    if (meanDeceleration.metresPerSecond2() <= 0
        || statedFrom.metresPerSecond() <= 0
        || statedPressure.compareTo(threshold) <= 0) {
      throw new IllegalArgumentException("a brake slows the train");
    }
  }
}
