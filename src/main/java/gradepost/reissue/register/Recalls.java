package gradepost.reissue.register;

import gradepost.units.MomentStyle;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * From when an issue is recalled: one that is superseded stays in force until the next is valid.
 */
final class Recalls {
  /** How the reason begins where a later issue has taken the place of one. */
  static final String SUPERSEDED = "superseded by issue ";

  private static final Pattern LATER =
      Pattern.compile(SUPERSEDED + "\\d+ from (\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d)");

  /** Why the issues before this one are recalled, with the hour where that is still to come. */
  static String superseded(Entry by, LocalDateTime now) {
    String reason = SUPERSEDED + by.number();
    return by.validFrom().isAfter(now)
        ? reason + " from " + MomentStyle.MOMENT.format(by.validFrom())
        : reason;
  }

  /** Whether what a list says of a recall holds at a moment; not where nothing is said. */
  static boolean hasCome(String said, LocalDateTime when) {
    Matcher later = LATER.matcher(said);
    return later.matches()
        ? !LocalDateTime.parse(later.group(1), MomentStyle.MOMENT).isAfter(when)
        : !said.isEmpty();
  }

  /** From when they are; empty text where that is at once. */
  static String effective(Entry by, LocalDateTime now) {
    return by.validFrom().isAfter(now) ? by.validFrom().toString() : "";
  }

  /** The same as a moment: what is to end before it ends by itself. */
  static LocalDateTime from(Entry by, LocalDateTime now) {
    return by.validFrom().isAfter(now) ? by.validFrom() : now;
  }

  /** Why an issue is recalled at a moment; empty where it is not, or not yet. */
  static Optional<String> of(Database db, long issue, LocalDateTime when) throws SQLException {
    return db.rows("SELECT reason, effective FROM recall WHERE issue = ?", issue).stream()
        .filter(row -> hasCome(row, when))
        .map(row -> row.get(0))
        .findFirst();
  }

  private static boolean hasCome(List<String> row, LocalDateTime when) {
    return row.get(1).isEmpty() || !LocalDateTime.parse(row.get(1)).isAfter(when);
  }

  private Recalls() {}
}
