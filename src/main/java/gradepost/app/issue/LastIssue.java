package gradepost.app.issue;

import gradepost.reissue.register.Entry;
import gradepost.source.pack.PackFile;
import java.util.List;

/**
 * The issue that a new one is compared with.
 *
 * @param pack as its inputs say
 * @param sheets as registered; empty where only its inputs are known
 */
public record LastIssue(PackFile pack, List<Entry.Sheet> sheets) {
  public LastIssue {
    sheets = List.copyOf(sheets);
  }
}
