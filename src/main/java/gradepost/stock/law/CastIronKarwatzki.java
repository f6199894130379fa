package gradepost.stock.law;

import java.util.function.Function;

/**
 * Cast iron on steel by the speed term of Karwatzki's formula: {@code (V + 100)/(5·V + 100)}, V in
 * km/h. From memory; stated for 0 to about 120 km/h.
 */
public record CastIronKarwatzki() implements BlockLaw {
  @Override
  public double friction(double speedMps) {
    double kmh = Math.max(0, speedMps) * 3.6;
    return (kmh + 100) / (5 * kmh + 100);
  }

  @Override
  public <T> T match(
      Function<ConstantBlocks, T> constant,
      Function<CastIronKarwatzki, T> castIron,
      Function<FrictionTable, T> table,
      Function<DecelerationSteps, T> steps) {
    return castIron.apply(this);
  }
}
