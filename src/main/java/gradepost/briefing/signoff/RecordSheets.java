package gradepost.briefing.signoff;

import static gradepost.briefing.signoff.Course.row;

import gradepost.briefing.Fact;
import gradepost.briefing.signoff.Sheet.Fields;
import gradepost.briefing.signoff.Sheet.Grid;
import gradepost.briefing.signoff.Sheet.Heading;
import gradepost.briefing.signoff.Sheet.Lines;
import gradepost.briefing.signoff.Sheet.Words;
import gradepost.policy.Currency;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What is signed: prior knowledge, outcome, declaration, and until when it stands. */
final class RecordSheets {
  private static final int MOST_DATES = 7;
  private final Course course;

  RecordSheets(Course course) {
    this.course = course;
  }

  private String text(String key, Object... holes) {
    return course.text(key, holes);
  }

  private Fact blank(String key) {
    return new Fact(text(key), "");
  }

  Sheet outcome() {
    var paper = course.rules().papers();
    var ride = course.rules().ride();
    String must =
        paper.mustPass().stream()
            .map(s -> text("subject." + s.name().toLowerCase(Locale.ROOT)))
            .collect(Collectors.joining(", "));
    List<List<String>> results =
        List.of(
            row(
                text("signoff.result.paper"),
                text("signoff.result.share", Course.percent(paper.passMark()))),
            row(
                text("signoff.result.must"),
                must.isEmpty()
                    ? text("signoff.result.must-none")
                    : text("signoff.result.must-all", must)),
            row(text("signoff.result.strip"), text("signoff.result.assessor")),
            row(
                text("signoff.result.ride"),
                text("signoff.result.share", Course.percent(ride.passScore()))),
            row(text("signoff.result.risk"), text("signoff.result.each")),
            row(text("signoff.result.degraded"), text("signoff.result.each")));
    return new Sheet(
        "so-outcome",
        text("signoff.outcome.title"),
        List.of(
            new Words(
                text(
                    "signoff.separate",
                    course.direction(),
                    course.taught().assignment().formation().name())),
            new Fields(
                List.of(
                    blank("signoff.driver"),
                    blank("signoff.instructor"),
                    blank("signoff.assessor"))),
            new Heading(text("signoff.results")),
            new Grid(course.table("results", results), true),
            new Fields(
                List.of(
                    new Fact(text("signoff.decision"), text("signoff.decision.value")),
                    blank("signoff.review"))),
            new Lines(text("signoff.action-plan"), 3),
            new Heading(text("signoff.declaration")),
            new Words(
                text(
                    "signoff.declaration.driver",
                    course.issue().number(),
                    course.direction(),
                    course.taught().assignment().stock().name())),
            new Grid(
                course.table(
                    "signatures",
                    List.of(
                        row(text("signoff.driver")),
                        row(text("signoff.instructor")),
                        row(text("signoff.assessor")))),
                true),
            new Words(text("signoff.declaration.assessor"))));
  }

  Sheet priorKnowledge() {
    List<List<String>> empty = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      empty.add(row(""));
    }
    return new Sheet(
        "so-prior",
        text("signoff.prior.title"),
        List.of(
            new Words(text("signoff.prior.says")),
            new Grid(course.table("prior", empty), true),
            new Heading(text("signoff.currency.title")),
            new Words(
                text(
                    "signoff.currency.says",
                    course.rules().currency().reviewMonths(),
                    course.rules().currency().lapseMonths(),
                    course.rules().currency().refreshTrips())),
            new Grid(course.table("currency", dates()), false),
            new Fields(
                List.of(
                    blank("signoff.signed-on"),
                    blank("signoff.review-on"),
                    blank("signoff.lapses-on"))),
            new Heading(text("signoff.refresh.title")),
            new Grid(course.table("refresh", refresh()), true)));
  }

  private List<List<String>> refresh() {
    List<List<String>> out = new ArrayList<>();
    for (int i = 1; i <= course.rules().currency().refreshTrips(); i++) {
      out.add(row(Integer.toString(i)));
    }
    return out;
  }

  /** The day on which the issue takes effect, and firsts of months within its validity. */
  private List<List<String>> dates() {
    List<List<String>> out = new ArrayList<>();
    LocalDate day = course.issue().details().validFrom().toLocalDate();
    LocalDate last = course.issue().details().validTo().toLocalDate();
    while (!day.isAfter(last) && out.size() < MOST_DATES) {
      out.add(
          row(
              day.toString(),
              review(day).toString(),
              lapse(course.rules().currency(), day).toString()));
      day = day.withDayOfMonth(1).plusMonths(1);
    }
    return out;
  }

  private LocalDate review(LocalDate signed) {
    return signed.plusMonths(course.rules().currency().reviewMonths());
  }

  static LocalDate lapse(Currency currency, LocalDate lastTrip) {
    return lastTrip.plusMonths(currency.lapseMonths());
  }
}
