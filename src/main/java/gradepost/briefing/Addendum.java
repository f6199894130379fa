package gradepost.briefing;

import java.util.List;

/**
 * What goes out at once, before the supplement: half a page, or whole ones where that is not
 * enough.
 *
 * @param printed when, in words
 * @param groups what changed, a table for each hour from which it is in force; those that stand
 *     already when it is printed are one
 * @param notesFrom from when the notes hold, in words; empty if they already do
 * @param notes what it means for the approaches
 * @param keeping what comes first, and what to do with this sheet
 */
public record Addendum(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
    String heading,
    String printed,
    List<Table> groups,
    String notesFrom,
    List<String> notes,
    String keeping)
    implements Printable {

  public Addendum {
    groups = List.copyOf(groups);
    notes = List.copyOf(notes);
  }

  @Override
  public String template() {
    return "addendum.ftlh";
  }
}
