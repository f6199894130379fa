package gradepost.briefing.word;

import gradepost.pack.IssueDetails;
import gradepost.pack.TemporaryRestriction;
import gradepost.task.Assignment;
import gradepost.task.CeilingStep;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** When a notice holds, where that is not the whole time for which the paper is valid. */
public final class Standing {
  private final Words words;
  private final LocalDateTime validFrom;
  private final List<TemporaryRestriction> notices;

  public Standing(Words words, IssueDetails issue, Assignment assignment) {
    this.words = words;
    this.validFrom = issue.validFrom();
    this.notices = assignment.restrictions();
  }

  /** "from … until …, between … and …"; the beginning only where the paper is valid before it. */
  public String untilText(String reference) {
    return notice(reference)
        .map(
            r -> {
              String until =
                  r.until()
                      .map(u -> words.text("notice.until", words.moment(u)))
                      .orElse(words.text("notice.until-further"));
              String span =
                  later(r) ? words.text("notice.from", words.moment(r.imposed()), until) : until;
              return hours(r, span);
            })
        .orElse("");
  }

  /**
   * What sets the speed of a stretch; not when a notice ends: where it begins late, or holds by
   * hours, only that.
   */
  public String causesUndated(CeilingStep step) {
    String all = undated(step.cause());
    for (String next : step.then()) {
      all = words.text("cause.then", all, undated(next));
    }
    return all;
  }

  /** From when a notice holds, where that is late, and its hours; empty where it holds already. */
  public Optional<String> beginsText(String reference) {
    return notice(reference).flatMap(this::begins);
  }

  private String undated(String cause) {
    return notice(cause)
        .flatMap(this::begins)
        .map(when -> words.text("cause.when", words.cause(cause), when))
        .orElse(words.cause(cause));
  }

  private Optional<String> begins(TemporaryRestriction r) {
    String from = words.text("notice.from-only", words.moment(r.imposed()));
    Optional<String> late = later(r) ? Optional.of(from) : Optional.empty();
    return r.hours()
        .map(
            h ->
                late.map(l -> words.text("change.hours", l, h.from(), h.to()))
                    .orElse(words.text("notice.hours-only", h.from(), h.to())))
        .or(() -> late);
  }

  private boolean later(TemporaryRestriction r) {
    return r.imposed().isAfter(validFrom);
  }

  private String hours(TemporaryRestriction r, String span) {
    return r.hours().map(h -> words.text("change.hours", span, h.from(), h.to())).orElse(span);
  }

  private Optional<TemporaryRestriction> notice(String reference) {
    return notices.stream().filter(r -> r.reference().equals(reference)).findFirst();
  }
}
