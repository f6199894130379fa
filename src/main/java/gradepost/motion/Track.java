package gradepost.motion;

import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.Path;
import gradepost.route.Stretch;
import gradepost.route.place.Direction;
import gradepost.stock.law.CurveResistance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * The track as a train in one direction feels it: elevation against distance run, and curves. The
 * gradient and curvature of the end elements go on beyond the ends, so that a train that stands at
 * the first platform has track under its rear.
 */
public final class Track {
  /** How far an end curve goes on: longer than any train. */
  private static final double BEYOND_M = 10_000;

  private final PiecewiseLinear elevation;
  private final List<CurvePiece> curves;

  public Track(PiecewiseLinear elevation, List<CurvePiece> curves) {
    this.elevation = elevation;
    this.curves = List.copyOf(curves);
  }

  /** Resolves a path whose gradients cover it without gap or overlap. */
  public static Track of(Path path) {
    boolean forward = path.direction() == Direction.FORWARD;
    record Slope(double fromM, double toM, double risePerM) {}
    List<Slope> slopes = new ArrayList<>();
    for (GradientPiece piece : path.route().gradients()) {
      Stretch span = path.span(piece.extent());
      double rise = piece.gradient().permille() / 1000.0;
      slopes.add(new Slope(span.fromM(), span.toM(), forward ? rise : -rise));
    }
    slopes.sort(Comparator.comparingDouble(Slope::fromM));
    double[] at = new double[slopes.size() + 1];
    double[] height = new double[at.length];
    at[0] = slopes.get(0).fromM();
    for (int i = 0; i < slopes.size(); i++) {
      Slope slope = slopes.get(i);
      if (Math.abs(slope.fromM() - at[i]) > 0.01) {
        throw new IllegalArgumentException("gradients leave a gap at " + at[i] + " m");
      }
      at[i + 1] = slope.toM();
      height[i + 1] = height[i] + slope.risePerM() * (at[i + 1] - at[i]);
    }
    List<CurvePiece> curves = new ArrayList<>();
    for (Curve curve : path.route().curves()) {
      Stretch span = path.span(curve.extent());
      double from = span.fromM();
      double to = span.toM();
      curves.add(
          new CurvePiece(
              from < 0.01 ? -BEYOND_M : from,
              to > path.lengthM() - 0.01 ? to + BEYOND_M : to,
              curve.radius().metres(),
              curve.checkRail() != CheckRail.NONE));
    }
    curves.sort(Comparator.comparingDouble(CurvePiece::fromM));
    return new Track(new PiecewiseLinear(at, height), curves);
  }

  /** Height of the track against distance run, metres. */
  public PiecewiseLinear elevation() {
    return elevation;
  }

  /** The curves in the order of travel. */
  public List<CurvePiece> curves() {
    return curves;
  }

  /**
   * Elevation plus the height whose climb costs what the curves cost: a curve resistance of {@code
   * r} N/kN over a metre is worth {@code r/1000} m. Overlapping curves count the greatest.
   */
  PiecewiseLinear feltElevation(CurveResistance law, double checkRailDragNPerKn) {
    TreeSet<Double> knots = new TreeSet<>();
    for (int i = 0; i < elevation.knots(); i++) {
      knots.add(elevation.x(i));
    }
    for (CurvePiece curve : curves) {
      knots.add(curve.fromM());
      knots.add(curve.toM());
    }
    List<Double> at = new ArrayList<>();
    for (double knot : knots) {
      if (at.isEmpty() || knot - at.get(at.size() - 1) > 1e-6) {
        at.add(knot);
      }
    }
    double[] x = at.stream().mapToDouble(Double::doubleValue).toArray();
    double[] y = new double[x.length];
    double curveHeight = 0;
    for (int i = 0; i < x.length; i++) {
      y[i] = elevation.at(x[i]) + curveHeight;
      if (i + 1 < x.length) {
        double middle = (x[i] + x[i + 1]) / 2;
        double drag = 0;
        for (CurvePiece curve : curves) {
          if (curve.fromM() <= middle && middle <= curve.toM()) {
            double own = law.nPerKn(curve.radiusM());
            drag = Math.max(drag, own + (curve.checkRailed() ? checkRailDragNPerKn : 0));
          }
        }
        curveHeight += drag / 1000.0 * (x[i + 1] - x[i]);
      }
    }
    return new PiecewiseLinear(x, y);
  }
}
