package gradepost.briefing;

import java.util.List;

/** A paper for the clerk: lists, and slips to hand out and get back. */
public record OfficePaper(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
    String heading,
    List<String> intro,
    List<Table> tables,
    List<Slip> slips)
    implements Printable {

  /**
   * A slip to be signed and returned.
   *
   * @param facts whom it is for, and what of
   * @param changes what the signer has been told
   * @param questions to be answered in writing; empty where nothing of high risk changed
   * @param fields to be filled in by hand
   */
  public record Slip(
      String title,
      List<Fact> facts,
      List<String> changes,
      List<String> questions,
      List<String> fields) {
    public Slip {
      facts = List.copyOf(facts);
      changes = List.copyOf(changes);
      questions = List.copyOf(questions);
      fields = List.copyOf(fields);
    }
  }

  public OfficePaper {
    intro = List.copyOf(intro);
    tables = List.copyOf(tables);
    slips = List.copyOf(slips);
  }

  @Override
  public String template() {
    return "office.ftlh";
  }
}
