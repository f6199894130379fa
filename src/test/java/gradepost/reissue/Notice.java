package gradepost.reissue;

import gradepost.pack.DailyHours;
import gradepost.pack.Particulars;
import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Kind;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.Differential;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.units.Mileage;
import gradepost.units.Speed;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** An invented notice, to be edited field by field. */
final class Notice {
  static final LocalDateTime IMPOSED = LocalDateTime.of(2026, 3, 2, 4, 0);
  static final LocalDateTime END = LocalDateTime.of(2026, 3, 30, 4, 0);

  String reference = "T 1";
  Status status = Status.IN_FORCE;
  double fromM = 1000;
  double toM = 1200;
  Applies applies = new Applies(Set.of(Direction.FORWARD), Set.of("Out Main"));
  double kmh = 40;
  List<Differential> differentials = List.of();
  String reason = "wet bed";
  LocalDateTime imposed = IMPOSED;
  Optional<LocalDateTime> changedFrom = Optional.empty();
  Optional<LocalDateTime> until = Optional.of(END);
  Optional<DailyHours> hours = Optional.empty();
  List<Board> boards = List.of(board(BoardKind.WARNING, 500));

  /** What is edited. */
  interface Edit {
    void on(Notice notice);
  }

  static TemporaryRestriction with(Edit edit) {
    Notice notice = new Notice();
    edit.on(notice);
    return notice.restriction();
  }

  static Board board(BoardKind kind, double atM) {
    return new Board(kind, at(atM), Direction.FORWARD);
  }

  static Location at(double metres) {
    return new Location("Main", new Mileage(metres));
  }

  static Differential differential(String trainClass, double kmh) {
    return new Differential(trainClass, Speed.ofKmh(kmh));
  }

  private TemporaryRestriction restriction() {
    return new TemporaryRestriction(
        reference,
        Kind.TEMPORARY,
        status,
        new Extent(at(fromM), at(toM)),
        applies,
        Speed.ofKmh(kmh),
        differentials,
        Optional.empty(),
        reason,
        imposed,
        changedFrom,
        until,
        hours,
        boards,
        "",
        Particulars.NONE);
  }

  private Notice() {}
}
