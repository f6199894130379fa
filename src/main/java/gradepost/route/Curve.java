package gradepost.route;

import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.units.Length;

/**
 * A curve.
 *
 * @param hand the side to which it turns in the forward direction
 * @param cant height of the outer rail over the inner one
 */
public record Curve(Extent extent, Hand hand, Length radius, Length cant, CheckRail checkRail) {
  public Curve {
    if (radius.metres() <= 0) {
      throw new IllegalArgumentException("a curve has a radius");
    }
  }
}
