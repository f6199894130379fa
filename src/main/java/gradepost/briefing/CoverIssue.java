package gradepost.briefing;

import gradepost.pack.IssueDetails;
import java.time.LocalDateTime;
import java.util.List;

/**
 * What the cover says of the issue. Details that are not known are printed as not supplied.
 *
 * @param number as it is printed; templates are shown components only
 * @param route its name, as much of it as the foot of every sheet has room for
 * @param details as the pack has them
 * @param fingerprint of the canonical inputs, hexadecimal; the same inputs give the same one
 * @param highRisk what the depot wants to be said before all else
 */
public record CoverIssue(
    String number, String route, IssueDetails details, String fingerprint, List<String> highRisk) {
  /** So many letters and the caution beside them are one line of the narrowest foot. */
  private static final int ROOM = 36;

  public CoverIssue {
    route = route.length() <= ROOM ? route : route.substring(0, ROOM - 1).strip() + "…";
    highRisk = List.copyOf(highRisk);
  }

  /** An issue whose number is printed as it is counted. */
  public CoverIssue(String route, IssueDetails details, String fingerprint, List<String> highRisk) {
    this(String.valueOf(details.number()), route, details, fingerprint, highRisk);
  }

  /** When it was made: the date of its files. */
  public LocalDateTime issued() {
    return details.issued();
  }
}
