package gradepost.stock.law;

/** Composition blocks or pads taken as the same at every speed. */
public record ConstantBlocks() implements BlockLaw {
  @Override
  public double friction(double speedMps) {
    return 1;
  }
}
