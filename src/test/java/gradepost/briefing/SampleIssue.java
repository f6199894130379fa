package gradepost.briefing;

import gradepost.pack.IssueDetails;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** An invented issue, with every kind of value that a paper must be able to print. */
public final class SampleIssue {
  public static CoverIssue issue() {
    return new CoverIssue(
        "Invented line",
        new IssueDetails(
            3,
            LocalDateTime.of(2026, 11, 20, 12, 0),
            LocalDateTime.of(2026, 11, 23, 4, 0),
            LocalDateTime.of(2027, 2, 28, 4, 0),
            Optional.of("2"),
            LocalDateTime.of(2026, 11, 19, 18, 0),
            "A. Instructor",
            Optional.of("B. Clerk"),
            Optional.of("7"),
            Optional.empty(),
            List.of("Sectional appendix of the invented line, 2026")),
        "3f786850e387550fdab836ed7e6dc881de23001b3f786850e387550fdab836ed",
        List.of("The swing bridge is 15 mph in both directions."));
  }

  private SampleIssue() {}
}
