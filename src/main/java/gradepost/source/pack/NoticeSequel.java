package gradepost.source.pack;

import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.route.Board;
import gradepost.source.route.SpeedTables;
import gradepost.text.Mistake;
import gradepost.yaml.Problem;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

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
      List<String> stood = then.boards().stream().map(NoticeSequel::inWords).distinct().toList();
      in.error(in.spot(notice), PackMistakes.BOARDS_LEFT_OPEN.with(notice.reference(), stood));
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
                    PackMistakes.GAP_BEFORE_A_CHANGE.with(
                        notice.reference(), then.until().orElseThrow())));
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
    String reference = notice.reference();
    List<String> some = standing.stream().limit(NAMED).toList();
    Mistake mistake =
        standing.isEmpty()
            ? PackMistakes.WITHDRAWS_NOTHING.with(reference)
            : standing.size() > NAMED
                ? PackMistakes.WITHDRAWS_ANOTHER_OF_MANY.with(
                    reference, some, standing.size() - NAMED)
                : PackMistakes.WITHDRAWS_ANOTHER.with(reference, some);
    in.add(new Problem(in.spot(notice, SpeedTables.REFERENCE), Severity.WARNING, mistake));
  }
}
