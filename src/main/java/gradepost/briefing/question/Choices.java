package gradepost.briefing.question;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Draws the wrong answers of a question so that the right one is not to be told from the four: in
 * order, by their numbers or else by their lengths, it stands at each of the four places alike.
 */
final class Choices {
  /** Of the nearest wrong answers on one side so many more than are needed may be drawn. */
  private static final int MORE = 2;

  private static final Pattern MILES_AND_CHAINS = Pattern.compile("(\\d+)m (\\d+)ch.*");
  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+(?:\\.\\d+)?");
  private static final Pattern PLATE = Pattern.compile("\\p{Lu}+ (\\d+)\\b.*");
  private static final int CHAINS = 80;

  /** Three of the item's wrong answers. */
  static List<String> wrong(Item item, Random random) {
    List<String> below = new ArrayList<>();
    List<String> above = new ArrayList<>();
    double right = key(item.right());
    for (String wrong : item.near()) {
      double key = key(wrong);
      boolean isBelow = key == right ? random.nextBoolean() : key < right;
      (isBelow ? below : above).add(wrong);
    }
    int least = Math.max(0, Distractors.WRONG - above.size());
    int most = Math.min(Distractors.WRONG, below.size());
    int rank = least + random.nextInt(most - least + 1);
    List<String> out = new ArrayList<>(some(below, rank, random));
    out.addAll(some(above, Distractors.WRONG - rank, random));
    return out;
  }

  private static List<String> some(List<String> nearest, int count, Random random) {
    List<String> from = new ArrayList<>(nearest.subList(0, Math.min(nearest.size(), count + MORE)));
    Collections.shuffle(from, random);
    return from.subList(0, count);
  }

  /** What an answer is ordered by: its number, or that of a signal's plate, else its length. */
  static double key(String answer) {
    Matcher chains = MILES_AND_CHAINS.matcher(answer);
    if (chains.matches()) {
      return CHAINS * Double.parseDouble(chains.group(1)) + Double.parseDouble(chains.group(2));
    }
    Matcher plate = PLATE.matcher(answer);
    if (plate.matches()) {
      return Double.parseDouble(plate.group(1));
    }
    Matcher number = NUMBER.matcher(answer);
    return number.lookingAt() ? Double.parseDouble(number.group()) : answer.length();
  }

  private Choices() {}
}
