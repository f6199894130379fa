package gradepost.briefing.question;

import java.util.List;

/**
 * Whether one question of a paper gives another one away: a figure or a place that it asks for. A
 * name alone, which many questions have, gives nothing away.
 */
final class Told {
  /** About one place are questions that are no further apart than this. */
  private static final double ONE_PLACE_M = 500;

  /** Whether an item tells an answer that is asked for, or is told by a question. */
  static boolean another(Item item, List<Asked> paper) {
    return paper.stream()
        .map(Asked::item)
        .anyMatch(o -> aboutOnePlace(item, o) && (tells(item, o) || tells(o, item)));
  }

  private static boolean aboutOnePlace(Item a, Item b) {
    return Math.abs(a.atM() - b.atM()) < ONE_PLACE_M
        || (!a.of().isEmpty() && a.of().equals(b.of()));
  }

  private static boolean tells(Item item, Item of) {
    return Character.isDigit(of.right().charAt(0)) && item.ask().contains(of.right());
  }

  private Told() {}
}
