package gradepost.stock;

/** A published form of running resistance; each is a quadratic in speed. */
public sealed interface ResistanceLaw
    permits QuadraticResistance, ConstantResistance, Davis1926, Railcar1936 {

  /** The resistance of this train, loaded so. */
  RunningResistance of(Formation formation, LoadCase load);
}
