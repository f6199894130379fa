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
   * @param part with its changed sheets of the line and approaches only
   * @param lower the table of lower speeds met without a brake
   * @param full approaches of which the reference's sheet in full has changed
   * @param seldom the sheet of other ways that the train may be sent
   */
  public record Section(
      Part part,
      boolean train,
      boolean lower,
      List<ApproachPage> full,
      boolean tables,
      boolean seldom) {
    public Section {
      full = List.copyOf(full);
    }

    /** Whether there is any sheet in it. */
    public boolean any() {
      return train
          || lower
          || !full.isEmpty()
          || tables
          || seldom
          || !part.road().isEmpty()
          || !part.line().isEmpty()
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
