package gradepost.briefing;

import java.util.List;

/**
 * The changed sheets of an issue, for whoever holds the one before.
 *
 * @param facts of the issue
 * @param todo what the holder does with it, in order
 * @param reading how to read the paper, where that changed
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
    List<Reading> reading,
    List<Section> sections)
    implements Printable {

  /**
   * The changed sheets of one part.
   *
   * @param part with its changed approaches only
   * @param seldom the sheet of other ways that the train may be sent
   */
  public record Section(
      Part part, boolean train, boolean strip, boolean story, boolean tables, boolean seldom) {

    /** Whether there is any sheet in it. */
    public boolean any() {
      return train
          || strip
          || story
          || tables
          || seldom
          || !part.road().isEmpty()
          || !part.approaches().isEmpty();
    }
  }

  public Supplement {
    facts = List.copyOf(facts);
    todo = List.copyOf(todo);
    reading = List.copyOf(reading);
    sections = List.copyOf(sections);
  }

  @Override
  public String template() {
    return "supplement.ftlh";
  }
}
