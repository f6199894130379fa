package gradepost.briefing;

/** A document that can be laid out: it names its template, and what the file says of itself. */
public interface Printable {
  /** Language tag of its texts. */
  String language();

  /** What the document is called. */
  String title();

  /** One sentence for the document's properties. */
  String subject();

  /** The issue in short, for running heads. */
  String issueLine();

  /** The issue that it belongs to. */
  CoverIssue issue();

  /** The file that lays it out. */
  String template();
}
