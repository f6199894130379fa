package gradepost.render;

import gradepost.briefing.CabCards;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;

/**
 * Where the approaches of a draft are cut, so that each piece fits its card. The draft has a
 * bookmark at each edge: top, what stands before the lines, the head of the lines, every line, the
 * answer, the end.
 */
final class CardCuts {
  private static final double POINTS_PER_MM = 72 / 25.4;

  /** Two layouts of one text may differ by so much, from the rounding of each line. */
  private static final double SLACK_PT = 2;

  /** Edges of one approach, in points from the top of its page. */
  private record Edges(List<Double> at) {
    int lines() {
      return at.size() - 5;
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
      double end = to == lines() ? at.get(at.size() - 1) : line(to);
      return end - line(from);
    }
  }

  static List<List<Integer>> of(CabCards draft, byte[] pdf) throws IOException {
    CabCards.Format format = draft.format();
    double room =
        (format.heightMm() - format.headMm() - format.footMm()) * POINTS_PER_MM - SLACK_PT;
    List<Double> tops = tops(pdf);
    List<List<Integer>> out = new ArrayList<>();
    int from = 0;
    for (CabCards.Card card : draft.cards()) {
      int to = from + card.lines().size() + 5;
      out.add(ends(new Edges(tops.subList(from, to)), room));
      from = to;
    }
    return out;
  }

  /** As many lines a piece as it holds, and one at least; the answer stands with the last line. */
  private static List<Integer> ends(Edges edges, double room) {
    List<Integer> ends = new ArrayList<>();
    int from = 0;
    double above = edges.front() + edges.head();
    do {
      int to = Math.min(from + 1, edges.lines());
      while (to < edges.lines() && above + edges.height(from, to + 1) <= room) {
        to++;
      }
      ends.add(to);
      from = to;
      above = edges.heading() + edges.head();
    } while (from < edges.lines());
    return ends;
  }

  private static List<Double> tops(byte[] pdf) throws IOException {
    List<Double> out = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      double height = document.getPage(0).getMediaBox().getHeight();
      for (PDOutlineItem item : document.getDocumentCatalog().getDocumentOutline().children()) {
        if (!(item.getDestination() instanceof PDPageXYZDestination place)) {
          throw new IOException("a draft of a card has a bookmark that leads nowhere");
        }
        out.add(height - place.getTop());
      }
    }
    return out;
  }

  private CardCuts() {}
}
