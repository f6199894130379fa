package gradepost.app.shelf;

import java.time.LocalDateTime;
import java.util.List;

/**
 * A notice that is being issued, or was.
 *
 * @param id by which it is found again
 * @param by who has it done
 * @param begun when it was begun
 * @param state how far it is
 * @param packs how many packs there are; 0 while nobody knows
 * @param done how many of them were looked at and made
 * @param said what is told of it so far
 * @param problems why it is not, or not wholly, done
 * @param papers of the issues that it made
 * @param typed the notice
 */
public record Work(
    String id,
    String by,
    LocalDateTime begun,
    State state,
    int packs,
    int done,
    List<String> said,
    List<String> problems,
    List<Paper> papers,
    NoticeDesk.Typed typed) {

  /** How far a work is. */
  public enum State {
    /** It goes on, whoever looks. */
    AT_WORK,
    /** It is done. */
    DONE,
    /** It was refused, or not all of it was done. */
    NOT_DONE,
    /** The desk was stopped meanwhile. What was issued before stands. */
    BROKEN_OFF
  }

  /** A paper of an issue. */
  public record Paper(String pack, String issue, String name) {}

  /** Copies the lists. */
  public Work {
    said = List.copyOf(said);
    problems = List.copyOf(problems);
    papers = List.copyOf(papers);
  }
}
