package gradepost.briefing.question;

import gradepost.briefing.Table;
import gradepost.pack.TemporaryRestriction;
import java.util.List;

/**
 * What is asked about the issue.
 *
 * @param notices every notice of the pack, withdrawn ones too
 * @param changes the briefing's list of what changed
 */
public record Issued(List<TemporaryRestriction> notices, Table changes) {
  public Issued {
    notices = List.copyOf(notices);
  }
}
