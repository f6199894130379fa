package gradepost.reissue.register;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * An issue as it is registered.
 *
 * @param pack what the pack is called, the same in every issue
 * @param maker the version that made it, with the digest of its templates; empty text where only
 *     the inputs were taken in
 * @param base number of the issue that it was compared with
 * @param notice digest of the notice that it takes in; empty text where there is none
 * @param urgent whether an emergency addendum belongs to it
 * @param inputs in the order of the fingerprint
 * @param found the clerk's own files as they were when the issue was made, those that it changes
 */
public record Entry(
    String pack,
    int number,
    String fingerprint,
    String maker,
    LocalDateTime issued,
    LocalDateTime validFrom,
    LocalDateTime validTo,
    Optional<Integer> base,
    String notice,
    boolean urgent,
    List<Kept> inputs,
    List<Kept> found,
    List<Kept> papers,
    List<Sheet> sheets) {

  /** A file that the archive holds under its digest. */
  public record Kept(String name, String digest) {}

  /**
   * A sheet of a paper.
   *
   * @param digest of what is printed on it, as one text
   * @param format in which that text was written; digests of two formats cannot be compared
   * @param since number of the issue in which it was last different
   */
  public record Sheet(
      String paper, String sheet, String title, String digest, int format, int since) {

    /** The same sheet, last different in another issue. */
    public Sheet since(int issue) {
      return new Sheet(paper, sheet, title, digest, format, issue);
    }
  }

  public Entry {
    inputs = List.copyOf(inputs);
    found = List.copyOf(found);
    papers = List.copyOf(papers);
    sheets = List.copyOf(sheets);
  }

  /** As it is called on the command line: "valley/4". */
  public String name() {
    return pack + "/" + number;
  }
}
