package gradepost.briefing;

import java.util.List;

/**
 * What a driver looks up, in a file of its own beside the papers of a pack, once for all of them:
 * how to read them, how their points were found, the trains, where they differ, tables, and what
 * the data lack. It is handed out and recalled with each paper.
 *
 * @param file name of its own file, without an ending
 * @param papers names of the files of the papers, without their endings
 * @param contents its page list
 * @param changes for each paper those that its first page has no room for; without the others
 */
public record Reference(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
    String heading,
    String file,
    List<String> papers,
    List<Cover.Entry> contents,
    List<Table> changes,
    List<ReferenceSheet> sheets)
    implements Printable {

  /**
   * What a paper and the reference of its pack are called, without the endings.
   *
   * @param paper empty text where the two are not filed
   * @param reference likewise
   */
  public record Files(String paper, String reference) {
    /** Not filed yet. */
    public static final Files NONE = new Files("", "");

    /** What the reference of a pack is called. */
    public static String ofPack(String pack) {
      return pack + "-reference";
    }
  }

  public Reference {
    papers = List.copyOf(papers);
    contents = List.copyOf(contents);
    changes = List.copyOf(changes);
    sheets = List.copyOf(sheets);
  }

  /** The same with these sheets and this page list. */
  public Reference with(List<ReferenceSheet> other, List<Cover.Entry> entries) {
    return new Reference(
        language, title, subject, issueLine, issue, heading, file, papers, entries, changes, other);
  }

  @Override
  public String template() {
    return "reference.ftlh";
  }
}
