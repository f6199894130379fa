package gradepost.render;

import gradepost.briefing.CabCards;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the approaches of a draft are cut, so that each piece fits its card. The edges of each are:
 * top, what stands before the lines, the head of the lines, every line, the answer, the last place
 * of the brake to use, the end.
 */
final class CardCuts {
  private static final double POINTS_PER_MM = 72 / 25.4;

  /** Two layouts of one text may differ by so much, from the rounding of each line. */
  private static final double SLACK_PT = 2;

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
   */
  static List<CabCards.Cut> of(CabCards draft, List<Double> tops) {
    CabCards.Format format = draft.format();
    double room =
        (format.heightMm() - format.headMm() - format.footMm()) * POINTS_PER_MM - SLACK_PT;
    List<CabCards.Cut> out = new ArrayList<>();
    int from = 0;
    for (CabCards.Card card : draft.cards()) {
      int to = from + card.lines().size() + 6;
      out.add(cut(new Edges(tops.subList(from, to)), room));
      from = to;
    }
    return out;
  }

  /** As many lines a piece as it holds, and one at least; the answer stands with the last line. */
  private static CabCards.Cut cut(Edges edges, double room) {
    List<Integer> ends = new ArrayList<>();
    int from = 0;
    double above = edges.front() + edges.head();
    boolean withLast;
    do {
      int to = Math.min(from + 1, edges.lines());
      while (to < edges.lines() && above + edges.height(from, to + 1) <= room) {
        to++;
      }
      withLast = above + edges.height(from, to) + edges.last() <= room;
      ends.add(to);
      from = to;
      above = edges.heading() + edges.head();
    } while (from < edges.lines());
    return new CabCards.Cut(ends, withLast);
  }

  private CardCuts() {}
}
