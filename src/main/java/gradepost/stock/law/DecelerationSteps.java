package gradepost.stock.law;

import gradepost.units.Acceleration;
import gradepost.units.Speed;
import java.util.List;
import java.util.function.Function;

/**
 * A brake known only by the deceleration that it gives in each band of speed, as brake percentages
 * are converted. The "friction" of this law is that deceleration.
 *
 * @param steps in rising order of speed; the last one goes on without end
 */
public record DecelerationSteps(List<Step> steps) implements BlockLaw {

  /** Up to and with this speed, this deceleration. */
  public record Step(Speed upTo, Acceleration deceleration) {}

  public DecelerationSteps {
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("a brake has a band of speed at least");
    }
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).deceleration().metresPerSecond2() <= 0) {
        throw new IllegalArgumentException("a brake slows the train");
      }
      if (i > 0 && steps.get(i).upTo().compareTo(steps.get(i - 1).upTo()) <= 0) {
        throw new IllegalArgumentException("bands of speed rise");
      }
    }
  }

  @Override
  public double friction(double speedMps) {
    for (Step step : steps) {
      if (speedMps <= step.upTo().metresPerSecond()) {
        return step.deceleration().metresPerSecond2();
      }
    }
    return steps.get(steps.size() - 1).deceleration().metresPerSecond2();
  }

  @Override
  public <T> T match(
      Function<ConstantBlocks, T> constant,
      Function<CastIronKarwatzki, T> castIron,
      Function<FrictionTable, T> table,
      Function<DecelerationSteps, T> steps) {
    return steps.apply(this);
  }
}
