package gradepost.stock.law;

import java.util.function.Function;

/** Composition blocks or pads taken as the same at every speed. */
public record ConstantBlocks() implements BlockLaw {
  @Override
  public double friction(double speedMps) {
    return 1;
  }

  @Override
  public <T> T match(
      Function<ConstantBlocks, T> constant,
      Function<CastIronKarwatzki, T> castIron,
      Function<FrictionTable, T> table,
      Function<DecelerationSteps, T> steps) {
    return constant.apply(this);
  }
}
