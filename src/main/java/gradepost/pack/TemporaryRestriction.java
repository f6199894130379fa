package gradepost.pack;

import gradepost.route.Board;
import gradepost.route.Differential;
import gradepost.route.Differentials;
import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import gradepost.units.Speed;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A restriction made known by notice.
 *
 * @param reference stable across reissues
 * @param normalSpeed what stands when it does not
 * @param imposed when it begins to stand
 * @param changedFrom from when it stands as it is told here, where it stood in another form before,
 *     or from when it is withdrawn; empty means that the notice does not say
 * @param until when it ceases; empty means until further notice
 * @param hours the hours of day in which it stands; empty means all day
 * @param boards empty means that nothing stands at the lineside: PAPER ONLY
 * @param particulars what else the notice says
 */
public record TemporaryRestriction(
    String reference,
    Kind kind,
    Status status,
    Extent extent,
    Applies applies,
    Speed speed,
    List<Differential> differentials,
    Optional<Speed> normalSpeed,
    String reason,
    LocalDateTime imposed,
    Optional<LocalDateTime> changedFrom,
    Optional<LocalDateTime> until,
    Optional<DailyHours> hours,
    List<Board> boards,
    String issuedBy,
    Particulars particulars) {

  /** How it was made known. */
  public enum Kind {
    TEMPORARY,
    EMERGENCY,
    BLANKET
  }

  /** Where it is in its life. */
  public enum Status {
    PLANNED,
    IN_FORCE,
    EASED,
    EXTENDED,
    WITHDRAWN
  }

  /** A restriction that is as it was imposed, and of whose notice no more is known. */
  public TemporaryRestriction(
      String reference,
      Kind kind,
      Status status,
      Extent extent,
      Applies applies,
      Speed speed,
      List<Differential> differentials,
      Optional<Speed> normalSpeed,
      String reason,
      LocalDateTime imposed,
      Optional<LocalDateTime> until,
      Optional<DailyHours> hours,
      List<Board> boards,
      String issuedBy) {
    this(
        reference,
        kind,
        status,
        extent,
        applies,
        speed,
        differentials,
        normalSpeed,
        reason,
        imposed,
        Optional.empty(),
        until,
        hours,
        boards,
        issuedBy,
        Particulars.NONE);
  }

  public TemporaryRestriction {
    differentials = List.copyOf(differentials);
    boards = List.copyOf(boards);
  }

  /**
   * The speed for a train of these classes: the highest that names one of them, else the general
   * one.
   */
  public Speed speedFor(List<String> trainClasses) {
    return Differentials.speedFor(speed, differentials, trainClasses);
  }

  /**
   * Whether it can be met at some time from {@code from} to {@code to}. Part-time restrictions
   * count: a paper that is valid all day must show them.
   */
  public boolean standsBetween(LocalDateTime from, LocalDateTime to) {
    return status != Status.WITHDRAWN
        && imposed.isBefore(to)
        && until.map(end -> end.isAfter(from)).orElse(true);
  }
}
