package gradepost.policy;

import java.util.List;

/**
 * What a knowledge paper is made of and passed by.
 *
 * @param variants how many papers are printed, all of equal weight
 * @param questions in each
 * @param passMark share of right answers that passes
 * @param mustPass subjects in which every answer has to be right
 * @param blank what is left out of the strip that the learner fills in
 */
public record PaperRules(
    int variants, int questions, double passMark, List<Subject> mustPass, List<StripLayer> blank) {
  public PaperRules {
    mustPass = List.copyOf(mustPass);
    blank = List.copyOf(blank);
    if (variants < 1 || questions < 1) {
      throw new IllegalArgumentException("there is a paper, and it asks something");
    }
  }

  /** How many right answers pass a paper of so many questions. */
  public int needed(int asked) {
    return (int) Math.ceil(passMark * asked - 1e-9);
  }
}
