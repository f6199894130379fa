package gradepost.route.audit;

import gradepost.route.Curve;
import gradepost.route.CurveSpeed;
import gradepost.route.Platform;
import gradepost.route.RunningLine;
import gradepost.route.Station;
import gradepost.route.place.Direction;
import gradepost.units.Length;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Curves: their cant, and what they need of it at their permissible speeds. */
final class CantAudit {
  private static final double SAME_MM = 1e-6;

  private final Ground ground;
  private final CantLimits limits;
  private final List<AuditFinding> out;

  CantAudit(Ground ground, CantLimits limits, List<AuditFinding> out) {
    this.ground = ground;
    this.limits = limits;
    this.out = out;
  }

  void run() {
    for (Curve curve : ground.route().curves()) {
      cant(curve);
      List<Ground.Piece> pieces = piecesOn(curve);
      pieces.stream()
          .max(Comparator.comparing(Ground.Piece::highest))
          .ifPresent(piece -> deficiency(curve, piece));
      pieces.stream()
          .min(Comparator.comparing(Ground.Piece::lowest))
          .ifPresent(piece -> excess(curve, piece));
    }
  }

  private static double mm(Length length) {
    return length.metres() * 1000;
  }

  private void cant(Curve curve) {
    double cant = mm(curve.cant());
    String platform = cant > mm(limits.cantAtPlatform()) + SAME_MM ? platformOn(curve) : "";
    double most = mm(platform.isEmpty() ? limits.cant() : limits.cantAtPlatform());
    if (cant > most + SAME_MM) {
      out.add(
          new AuditFinding(
              AuditRule.CANT_HIGH,
              curve,
              "cant",
              "the %s has a cant of %.0f mm%s"
                  .formatted(
                      ground.text(curve),
                      cant,
                      platform.isEmpty() ? "" : " at platform " + platform),
              "%.0f mm at most".formatted(most),
              ""));
    }
  }

  private String platformOn(Curve curve) {
    for (Station station : ground.route().stations()) {
      for (Platform platform : station.platforms()) {
        boolean overlaps =
            ground.from(platform.extent()) < ground.to(curve.extent())
                && ground.to(platform.extent()) > ground.from(curve.extent());
        if (overlaps) {
          return platform.number() + " of " + station.name();
        }
      }
    }
    return "";
  }

  /** The permissible speeds of all lines and directions that stand on a curve. */
  private List<Ground.Piece> piecesOn(Curve curve) {
    List<Ground.Piece> pieces = new ArrayList<>();
    for (RunningLine line : ground.route().lines()) {
      for (Direction direction : Direction.values()) {
        if (line.directions().contains(direction)) {
          ground.speeds(line, direction).stream()
              .filter(piece -> piece.fromM() < ground.to(curve.extent()) - 1)
              .filter(piece -> piece.toM() > ground.from(curve.extent()) + 1)
              .forEach(pieces::add);
        }
      }
    }
    return pieces;
  }

  private void deficiency(Curve curve, Ground.Piece fastest) {
    double needs = equilibriumMm(curve, fastest.highest()) - mm(curve.cant());
    if (needs > mm(limits.deficiency()) + SAME_MM) {
      Speed permits =
          CurveSpeed.permissible(
              curve.radius(), curve.cant(), limits.deficiency(), ground.route().railCentres());
      double unit = ground.route().units().speedUnitMps();
      Speed whole = new Speed(Math.floor(permits.metresPerSecond() / unit / 5 + 1e-6) * 5 * unit);
      out.add(
          new AuditFinding(
              AuditRule.CURVE_SPEED,
              curve,
              "",
              "%s (%s) needs %.0f mm of cant deficiency on the %s, %s"
                  .formatted(
                      ground.speed(fastest.highest()),
                      fastest.cause().name(),
                      needs,
                      ground.text(curve),
                      figures(curve)),
              "%.0f mm at most, that is %s".formatted(mm(limits.deficiency()), ground.speed(whole)),
              ""));
    }
  }

  private void excess(Curve curve, Ground.Piece slowest) {
    double over = mm(curve.cant()) - equilibriumMm(curve, slowest.lowest());
    if (over > mm(limits.excess()) + SAME_MM) {
      out.add(
          new AuditFinding(
              AuditRule.CANT_EXCESS,
              curve,
              "cant",
              "%s (%s) has %.0f mm of cant excess on the %s, %s"
                  .formatted(
                      ground.speed(slowest.lowest()),
                      slowest.cause().name(),
                      over,
                      ground.text(curve),
                      figures(curve)),
              "%.0f mm at most".formatted(mm(limits.excess())),
              ""));
    }
  }

  private static String figures(Curve curve) {
    return "%d m radius, cant %.0f mm"
        .formatted(Math.round(curve.radius().metres()), mm(curve.cant()));
  }

  private double equilibriumMm(Curve curve, Speed speed) {
    return mm(CurveSpeed.equilibriumCant(speed, curve.radius(), ground.route().railCentres()));
  }
}
