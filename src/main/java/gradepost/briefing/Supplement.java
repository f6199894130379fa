package gradepost.briefing;

import java.util.List;

/**
 * The changed sheets of an issue, for whoever holds the one before.
 *
 * @param facts of the issue
 * @param todo what the holder does with it, in order
 * @param pages the new page list: every sheet, its issue, and what to do with it
 */
public record Supplement(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
    String heading,
    List<Fact> facts,
    List<String> todo,
    Table changes,
    Table pages,
    Table destroy,
    List<Section> sections)
    implements Printable {

  /**
   * The changed sheets of one part.
   *
   * @param part with its changed approaches only
   * @param seldom the sheet of what is seldom met and of what is not supplied
   */
  public record Section(
      Part part, boolean train, boolean strip, boolean story, boolean tables, boolean seldom) {}

  public Supplement {
    facts = List.copyOf(facts);
    todo = List.copyOf(todo);
    sections = List.copyOf(sections);
  }

  @Override
  public String template() {
    return "supplement.ftlh";
  }
}
