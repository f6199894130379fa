package gradepost.stock;

import gradepost.units.Pressure;

/**
 * What a gauge must show.
 *
 * @param least the lowest pressure that is right
 * @param most the highest pressure that is right
 */
public record GaugeReading(Gauge gauge, Pressure least, Pressure most) {

  /** Which gauge, and where on the train it is read. */
  public enum Gauge {
    /** Brake cylinder, in the rearmost cab. */
    REAR_CYLINDER,
    /** Brake pipe, in the rearmost cab. */
    REAR_PIPE,
    /** Brake cylinder, in the leading cab. */
    LEADING_CYLINDER,
    /** Brake pipe, in the leading cab. */
    LEADING_PIPE;

    /** Whether it shows the brake pipe. */
    public boolean showsPipe() {
      return this == REAR_PIPE || this == LEADING_PIPE;
    }

    /** The one of the brake cylinder in the same cab. */
    public Gauge ofCylinder() {
      return this == REAR_PIPE || this == REAR_CYLINDER ? REAR_CYLINDER : LEADING_CYLINDER;
    }
  }

  public GaugeReading {
    if (most.compareTo(least) <= 0) {
      throw new IllegalArgumentException("a gauge shows " + least + " to " + most);
    }
  }
}
