package gradepost.render;

import gradepost.briefing.CabCards;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the approaches of a draft are cut, so that each piece fits its card. The edges of each are:
 * top, what stands before the lines, the head of the lines, every line with its answer, what ends
 * the card, the last place of the brake to use, the end.
 */
final class CardCuts {
  private static final double POINTS_PER_MM = 72 / 25.4;

  /** Two layouts of one text may differ by so much, from the rounding of each line. */
  private static final double SLACK_PT = 2;

  /** By how much less room is tried for an even cut. */
  private static final double STEP_PT = 4;

  /** Edges of one approach, in points down the run of text. */
  private record Edges(List<Double> at) {
    int lines() {
      return at.size() - 6;
    }

    double heading() {
      return at.get(1) - at.get(0);
    }

    double front() {
      return at.get(2) - at.get(0);
    }

    double head() {
      return lines() == 0 ? 0 : line(0) - at.get(2);
    }

    private double line(int i) {
      return at.get(3 + i);
    }

    /** Of some lines, with the answer after the last. */
    double height(int from, int to) {
      double end = to == lines() ? at.get(at.size() - 2) : line(to);
      return end - line(from);
    }

    /** Of what ends the card. */
    double tail() {
      return at.get(at.size() - 2) - line(lines());
    }

    /** Of what stands behind all else where there is room. */
    double last() {
      return at.get(at.size() - 1) - at.get(at.size() - 2);
    }
  }

  /** The elements of a draft that begin at an edge, from its first card to its last. */
  static List<String> edges(CabCards draft) {
    List<String> out = new ArrayList<>();
    for (CabCards.Card card : draft.cards()) {
      String id = card.approach().id();
      out.addAll(List.of("card-" + id, "front-" + id, "table-" + id));
      card.lines().forEach(line -> out.add("row-" + id + "-" + line.number()));
      out.addAll(List.of("tail-" + id, "last-" + id, "end-" + id));
    }
    return out;
  }

  /**
   * How each card is cut.
   *
   * @param tops where each of the edges lies, in points
   * @param lessPt points of a card's height to leave free
   */
  static List<CabCards.Cut> of(CabCards draft, List<Double> tops, double lessPt) {
    CabCards.Format format = draft.format();
    double room =
        (format.heightMm() - format.headMm() - format.footMm()) * POINTS_PER_MM - SLACK_PT - lessPt;
    List<CabCards.Cut> out = new ArrayList<>();
    int from = 0;
    for (CabCards.Card card : draft.cards()) {
      int to = from + card.lines().size() + 6;
      out.add(cut(new Edges(tops.subList(from, to)), room));
      from = to;
    }
    return out;
  }

  /** The last place of the brake to use stands behind all else, where there is room. */
  private static CabCards.Cut cut(Edges edges, double room) {
    List<Integer> ends = ends(edges, room);
    int from = ends.size() > 1 ? ends.get(ends.size() - 2) : 0;
    double above = (ends.size() > 1 ? edges.heading() : edges.front()) + edges.head();
    double all = above + edges.height(from, edges.lines()) + edges.last();
    return new CabCards.Cut(ends, all <= room);
  }

  /** As few pieces as there is room for, and of these the most even: no line alone on the last. */
  private static List<Integer> ends(Edges edges, double room) {
    List<Integer> best = filled(edges, room);
    for (double less = room - STEP_PT; less > 0; less -= STEP_PT) {
      List<Integer> even = filled(edges, less);
      if (even.size() > best.size()) {
        break;
      }
      best = even;
    }
    return best;
  }

  /**
   * As many lines a piece as it holds, and one at least, unless what stands before them leaves it
   * no room; what ends the card stands with the last, or where that has no room for it, alone.
   */
  private static List<Integer> filled(Edges edges, double room) {
    List<Integer> ends = new ArrayList<>();
    int from = 0;
    double above = edges.front() + edges.head();
    if (edges.lines() > 0 && above + edges.height(0, 1) > room) {
      ends.add(0);
      above = edges.heading() + edges.head();
    }
    do {
      int to = Math.min(from + 1, edges.lines());
      while (to < edges.lines() && above + edges.height(from, to + 1) <= room) {
        to++;
      }
      ends.add(to);
      boolean tailAlone = to == edges.lines() && above + edges.height(from, to) > room;
      if (tailAlone && edges.tail() > 0) {
        ends.add(to);
      }
      from = to;
      above = edges.heading() + edges.head();
    } while (from < edges.lines());
    return ends;
  }

  private CardCuts() {}
}
