package gradepost.briefing.question;

import java.util.List;

/**
 * A question as it stands on a paper.
 *
 * @param choices the right answer among three wrong ones
 * @param right index of the right one
 * @param mustPass whether the paper is failed with it, whatever the score
 */
public record Asked(Item item, List<String> choices, int right, boolean mustPass) {
  public Asked {
    choices = List.copyOf(choices);
  }
}
