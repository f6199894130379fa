package gradepost.source.pack;

import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.route.Board;
import gradepost.source.route.SpeedTables;
import gradepost.units.MomentStyle;
import gradepost.yaml.Problem;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What only shows beside the restriction that a notice goes on from: boards that it forgets, and a
 * withdrawal of what is not there.
 */
final class NoticeSequel {
  private static final int NAMED = 5;
  private final Map<String, TemporaryRestriction> before = new LinkedHashMap<>();
  private final Reader in;

  NoticeSequel(PackFile pack, Reader in) {
    this.in = in;
    pack.notices().forEach(n -> before.put(n.reference(), n));
  }

  void all(List<TemporaryRestriction> notices) {
    for (TemporaryRestriction notice : notices) {
      TemporaryRestriction then = before.get(notice.reference());
      boolean withdrawn = notice.status() == Status.WITHDRAWN;
      if (withdrawn && then == null) {
        withdrawsNothing(notice);
      } else if (!withdrawn && then != null) {
        if (!then.boards().isEmpty()) {
          boards(then, notice);
        }
        gap(then, notice);
      }
    }
  }

  /** Left out it may mean "as before" or "taken away"; a driver may be told neither by a guess. */
  private void boards(TemporaryRestriction then, TemporaryRestriction notice) {
    if (!in.says(notice, SpeedTables.BOARDS)) {
      String stood =
          then.boards().stream()
              .map(NoticeSequel::inWords)
              .distinct()
              .collect(Collectors.joining(", "));
      in.error(
          in.spot(notice),
          "%s had boards (%s), and this notice does not say what becomes of them"
              .formatted(notice.reference(), stood),
          "boards: those that stand from now, or none where nothing stands at the lineside",
          "");
    }
  }

  /** Between the end of one form and the start of the next, nobody would know what is in force. */
  private void gap(TemporaryRestriction then, TemporaryRestriction notice) {
    notice
        .changedFrom()
        .filter(changed -> then.until().filter(end -> end.isBefore(changed)).isPresent())
        .ifPresent(
            changed ->
                in.error(
                    in.spot(notice, SpeedTables.CHANGED_FROM),
                    "%s ended %s and changes only later: nothing says what is in force between"
                        .formatted(
                            notice.reference(),
                            MomentStyle.MOMENT.format(then.until().orElseThrow())),
                    "changed-from no later than that end; or impose it again",
                    ""));
  }

  private static String inWords(Board board) {
    return board.kind().name().toLowerCase(Locale.ROOT);
  }

  private void withdrawsNothing(TemporaryRestriction notice) {
    List<String> standing =
        before.values().stream()
            .filter(n -> n.status() != Status.WITHDRAWN)
            .map(TemporaryRestriction::reference)
            .toList();
    String some = String.join(", ", standing.stream().limit(NAMED).toList());
    String more = standing.size() > NAMED ? " and %d more".formatted(standing.size() - NAMED) : "";
    in.add(
        new Problem(
            in.spot(notice, SpeedTables.REFERENCE),
            Severity.WARNING,
            notice.reference()
                + " is withdrawn, and no file of the pack has it: nothing changes by it",
            standing.isEmpty() ? "" : "one of " + some + more,
            ""));
  }
}
