package gradepost.route.audit;

import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.Landmark;
import gradepost.route.place.Direction;
import gradepost.route.place.Hand;
import gradepost.text.Mistake;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Landmarks that say of a check rail what the curve does not. */
final class LandmarkAudit {
  /** A landmark this near to the end of a check-railed curve speaks of it. */
  private static final double NEAR_M = 100;

  private final Ground ground;
  private final List<AuditFinding> out;

  LandmarkAudit(Ground ground, List<AuditFinding> out) {
    this.ground = ground;
    this.out = out;
  }

  /** One end of a check-railed curve; the forward one where the forward train comes to it first. */
  private record End(Curve curve, double atM, boolean first) {
    boolean begins(Direction direction) {
      return first == (direction == Direction.FORWARD);
    }
  }

  void run() {
    for (Landmark landmark : ground.route().landmarks()) {
      String name = landmark.name().toLowerCase(Locale.ROOT);
      if (name.contains("check rail")) {
        nearest(landmark).ifPresent(end -> compare(landmark, name, end));
      }
    }
  }

  private Optional<End> nearest(Landmark landmark) {
    double at = ground.at(landmark.location());
    return ground.route().curves().stream()
        .filter(c -> c.checkRail() != CheckRail.NONE)
        .flatMap(
            c ->
                List.of(
                    new End(c, ground.from(c.extent()), true),
                    new End(c, ground.to(c.extent()), false))
                    .stream())
        .filter(e -> Math.abs(e.atM() - at) <= NEAR_M)
        .min(Comparator.comparingDouble(e -> Math.abs(e.atM() - at)));
  }

  private void compare(Landmark landmark, String name, End end) {
    Hand low = end.curve().hand();
    Hand side = end.curve().checkRail() == CheckRail.HIGH_RAIL ? low.opposite() : low;
    if (end.curve().checkRail() != CheckRail.BOTH && landmark.side() != side) {
      found(
          AuditText.CHECK_RAIL_LANDMARK_SIDE.with(
              landmark.name(), ground.place(landmark.location()), landmark.side(), side),
          landmark,
          "side");
    }
    boolean begins = name.contains("begin");
    if (!begins && !name.contains("end")) {
      return;
    }
    for (Direction direction : Direction.values()) {
      if (landmark.applies().directions().contains(direction) && end.begins(direction) != begins) {
        found(
            (begins ? AuditText.CHECK_RAIL_LANDMARK_BEGINS : AuditText.CHECK_RAIL_LANDMARK_ENDS)
                .with(
                    landmark.name(),
                    ground.place(landmark.location()),
                    ground.name(direction),
                    ground.name(direction.opposite())),
            landmark,
            "");
      }
    }
  }

  private void found(Mistake what, Landmark landmark, String key) {
    out.add(new AuditFinding(what, landmark, key));
  }
}
