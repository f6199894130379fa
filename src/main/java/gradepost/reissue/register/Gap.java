package gradepost.reissue.register;

import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A time in which nothing of a pack is in force.
 *
 * @param from its first moment
 * @param to when an issue begins that is registered already; empty where there is none
 */
public record Gap(LocalDateTime from, Optional<LocalDateTime> to) {
  /** From when to when an issue is in force, which is never before its end. */
  private record Force(LocalDateTime from, LocalDateTime to) {}

  /** The first one of a pack that begins at a moment, or after it. */
  static Gap next(Database db, String pack, LocalDateTime at) throws SQLException {
    List<Force> all = inForce(db, pack);
    LocalDateTime end = at;
    while (true) {
      LocalDateTime now = end;
      Optional<LocalDateTime> later =
          all.stream()
              .filter(f -> !f.from().isAfter(now) && f.to().isAfter(now))
              .map(Force::to)
              .max(LocalDateTime::compareTo);
      if (later.isEmpty()) {
        return new Gap(
            now,
            all.stream()
                .filter(f -> f.from().isAfter(now) && f.to().isAfter(f.from()))
                .map(Force::from)
                .min(LocalDateTime::compareTo));
      }
      end = later.get();
    }
  }

  /** What is recalled at once is not in force at all. */
  private static List<Force> inForce(Database db, String pack) throws SQLException {
    List<Force> all = new ArrayList<>();
    for (List<String> row :
        db.rows(
            "SELECT i.valid_from, i.valid_to, COALESCE(r.effective, i.valid_to) FROM issue i"
                + " LEFT JOIN recall r ON r.issue = i.id WHERE i.pack = ?",
            pack)) {
      if (!row.get(2).isEmpty()) {
        LocalDateTime recalled = LocalDateTime.parse(row.get(2));
        LocalDateTime over = LocalDateTime.parse(row.get(1));
        all.add(
            new Force(LocalDateTime.parse(row.get(0)), recalled.isBefore(over) ? recalled : over));
      }
    }
    return all;
  }
}
