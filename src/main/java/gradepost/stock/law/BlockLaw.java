package gradepost.stock.law;

import java.util.function.Function;

/** How the friction of the brake blocks or pads changes with speed. */
public sealed interface BlockLaw
    permits ConstantBlocks, CastIronKarwatzki, FrictionTable, DecelerationSteps {

  /** Friction at this speed, on a scale of the law's own: only ratios count. */
  double friction(double speedMps);

  /** One answer for each law. */
  <T> T match(
      Function<ConstantBlocks, T> constant,
      Function<CastIronKarwatzki, T> castIron,
      Function<FrictionTable, T> table,
      Function<DecelerationSteps, T> steps);
}
