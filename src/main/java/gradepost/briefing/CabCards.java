package gradepost.briefing;

import java.util.List;

/**
 * The approaches of a pack as cards for the cab, one approach a card.
 *
 * @param format the finished size
 */
public record CabCards(
    String language,
    String title,
    String subject,
    String issueLine,
    IssueDetails issue,
    Format format,
    List<Card> cards)
    implements Printable {

  /**
   * Finished size in millimetres, and how many fit an A4 sheet side by side and one below another.
   */
  public record Format(String name, int widthMm, int heightMm, int across, int down) {
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

  /** An approach, and the direction and formation that it is for. */
  public record Card(String head, ApproachPage approach) {}

  public CabCards {
    cards = List.copyOf(cards);
  }

  /** The cards of every part of a pack, in the order of travel. */
  public static CabCards of(Briefing pack, String title, Format format) {
    return new CabCards(
        pack.language(),
        title,
        pack.subject(),
        pack.issueLine(),
        pack.issue(),
        format,
        pack.parts().stream()
            .flatMap(p -> p.approaches().stream().map(a -> new Card(p.head(), a)))
            .toList());
  }

  @Override
  public String template() {
    return "cards.ftlh";
  }
}
