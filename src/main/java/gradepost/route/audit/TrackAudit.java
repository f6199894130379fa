package gradepost.route.audit;

import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.LineHoles.InUnits;
import gradepost.route.LineHoles.Place;
import gradepost.route.SpotHeight;
import gradepost.route.place.Section;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Sections, gradients and curves. */
final class TrackAudit {
  private static final double STEEPEST_PERMILLE = 1000.0 / 30;

  /** A seam this near to meeting was meant to meet. */
  private static final double NEARLY_MEETS_M = 200;

  /** A gradient post is at the chain, so each change of slope may be half a chain out. */
  private static final double CLOSURE_M = 1.5;

  /** Rounding of 1 in N to whole N. */
  private static final double CLOSURE_SHARE = 0.0005;

  static final double CHECKED_RADIUS_M = 200;

  private final Ground ground;
  private final List<AuditFinding> out;

  TrackAudit(Ground ground, List<AuditFinding> out) {
    this.ground = ground;
    this.out = out;
  }

  void run() {
    seams();
    gradients();
    closure();
    ground.route().curves().forEach(this::curve);
  }

  private void seams() {
    List<Section> sections = ground.route().sections();
    for (int i = 1; i < sections.size(); i++) {
      Section before = sections.get(i - 1);
      Section after = sections.get(i);
      double jump = Math.abs(after.from().metres() - before.to().metres());
      if (jump > 0.01 && jump < NEARLY_MEETS_M) {
        out.add(
            new AuditFinding(
                AuditText.MILEAGE_JUMP.with(
                    before.name(),
                    Place.of(ground.route().units(), before.to()),
                    after.name(),
                    Place.of(ground.route().units(), after.from()),
                    ground.length(jump)),
                after,
                "from"));
      }
    }
  }

  private void gradients() {
    for (GradientPiece piece : ground.route().gradients()) {
      double slope = Math.abs(piece.gradient().permille());
      if (slope > STEEPEST_PERMILLE + 1e-6) {
        out.add(
            new AuditFinding(
                AuditText.GRADIENT_STEEP.with(
                    new InUnits<>(ground.route().units(), piece.gradient()),
                    ground.between(piece.extent())),
                piece,
                "gradient"));
      }
    }
  }

  private void closure() {
    List<SpotHeight> heights = new ArrayList<>(ground.route().spotHeights());
    heights.sort(Comparator.comparingDouble(h -> ground.at(h.location())));
    for (int i = 1; i < heights.size(); i++) {
      SpotHeight low = heights.get(i - 1);
      SpotHeight high = heights.get(i);
      double from = ground.at(low.location());
      double to = ground.at(high.location());
      double surveyed = high.heightM() - low.heightM();
      double summed = rise(from, to);
      double allowed = CLOSURE_M + CLOSURE_SHARE * (to - from);
      if (Math.abs(surveyed - summed) > allowed) {
        out.add(
            new AuditFinding(
                AuditText.GRADIENT_CLOSURE.with(
                    ground.place(low.location()),
                    ground.place(high.location()),
                    summed,
                    surveyed,
                    allowed),
                high,
                "height"));
      }
    }
  }

  private double rise(double fromM, double toM) {
    double rise = 0;
    for (GradientPiece piece : ground.route().gradients()) {
      double a = Math.max(fromM, ground.from(piece.extent()));
      double b = Math.min(toM, ground.to(piece.extent()));
      rise += Math.max(0, b - a) * piece.gradient().permille() / 1000;
    }
    return rise;
  }

  private void curve(Curve curve) {
    if (curve.radius().metres() <= CHECKED_RADIUS_M && curve.checkRail() == CheckRail.NONE) {
      out.add(
          new AuditFinding(AuditText.CHECK_RAIL_MISSING.with(ground.at(curve)), curve, "radius"));
    }
    if (curve.checkRail() == CheckRail.HIGH_RAIL) {
      out.add(
          new AuditFinding(
              AuditText.CHECK_RAIL_SIDE.with(
                  ground.between(curve.extent()), curve.hand().opposite()),
              curve,
              "check-rail"));
    }
  }
}
