package gradepost.app.reissue;

import gradepost.app.making.Outcome;
import gradepost.app.making.Outcome.State;
import gradepost.app.store.Answer;
import gradepost.reissue.register.Entry;
import java.util.ArrayList;
import java.util.List;

/** What a reissue tells the clerk of its packs, and of all of them in one line. */
final class ReissueTold {
  /** Of so many packs each is told of, though nothing happens to it. */
  private static final int FEW = 20;

  static final String UNREADABLE =
      "error: nothing was issued: the notice and every pack have to be readable";

  static final String EARLIER_FIRST =
      "error: nothing else was done: first the files that an earlier run left unwritten";

  /** What becomes of an issue that an earlier run registered and did not put in place. */
  static Answer late(Entry issue, Answer placed) {
    return placed.good()
        ? placed.and(
            Answer.said(
                issue.name() + " papers and files written: an earlier run had not finished"))
        : placed;
  }

  static Answer of(List<Outcome> outcomes, boolean dryRun) {
    Answer answer = Answer.GOOD;
    for (Outcome outcome : outcomes) {
      Answer told = outcome.told().without(answer.problems());
      boolean quiet =
          outcomes.size() > FEW
              && (outcome.state() == State.UNTOUCHED || outcome.state() == State.ELSEWHERE);
      answer =
          answer.and(quiet ? new Answer(List.of(), List.of(), told.problems(), told.good()) : told);
    }
    if (outcomes.size() > 1) {
      answer = answer.and(Answer.said(summary(outcomes, dryRun)));
    }
    if (count(outcomes, State.ELSEWHERE) == outcomes.size()) {
      return new Answer(List.of(), answer.written(), answer.problems(), false)
          .and(Answer.refused("error: no pack here is of a route that the notice names"));
    }
    if (count(outcomes, State.UNREADABLE) + count(outcomes, State.WRONG_NOTICE) > 0) {
      return answer.and(Answer.refused(UNREADABLE));
    }
    if (count(outcomes, State.STALE) > 0) {
      return answer.and(
          Answer.refused(
              "error: nothing was issued: the files of a pack must be those of its last issue"));
    }
    if (count(outcomes, State.DOUBTFUL) > 0) {
      return answer.and(
          Answer.refused("error: nothing was issued: the notice has to be confirmed"));
    }
    if (count(outcomes, State.LEFT) > 0) {
      return answer.and(
          Answer.refused(
              "error: the run ended before all packs were done\n"
                  + "  Maybe run it again when the cause is removed: what is registered is kept, and"
                  + " its files will be written then"));
    }
    return answer;
  }

  private static long count(List<Outcome> outcomes, State state) {
    return outcomes.stream().filter(o -> o.state() == state).count();
  }

  private static String summary(List<Outcome> outcomes, boolean dryRun) {
    List<String> parts = new ArrayList<>();
    for (State state : State.values()) {
      long count = count(outcomes, state);
      if (count > 0) {
        parts.add(count + " " + words(state, dryRun));
      }
    }
    return outcomes.size() + " packs: " + String.join(", ", parts);
  }

  private static String words(State state, boolean dryRun) {
    return switch (state) {
      case UNREADABLE -> "cannot be read";
      case WRONG_NOTICE -> "for which the notice is wrong";
      case STALE -> "with files that differ from the last issue";
      case DOUBTFUL -> "with a notice to be confirmed";
      case ELSEWHERE -> "of another route";
      case UNTOUCHED -> "not touched";
      case KNOWN -> "had the notice already";
      case TOUCHED -> "touched, not issued";
      case FAILED -> "touched, cannot be issued";
      case ASKED -> "asked of the workers";
      case ISSUED -> dryRun ? "would be issued" : "issued";
      case LEFT -> "left undone";
    };
  }

  private ReissueTold() {}
}
