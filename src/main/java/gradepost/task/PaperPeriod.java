package gradepost.task;

import gradepost.pack.DailyHours;
import gradepost.pack.TemporaryRestriction;
import gradepost.units.MomentStyle;
import java.time.LocalDateTime;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A part of the validity of a pack with a paper of its own. In it a restriction does not stand that
 * else covers another: what is covered has to be braked for then, and the paper of the whole
 * validity has no sheet for it.
 *
 * @param hours of the day at which it counts; empty where it counts all day
 * @param first whether the validity of the pack begins with it
 * @param last whether the validity of the pack ends with it
 * @param restrictions those that stand at some time in it, of those that the train meets
 * @param uncovered references, or names, of what has to be braked for in it alone
 * @param absent references of the restrictions that do not stand in it
 */
public record PaperPeriod(
    LocalDateTime from,
    LocalDateTime to,
    List<DailyHours> hours,
    boolean first,
    boolean last,
    List<TemporaryRestriction> restrictions,
    List<String> uncovered,
    List<String> absent) {
  public PaperPeriod {
    hours = List.copyOf(hours);
    restrictions = List.copyOf(restrictions);
    uncovered = List.copyOf(uncovered);
    absent = List.copyOf(absent);
  }

  /**
   * As its papers and their files are called, such as "from 2026-11-30 04:00" or "between 05:00 and
   * 22:00".
   */
  public String name() {
    if (hours.isEmpty()) {
      return day();
    }
    String all =
        hours.stream()
            .map(h -> "between " + h.from() + " and " + h.to())
            .collect(Collectors.joining(", "));
    return first && last ? all : all + " " + day();
  }

  /** The same until a later moment. */
  PaperPeriod upTo(LocalDateTime end, boolean isLast) {
    return new PaperPeriod(from, end, hours, first, isLast, restrictions, uncovered, absent);
  }

  private String day() {
    return first
        ? "until " + MomentStyle.MOMENT.format(to)
        : "from " + MomentStyle.MOMENT.format(from);
  }
}
