package gradepost.units;

/** To which side a printed number leans. */
public enum Rounding {
  DOWN {
    @Override
    public long whole(double value) {
      return (long) Math.floor(value + EPSILON);
    }
  },
  NEAREST {
    @Override
    public long whole(double value) {
      return Math.round(value);
    }
  },
  UP {
    @Override
    public long whole(double value) {
      return (long) Math.ceil(value - EPSILON);
    }
  };

  /** So that 25 mph, turned to m/s and back, is still 25 and not 24. */
  static final double EPSILON = 1e-6;

  /** The whole number that stands for {@code value}. */
  public abstract long whole(double value);
}
