package gradepost.stock.law;

/** How the friction of the brake blocks or pads changes with speed. */
public sealed interface BlockLaw
    permits ConstantBlocks, CastIronKarwatzki, FrictionTable, DecelerationSteps {

  /** Friction at this speed, on a scale of the law's own: only ratios count. */
  double friction(double speedMps);
}
