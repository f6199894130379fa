package gradepost.route.audit;

import gradepost.route.BigDrop;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.LineHoles.Place;
import gradepost.route.PermanentRestriction;
import gradepost.route.RunningLine;
import gradepost.route.place.Direction;
import gradepost.text.Mistakes.Five;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Permissible speeds and the boards that announce them. */
final class SpeedAudit {
  /** A board may stand a little off the place itself, for want of room. */
  private static final double BOARD_SLACK_M = 50;

  private final Ground ground;
  private final List<AuditFinding> out;

  SpeedAudit(Ground ground, List<AuditFinding> out) {
    this.ground = ground;
    this.out = out;
  }

  void run() {
    Set<AuditFinding> drops = new LinkedHashSet<>();
    for (RunningLine line : ground.route().lines()) {
      for (Direction direction : Direction.values()) {
        if (line.directions().contains(direction)) {
          drops(ground.speeds(line, direction), direction, drops);
        }
      }
    }
    out.addAll(drops);
    for (PermanentRestriction restriction : ground.route().restrictions()) {
      restriction.boards().forEach(board -> board(restriction, board));
    }
  }

  private void drops(List<Ground.Piece> pieces, Direction direction, Set<AuditFinding> drops) {
    for (int i = 1; i < pieces.size(); i++) {
      boolean forward = direction == Direction.FORWARD;
      Ground.Piece before = pieces.get(forward ? i - 1 : i);
      Ground.Piece after = pieces.get(forward ? i : i - 1);
      double seam = pieces.get(i).fromM();
      boolean joined = seam - pieces.get(i - 1).toM() < 1;
      double from = before.speed().metresPerSecond();
      boolean big = BigDrop.is(from, after.speed().metresPerSecond());
      if (joined && big && !warned(after.cause(), direction, seam)) {
        drops.add(
            new AuditFinding(
                AuditText.BIG_DROP.with(
                    ground.name(direction),
                    ground.speed(before.speed()),
                    ground.speed(after.speed()),
                    ground.place(seam),
                    after.cause().name()),
                after.cause(),
                "boards"));
      }
    }
  }

  private boolean warned(PermanentRestriction cause, Direction direction, double seam) {
    return cause.boards().stream()
        .filter(b -> b.kind() == BoardKind.WARNING && b.direction() == direction)
        .anyMatch(b -> ground.beyond(direction, seam, ground.at(b.location())) > 0);
  }

  private void board(PermanentRestriction restriction, Board board) {
    boolean forward = board.direction() == Direction.FORWARD;
    double begins = forward ? ground.from(restriction.extent()) : ground.to(restriction.extent());
    double ends = forward ? ground.to(restriction.extent()) : ground.from(restriction.extent());
    double at = ground.at(board.location());
    double pastBegin = ground.beyond(board.direction(), at, begins);
    double pastEnd = ground.beyond(board.direction(), at, ends);
    switch (board.kind()) {
      case WARNING, REPEATING -> {
        if (pastBegin >= 0) {
          misplaced(AuditText.BOARD_PLACE_BEFORE, restriction, board, begins);
        }
      }
      case COMMENCEMENT -> {
        if (Math.abs(pastBegin) > BOARD_SLACK_M) {
          misplaced(AuditText.BOARD_PLACE_AT, restriction, board, begins);
        }
      }
      case TERMINATION -> {
        if (Math.abs(pastEnd) > BOARD_SLACK_M) {
          misplaced(AuditText.BOARD_PLACE_AT, restriction, board, ends);
        }
      }
    }
  }

  private void misplaced(
      Five<BoardKind, String, String, Place, Place> text,
      PermanentRestriction restriction,
      Board board,
      double rightM) {
    out.add(
        new AuditFinding(
            text.with(
                board.kind(),
                restriction.name(),
                ground.name(board.direction()),
                ground.place(board.location()),
                ground.place(rightM)),
            board,
            "at"));
  }
}
