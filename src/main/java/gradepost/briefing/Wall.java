package gradepost.briefing;

import java.util.List;

/** The road sheets of a pack alone, to be printed large for a wall. */
public record Wall(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
    List<Part> parts)
    implements Printable {
  public Wall {
    parts = List.copyOf(parts);
  }

  /** Those of this briefing. */
  public static Wall of(Briefing briefing, String title) {
    return new Wall(
        briefing.language(),
        title,
        briefing.subject(),
        briefing.issueLine(),
        briefing.issue(),
        briefing.parts());
  }

  @Override
  public String template() {
    return "wall.ftlh";
  }
}
