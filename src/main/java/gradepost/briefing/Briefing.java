package gradepost.briefing;

import java.util.List;

/**
 * A whole pack: the paper in the driver's hand, and what stands in its reference.
 *
 * @param language language tag of its texts
 * @param issueLine the issue in short, for running heads
 * @param subject one sentence for the document's properties
 * @param files what the two are called
 * @param changes since the issue before
 * @param reading in the reference
 */
public record Briefing(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
    Reference.Files files,
    Cover cover,
    Table changes,
    Reading reading,
    List<Part> parts)
    implements Printable {

  public Briefing {
    parts = List.copyOf(parts);
    if (parts.isEmpty()) {
      throw new IllegalArgumentException("a briefing has a part at least");
    }
  }

  /** The same under these names. */
  public Briefing filed(Reference.Files as) {
    return new Briefing(
        language, title, subject, issueLine, issue, as, cover, changes, reading, parts);
  }

  @Override
  public String template() {
    return "pack.ftlh";
  }
}
