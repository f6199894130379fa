package gradepost.briefing;

import java.util.ArrayList;
import java.util.List;

/**
 * What a driver looks up, in a file of its own beside the paper: how to read it, how its points
 * were found, the train, tables, and what the data lack. It is handed out and recalled with it.
 *
 * @param paper name of the paper's file, without its ending; empty text where it is not filed
 * @param contents its page list
 * @param changes those that the first page of the paper has no room for
 * @param parts one at least; only what belongs to a reference is printed of them
 */
public record Reference(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
    String heading,
    List<String> directions,
    String paper,
    List<Cover.Entry> contents,
    Table changes,
    Reading reading,
    List<Part> parts)
    implements Printable {

  /**
   * What a paper and its reference are called, without the endings.
   *
   * @param paper empty text where the two are not filed
   * @param reference likewise
   */
  public record Files(String paper, String reference) {
    /** Not filed yet. */
    public static final Files NONE = new Files("", "");

    /** The files of a paper of this name. */
    public static Files of(String paper) {
      return new Files(paper, paper + "-reference");
    }
  }

  public Reference {
    directions = List.copyOf(directions);
    contents = List.copyOf(contents);
    parts = List.copyOf(parts);
  }

  /** The reference to a paper. */
  public static Reference to(Briefing briefing, String title) {
    Cover cover = briefing.cover();
    Table changes = briefing.changes();
    Table rest = changes.with(changes.rows().stream().skip(cover.changes()).toList());
    List<Cover.Entry> contents = new ArrayList<>(cover.reference());
    if (!rest.rows().isEmpty()) {
      contents.add(0, new Cover.Entry("changes", rest.title(), briefing.issue().number(), 0));
    }
    return new Reference(
        briefing.language(),
        title,
        briefing.subject(),
        briefing.issueLine(),
        briefing.issue(),
        cover.heading(),
        cover.directions(),
        briefing.files().paper(),
        contents,
        rest,
        briefing.reading(),
        briefing.parts());
  }

  @Override
  public String template() {
    return "reference.ftlh";
  }
}
