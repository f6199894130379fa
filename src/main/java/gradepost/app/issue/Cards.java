package gradepost.app.issue;

import gradepost.app.store.Paper;
import gradepost.briefing.Briefing;
import gradepost.briefing.CabCards;
import gradepost.pack.CardSize;
import java.io.IOException;
import java.util.List;

/** The cab cards of a briefing: single ones, and A4 sheets to cut them from. */
public final class Cards {
  /** The cards as files whose names begin with the stem. */
  public static List<Paper> papers(String stem, Briefing briefing, CardSize size, Layout layout)
      throws IOException {
    String title =
        layout
            .messages()
            .text("cards.title", briefing.cover().heading(), briefing.issue().number());
    return layout.cards(stem + "-cards", CabCards.of(briefing, title, format(size)));
  }

  private static CabCards.Format format(CardSize size) {
    return switch (size) {
      case A5_PORTRAIT -> new CabCards.Format(size.word(), 148, 210, 2, 1);
      case A5_LANDSCAPE -> new CabCards.Format(size.word(), 210, 148, 1, 2);
      case A6_PORTRAIT -> new CabCards.Format(size.word(), 105, 148, 2, 2);
      case A6_LANDSCAPE -> new CabCards.Format(size.word(), 148, 105, 2, 2);
    };
  }

  private Cards() {}
}
