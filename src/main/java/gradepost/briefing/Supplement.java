package gradepost.briefing;

import java.util.List;

/**
 * The changed sheets of an issue, for whoever holds the one before.
 *
 * @param facts of the issue
 * @param todo what the holder does with it, in order
 * @param restrictions temporary ones that now stand for the run
 * @param pages its sheets, and what to do with each
 * @param sections of a paper; none where it is of a reference
 * @param looked sheets of a reference; none where it is of a paper
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
    List<Fact> restrictions,
    Table pages,
    Table destroy,
    List<Section> sections,
    List<ReferenceSheet> looked)
    implements Printable {

  /**
   * The changed sheets of one part.
   *
   * @param part with its changed sheets of the line and approaches only
   * @param others the sheet of lower speeds met without a brake and of other ways that the train
   *     may be sent
   */
  public record Section(Part part, boolean others) {
    /** Whether there is any sheet in it. */
    public boolean any() {
      return others
          || !part.road().isEmpty()
          || !part.line().isEmpty()
          || !part.approaches().isEmpty();
    }
  }

  public Supplement {
    facts = List.copyOf(facts);
    restrictions = List.copyOf(restrictions);
    todo = List.copyOf(todo);
    sections = List.copyOf(sections);
    looked = List.copyOf(looked);
  }

  @Override
  public String template() {
    return "supplement.ftlh";
  }
}
