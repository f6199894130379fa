package gradepost.briefing;

import java.util.List;

/**
 * A whole pack.
 *
 * @param language language tag of its texts
 * @param issueLine the issue in short, for running heads
 * @param subject one sentence for the document's properties
 */
public record Briefing(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
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

  @Override
  public String template() {
    return "pack.ftlh";
  }
}
