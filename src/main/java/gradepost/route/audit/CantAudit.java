package gradepost.route.audit;

import gradepost.route.Curve;
import gradepost.route.CurveSpeed;
import gradepost.route.RunningLine;
import gradepost.route.audit.AuditText.Given;
import gradepost.route.audit.AuditText.PlatformOf;
import gradepost.route.place.Direction;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.text.Mistake;
import gradepost.units.Length;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

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
    Optional<PlatformOf> platform =
        beyond(curve.cant(), limits.cantAtPlatform()) ? platformOn(curve) : Optional.empty();
    if (platform.isPresent()) {
      found(
          AuditText.CANT_HIGH_AT_PLATFORM.with(
              ground.at(curve), platform.get(), limits.cantAtPlatform()),
          curve,
          "cant");
    } else if (beyond(curve.cant(), limits.cant())) {
      found(AuditText.CANT_HIGH.with(ground.at(curve), limits.cant()), curve, "cant");
    }
  }

  private static boolean beyond(Length length, Length limit) {
    return mm(length) > mm(limit) + SAME_MM;
  }

  private void found(Mistake what, Curve curve, String key) {
    out.add(new AuditFinding(what, curve, key));
  }

  /** The first platform that lies on the curve, if one does. */
  private Optional<PlatformOf> platformOn(Curve curve) {
    for (Station station : ground.route().stations()) {
      for (Platform platform : station.platforms()) {
        boolean overlaps =
            ground.from(platform.extent()) < ground.to(curve.extent())
                && ground.to(platform.extent()) > ground.from(curve.extent());
        if (overlaps) {
          return Optional.of(new PlatformOf(station, platform));
        }
      }
    }
    return Optional.empty();
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
      found(
          AuditText.CURVE_SPEED.with(
              given(fastest, fastest.highest()),
              ofMm(needs),
              ground.at(curve),
              limits.deficiency(),
              ground.speed(fives)),
          curve,
          "");
    }
  }

  private void excess(Curve curve, Ground.Piece slowest) {
    double over = mm(curve.cant()) - equilibriumMm(curve, slowest.lowest());
    if (over > mm(limits.excess()) + SAME_MM) {
      found(
          AuditText.CANT_EXCESS.with(
              given(slowest, slowest.lowest()), ofMm(over), ground.at(curve), limits.excess()),
          curve,
          "cant");
    }
  }

  private Given given(Ground.Piece piece, Speed speed) {
    return new Given(ground.speed(speed), piece.cause());
  }

  private static Length ofMm(double mm) {
    return new Length(mm / 1000);
  }

  private double equilibriumMm(Curve curve, Speed speed) {
    return mm(CurveSpeed.equilibriumCant(speed, curve.radius(), ground.route().railCentres()));
  }
}
