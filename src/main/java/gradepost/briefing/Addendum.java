package gradepost.briefing;

import java.util.List;

/**
 * What goes out at once, before the supplement: half a page, or whole ones where that is not
 * enough.
 *
 * @param printed when, in words
 * @param rows what stands from now, and the row of the pack that each replaces
 * @param notes what it means for the approaches
 * @param keeping what comes first, and what to do with this sheet
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
    List<String> notes,
    String keeping)
    implements Printable {

  public Addendum {
    notes = List.copyOf(notes);
  }

  @Override
  public String template() {
    return "addendum.ftlh";
  }
}
