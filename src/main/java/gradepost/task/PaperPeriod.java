package gradepost.task;

import gradepost.pack.TemporaryRestriction;
import gradepost.units.MomentStyle;
import java.time.LocalDateTime;
import java.util.List;

/**
 * A part of the validity of a pack with a paper of its own. In it a restriction does not stand that
 * else covers another: what is covered has to be braked for then, and the paper of the whole
 * validity has no sheet for it.
 *
 * @param first whether the validity of the pack begins with it
 * @param last whether the validity of the pack ends with it
 * @param restrictions those that stand at some time in it, of those that the train meets
 * @param uncovered references, or names, of what has to be braked for in it alone
 * @param absent references of the restrictions that do not stand in it
 */
public record PaperPeriod(
    LocalDateTime from,
    LocalDateTime to,
    boolean first,
    boolean last,
    List<TemporaryRestriction> restrictions,
    List<String> uncovered,
    List<String> absent) {
  public PaperPeriod {
    restrictions = List.copyOf(restrictions);
    uncovered = List.copyOf(uncovered);
    absent = List.copyOf(absent);
  }

  /** As its papers and their files are called, such as "from 2026-11-30 04:00". */
  public String name() {
    return first
        ? "until " + MomentStyle.MOMENT.format(to)
        : "from " + MomentStyle.MOMENT.format(from);
  }
}
