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
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

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
    Map<String, String> values = new HashMap<>();
    values.put("from", ground.text(curve.extent().from()));
    values.put("to", ground.text(curve.extent().to()));
    values.put("cant", whole(cant));
    boolean atPlatform = cant > mm(limits.cantAtPlatform()) + SAME_MM && platformOn(curve, values);
    double most = mm(atPlatform ? limits.cantAtPlatform() : limits.cant());
    if (cant > most + SAME_MM) {
      values.put("limit", whole(most));
      AuditText text = atPlatform ? AuditText.CANT_HIGH_AT_PLATFORM : AuditText.CANT_HIGH;
      out.add(new AuditFinding(text, curve, "cant", values));
    }
  }

  private static String whole(double mm) {
    return String.format(Locale.ROOT, "%.0f", mm);
  }

  /** Whether a platform lies on the curve; the first is named. */
  private boolean platformOn(Curve curve, Map<String, String> names) {
    for (Station station : ground.route().stations()) {
      for (Platform platform : station.platforms()) {
        boolean overlaps =
            ground.from(platform.extent()) < ground.to(curve.extent())
                && ground.to(platform.extent()) > ground.from(curve.extent());
        if (overlaps) {
          names.put("platform", platform.number());
          names.put("station", station.name());
          return true;
        }
      }
    }
    return false;
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
      Speed fives = new Speed(Math.floor(permits.metresPerSecond() / unit / 5 + 1e-6) * 5 * unit);
      out.add(
          new AuditFinding(
              AuditText.CURVE_SPEED,
              curve,
              "",
              Map.of(
                  "speed", ground.speed(fastest.highest()),
                  "restriction", fastest.cause().name(),
                  "deficiency", whole(needs),
                  "from", ground.text(curve.extent().from()),
                  "to", ground.text(curve.extent().to()),
                  "radius", radius(curve),
                  "cant", whole(mm(curve.cant())),
                  "limit", whole(mm(limits.deficiency())),
                  "permits", ground.speed(fives))));
    }
  }

  private void excess(Curve curve, Ground.Piece slowest) {
    double over = mm(curve.cant()) - equilibriumMm(curve, slowest.lowest());
    if (over > mm(limits.excess()) + SAME_MM) {
      out.add(
          new AuditFinding(
              AuditText.CANT_EXCESS,
              curve,
              "cant",
              Map.of(
                  "speed", ground.speed(slowest.lowest()),
                  "restriction", slowest.cause().name(),
                  "excess", whole(over),
                  "from", ground.text(curve.extent().from()),
                  "to", ground.text(curve.extent().to()),
                  "radius", radius(curve),
                  "cant", whole(mm(curve.cant())),
                  "limit", whole(mm(limits.excess())))));
    }
  }

  private static String radius(Curve curve) {
    return String.valueOf(Math.round(curve.radius().metres()));
  }

  private double equilibriumMm(Curve curve, Speed speed) {
    return mm(CurveSpeed.equilibriumCant(speed, curve.radius(), ground.route().railCentres()));
  }
}
