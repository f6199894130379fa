package gradepost.briefing.page;

import gradepost.briefing.Fact;
import gradepost.briefing.word.Words;
import gradepost.stock.WorkingBrakes;
import gradepost.task.Assignment;
import gradepost.task.DegradedRun;
import gradepost.task.PaperPeriod;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What stands at the head of a paper for a brake that is not whole. */
public final class EditionWriter {
  private final Assignment assignment;
  private final Words words;

  public EditionWriter(Assignment assignment, Words words) {
    this.assignment = assignment;
    this.words = words;
  }

  /**
   * What is wrong with the brake, and what permits the run; then when the paper is not for the
   * whole validity. None for an ordinary run.
   */
  public List<Fact> facts() {
    List<Fact> facts = new ArrayList<>(assignment.degraded().map(this::facts).orElse(List.of()));
    assignment.period().ifPresent(part -> facts.add(only(part)));
    assignment.elsewhere().forEach(part -> facts.add(elsewhere(part)));
    return facts;
  }

  private Fact only(PaperPeriod part) {
    if (!part.hours().isEmpty()) {
      return new Fact(
          words.text("edition.period.label"),
          words.text(
              "edition.period.only.hours",
              hours(part),
              String.join(", ", part.absent()),
              String.join(", ", part.uncovered())));
    }
    String key = part.first() ? "until" : part.last() ? "from" : "between";
    return new Fact(
        words.text("edition.period.label"),
        words.text(
            "edition.period.only." + key,
            words.moment(part.from()),
            words.moment(part.to()),
            String.join(", ", part.absent()),
            String.join(", ", part.uncovered())));
  }

  private String hours(PaperPeriod part) {
    return part.hours().stream()
        .map(h -> words.text("notice.hours-only", h.from(), h.to()))
        .collect(Collectors.joining(", "));
  }

  private Fact elsewhere(PaperPeriod part) {
    if (!part.hours().isEmpty()) {
      return new Fact(
          words.text("edition.elsewhere.label"),
          words.text(
              "edition.elsewhere.hours",
              hours(part),
              part.name(),
              String.join(", ", part.uncovered()),
              String.join(", ", part.absent())));
    }
    String key = part.first() ? "until" : part.last() ? "from" : "between";
    return new Fact(
        words.text("edition.elsewhere.label"),
        words.text(
            "edition.elsewhere." + key,
            words.moment(part.from()),
            words.moment(part.to()),
            part.name(),
            String.join(", ", part.uncovered())));
  }

  private List<Fact> facts(DegradedRun run) {
    List<Fact> facts = new ArrayList<>();
    fact(facts, "name", run.edition().name());
    fact(facts, "brake", brake(run));
    fact(facts, "clause", run.clause());
    fact(facts, "to", run.permit().to());
    fact(facts, "at-most", words.speed(run.permit().atMost().metresPerSecond()));
    fact(facts, "permission", words.text("edition.permission"));
    return facts;
  }

  private void fact(List<Fact> facts, String key, String value) {
    facts.add(new Fact(words.text("edition." + key + ".label"), value));
  }

  private String brake(DegradedRun run) {
    String service = assignment.stock().service().name();
    return switch (run.edition().kind()) {
      case EP_OUT_OF_USE -> words.text("edition.brake.out-of-use", service);
      case EP_ON_PART ->
          words.text("edition.brake.on-part", service, numbers(WorkingBrakes.ALL_BUT_SERVICE));
      case BRAKES_ISOLATED -> words.text("edition.brake.isolated", numbers(WorkingBrakes.NONE));
    };
  }

  /** Counted from the end that leads in this direction. */
  private String numbers(WorkingBrakes working) {
    return assignment.formation().numbersWith(working).stream()
        .map(String::valueOf)
        .collect(Collectors.joining(", "));
  }
}
