package gradepost.briefing;

import java.util.ArrayList;
import java.util.List;

/**
 * The approaches of a pack as cards for the cab, one approach a card, and where one card does not
 * hold it, continued on another.
 *
 * @param format the finished size
 * @param draft whether it is laid out only to measure how high everything is
 * @param pageMm how high a page is
 * @param approaches how many there are
 */
public record CabCards(
    String language,
    String title,
    String subject,
    String issueLine,
    IssueDetails issue,
    Format format,
    boolean draft,
    int pageMm,
    int approaches,
    List<Card> cards)
    implements Printable {

  /** A height that holds any approach whole. */
  private static final int DRAFT_MM = 2000;

  /**
   * Finished size in millimetres, and how many fit an A4 sheet side by side and one below another.
   *
   * @param headMm what the running head takes, with the margin above it
   * @param footMm what the running foot takes, with the margin under it
   */
  public record Format(
      String name, int widthMm, int heightMm, int across, int down, int headMm, int footMm) {
    /** With margins that fit every size. */
    public Format(String name, int widthMm, int heightMm, int across, int down) {
      this(name, widthMm, heightMm, across, down, 11, 9);
    }

    public Format {
      boolean upright = across * widthMm <= 211 && down * heightMm <= 297;
      boolean lying = across * widthMm <= 297 && down * heightMm <= 211;
      if (!upright && !lying) {
        throw new IllegalArgumentException(name + " does not fit A4 so many times");
      }
    }

    /** Whether the A4 sheet that they are cut from lies on its long side. */
    public boolean sheetLies() {
      return across * widthMm > 211;
    }
  }

  /**
   * An approach or a part of one.
   *
   * @param head the direction and formation that it is for
   * @param piece from 1
   * @param lines that stand on this piece
   */
  public record Card(
      String head,
      ApproachPage approach,
      int piece,
      int pieces,
      List<ApproachPage.ActionLine> lines) {
    public Card {
      lines = List.copyOf(lines);
    }

    private static Card whole(String head, ApproachPage approach) {
      return new Card(head, approach, 1, 1, approach.actions());
    }

    /** The same on several cards: the first goes to the line before {@code ends}, and so on. */
    private List<Card> over(List<Integer> ends) {
      List<Card> out = new ArrayList<>();
      int from = 0;
      for (int end : ends) {
        out.add(new Card(head, approach, out.size() + 1, ends.size(), lines.subList(from, end)));
        from = end;
      }
      return out;
    }
  }

  public CabCards {
    cards = List.copyOf(cards);
  }

  /** The cards of every part of a pack, in the order of travel; a draft until they are split. */
  public static CabCards of(Briefing pack, String title, Format format) {
    List<Card> cards =
        pack.parts().stream()
            .flatMap(p -> p.approaches().stream().map(a -> Card.whole(p.head(), a)))
            .toList();
    return new CabCards(
        pack.language(),
        title,
        pack.subject(),
        pack.issueLine(),
        pack.issue(),
        format,
        true,
        DRAFT_MM,
        cards.size(),
        cards);
  }

  /**
   * A draft cut to size.
   *
   * @param ends for each card after which of its lines each of its pieces ends
   */
  public CabCards split(List<List<Integer>> ends) {
    List<Card> pieces = new ArrayList<>();
    for (int i = 0; i < cards.size(); i++) {
      pieces.addAll(cards.get(i).over(ends.get(i)));
    }
    return new CabCards(
        language,
        title,
        subject,
        issueLine,
        issue,
        format,
        false,
        format.heightMm(),
        approaches,
        pieces);
  }

  @Override
  public String template() {
    return "cards.ftlh";
  }
}
