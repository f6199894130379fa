package gradepost.briefing.compose;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Briefing;
import gradepost.briefing.Cover;
import gradepost.briefing.CoverIssue;
import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.SamplePlan;
import gradepost.pack.IssueDetails;
import gradepost.units.UnitStyle;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Regression: every detail of an issue stands on the cover, or that it was not supplied. */
class CoverFactsTest {
  private static Briefing briefing(CoverIssue issue) {
    return new Composer(Messages.english())
        .compose("", List.of(SamplePlan.of(UnitStyle.MILES)), issue, List.of());
  }

  private static List<String> values(CoverIssue issue) {
    Cover cover = briefing(issue).cover();
    return Stream.concat(cover.issue().stream(), cover.checked().stream())
        .map(Fact::value)
        .toList();
  }

  private static CoverIssue issue(Optional<String> text) {
    LocalDateTime day = LocalDateTime.of(2026, 11, 20, 12, 0);
    CoverIssue sample = SampleIssue.issue();
    IssueDetails details =
        new IssueDetails(
            1203,
            day,
            day.plusDays(1),
            day.plusDays(2),
            text.map(t -> t + " before"),
            day.minusDays(1),
            "a clerk",
            text.map(t -> t + " checks"),
            text.map(t -> t + " copy"),
            text.map(t -> t + " holds"),
            List.of("a survey"));
    return new CoverIssue(sample.route(), details, sample.fingerprint(), sample.highRisk());
  }

  @Test
  void everyDetailStandsInItsPlace() {
    assertThat(values(issue(Optional.of("T"))))
        .containsExactly(
            "2026-11-20 12:00",
            "T before",
            "2026-11-19 12:00",
            "T copy",
            "T holds",
            "a clerk",
            "T checks");
    assertThat(briefing(issue(Optional.of("T"))).issueLine())
        .isEqualTo("Issue 1203 · valid 2026-11-21 12:00 to 2026-11-22 12:00");
  }

  @Test
  void whatIsNotKnownIsSaidToBe() {
    List<String> values = values(issue(Optional.empty()));
    assertThat(values.get(1)).isEqualTo("none, first issue");
    assertThat(values.get(3)).isEqualTo("……………………");
    assertThat(values.get(4)).isEqualTo("……………………");
    assertThat(values.get(6)).startsWith("not yet:");
  }
}
