package gradepost.policy;

import gradepost.units.Span;
import gradepost.units.Speed;

/**
 * How much a run differs from the plan by what nobody controls: standard deviations of normal
 * distributions, cut at three of them.
 *
 * @param mass of the train, as a share
 * @param blocks friction of the blocks, as a share
 * @param buildUp time in which the cylinders fill, as a share
 * @param reaction by how much the driver is late; never early
 * @param speed error of the speed at the braking point
 * @param adhesion as a share
 * @param samples how many runs are drawn
 */
public record Scatter(
    double mass,
    double blocks,
    double buildUp,
    Span reaction,
    Speed speed,
    double adhesion,
    int samples) {
  public Scatter {
    if (samples < 20) {
      throw new IllegalArgumentException("too few samples for a 5th percentile: " + samples);
    }
  }
}
