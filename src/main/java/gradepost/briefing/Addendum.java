package gradepost.briefing;

import java.util.List;

/**
 * Half a page that goes out at once, before the supplement.
 *
 * @param printed when, in words
 * @param rows what stands from now, and the row of the pack that each replaces
 * @param notes what it means for the approaches
 */
public record Addendum(
    String language,
    String title,
    String subject,
    String issueLine,
    IssueDetails issue,
    String heading,
    String printed,
    Table rows,
    List<String> notes)
    implements Printable {

  public Addendum {
    notes = List.copyOf(notes);
  }

  @Override
  public String template() {
    return "addendum.ftlh";
  }
}
