package gradepost.briefing.signoff;

import gradepost.briefing.CoverIssue;
import gradepost.briefing.Fact;
import gradepost.briefing.Printable;
import java.util.List;

/**
 * A document of sheets.
 *
 * @param head for running heads: direction, formation and what it is
 * @param facts what every reader of it has to know first
 */
public record Papers(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
    String kind,
    String heading,
    String head,
    List<Fact> facts,
    List<Sheet> sheets)
    implements Printable {

  public Papers {
    facts = List.copyOf(facts);
    sheets = List.copyOf(sheets);
    if (sheets.isEmpty()) {
      throw new IllegalArgumentException("papers have a sheet at least");
    }
  }

  @Override
  public String template() {
    return "signoff.ftlh";
  }
}
