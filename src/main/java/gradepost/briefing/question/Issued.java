package gradepost.briefing.question;

import gradepost.briefing.CoverIssue;
import gradepost.briefing.Table;
import gradepost.pack.TemporaryRestriction;
import java.util.List;

/**
 * The issue that is asked about.
 *
 * @param notices every notice of the pack, withdrawn ones too
 * @param changes the briefing's list of what changed
 */
public record Issued(CoverIssue issue, List<TemporaryRestriction> notices, Table changes) {
  public Issued {
    notices = List.copyOf(notices);
  }
}
