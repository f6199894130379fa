package gradepost.briefing;

import gradepost.units.MomentStyle;
import java.util.ArrayList;
import java.util.List;

/**
 * The approaches of a pack as cards for the cab, one approach a card, and where one card does not
 * hold it, continued on another.
 *
 * @param format the finished size
 * @param draft whether it is laid out only to measure how high everything is
 * @param pageMm how high a page is
 * @param validTo the end of the issue's validity, in words
 * @param approaches how many there are
 */
public record CabCards(
    String language,
    String title,
    String subject,
    String issueLine,
    String validTo,
    CoverIssue issue,
    Format format,
    boolean draft,
    int pageMm,
    int approaches,
    List<Card> cards)
    implements Printable {

  /** A height that holds any approach whole. */
  private static final int DRAFT_MM = 2000;

  private static final int NARROW_MM = 120;

  /**
   * Finished size in millimetres, and how many fit an A4 sheet side by side and one below another.
   *
   * @param headMm what the running head takes, with the margin above it
   * @param footMm what the running foot takes, with the margin under it
   */
  public record Format(
      String name, int widthMm, int heightMm, int across, int down, int headMm, int footMm) {
    /** With margins that fit every size: across a narrow card the foot takes two lines. */
    public Format(String name, int widthMm, int heightMm, int across, int down) {
      this(name, widthMm, heightMm, across, down, 11, widthMm < NARROW_MM ? 12 : 9);
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
   * @param withLast whether there is room for the last place of the brake to use
   */
  public record Card(
      String head,
      ApproachPage approach,
      int piece,
      int pieces,
      List<ApproachPage.ActionLine> lines,
      boolean withLast) {
    public Card {
      lines = List.copyOf(lines);
    }

    private static Card whole(String head, ApproachPage approach) {
      return new Card(head, approach, 1, 1, approach.actions(), true);
    }

    /** The same on several cards. */
    private List<Card> over(Cut cut) {
      List<Card> out = new ArrayList<>();
      int from = 0;
      for (int end : cut.ends()) {
        out.add(
            new Card(
                head,
                approach,
                out.size() + 1,
                cut.ends().size(),
                lines.subList(from, end),
                cut.withLast()));
        from = end;
      }
      return out;
    }
  }

  /**
   * How an approach is cut: the first piece goes to the line before the first end, and so on.
   *
   * @param withLast whether the last piece has room for the last place of the brake to use
   */
  public record Cut(List<Integer> ends, boolean withLast) {
    public Cut {
      ends = List.copyOf(ends);
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
        MomentStyle.MOMENT.format(pack.issue().details().validTo()),
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
   * @param cuts one for each card
   */
  public CabCards split(List<Cut> cuts) {
    List<Card> pieces = new ArrayList<>();
    for (int i = 0; i < cards.size(); i++) {
      pieces.addAll(cards.get(i).over(cuts.get(i)));
    }
    return new CabCards(
        language,
        title,
        subject,
        issueLine,
        validTo,
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
