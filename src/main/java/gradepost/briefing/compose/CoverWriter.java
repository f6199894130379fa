package gradepost.briefing.compose;

import gradepost.briefing.Change;
import gradepost.briefing.Cover;
import gradepost.briefing.CoverIssue;
import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.chart.CodeChart;
import gradepost.briefing.line.TrackStripWriter;
import gradepost.briefing.page.EditionWriter;
import gradepost.briefing.word.NoticeWords;
import gradepost.briefing.word.Standing;
import gradepost.briefing.word.Words;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Plan;
import gradepost.route.RunningLine;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The first page: what this is, until when, from whom, and what comes before it. */
final class CoverWriter {
  /** So many restrictions stand on the first page. */
  private static final int MOST_RESTRICTIONS = 6;

  private final Messages messages;
  private final Words words;
  private final CoverIssue issue;

  CoverWriter(Words words, CoverIssue issue) {
    this.messages = words.messages();
    this.words = words;
    this.issue = issue;
  }

  Cover cover(String heading, List<Plan> plans, List<Part> parts, List<Change> changes) {
    List<String> directions = plans.stream().map(this::covers).distinct().toList();
    List<String> cautions = new ArrayList<>();
    for (int i = 1; messages.has("caution." + i); i++) {
      cautions.add(messages.text("caution." + i));
    }
    Cover cover =
        new Cover(
            heading,
            directions,
            train(plans),
            plans.stream()
                .flatMap(p -> new EditionWriter(p.assignment(), words).facts().stream())
                .distinct()
                .toList(),
            issueFacts(),
            List.of(
                fact("prepared-by", issue.details().preparedBy()), fact("checked-by", checkedBy())),
            issue.details().sources().isEmpty()
                ? List.of(messages.text("not-supplied"))
                : issue.details().sources(),
            restrictions(plans),
            new RiskPlaces(plans, parts, messages).of(issue.highRisk()),
            cautions,
            contents(parts),
            0,
            new CodeChart(
                "cover-code",
                messages.text("chart.code"),
                messages.text("chart.code.says"),
                messages.text("code.text", issue.number(), issue.fingerprint())));
    return cover.telling(FirstPage.roomFor(cover, changes));
  }

  /** Those on the run, in its order; what the page has no room for stands in the reference. */
  private List<Fact> restrictions(List<Plan> plans) {
    List<Fact> all = new ArrayList<>();
    for (Plan plan : plans) {
      Assignment a = plan.assignment();
      Words own = new Words(messages, a.path());
      Standing standing = new Standing(own, issue.details(), a);
      a.restrictions().stream()
          .filter(r -> Ceiling.stands(a, r.applies()))
          .sorted(Comparator.comparingDouble(r -> a.path().span(r.extent()).fromM()))
          .map(
              r ->
                  new Fact(
                      r.reference(),
                      messages.text(
                          "cover.restriction",
                          own.speed(r.speedFor(a.stock().trainClasses()).metresPerSecond()),
                          own.place(a.path().span(r.extent()).fromM()),
                          within(own, a, r),
                          standing.untilText(r.reference()))))
          .filter(fact -> !all.contains(fact))
          .forEach(all::add);
    }
    if (all.size() <= MOST_RESTRICTIONS) {
      return all;
    }
    List<Fact> here = new ArrayList<>(all.subList(0, MOST_RESTRICTIONS));
    here.add(
        new Fact(
            messages.text("dash"),
            messages.text("cover.restrictions.more", all.size() - MOST_RESTRICTIONS)));
    return here;
  }

  private String covers(Plan plan) {
    Assignment a = plan.assignment();
    String lines =
        a.route().lines().stream()
            .map(RunningLine::name)
            .filter(a.lines()::contains)
            .collect(Collectors.joining(", "));
    var first = a.calls().get(0);
    var last = a.calls().get(a.calls().size() - 1);
    return messages.text(
        "cover.direction",
        a.route().nameOf(a.direction()),
        first.station().name(),
        last.station().name(),
        lines.isEmpty() ? messages.text("cover.every-line") : lines);
  }

  private List<Fact> train(List<Plan> plans) {
    Assignment first = plans.get(0).assignment();
    String formations =
        plans.stream()
            .map(p -> p.assignment().trainName())
            .distinct()
            .collect(Collectors.joining(", "));
    return List.of(
        fact("stock", first.stock().name()),
        fact("formations", formations),
        fact("load", words.text("load." + TrackStripWriter.lower(first.load()))),
        fact("policy", first.policy().name()));
  }

  private List<Fact> issueFacts() {
    return List.of(
        fact("issued", words.moment(issue.details().issued())),
        fact("supersedes", issue.details().supersedes().orElse(messages.text("cover.first-issue"))),
        fact("known-up-to", words.moment(issue.details().knownUpTo())),
        fact("copy", orBlank(issue.details().copy())),
        fact("holder", orBlank(issue.details().holder())));
  }

  private String checkedBy() {
    return issue.details().checker().orElse(messages.text("cover.to-check"));
  }

  /** A number that the register gives is written in by hand: the paper is the same for all. */
  private String orBlank(Optional<String> text) {
    return text.orElse(messages.text("cover.to-write"));
  }

  private Fact fact(String key, String value) {
    return new Fact(messages.text("cover." + key), value);
  }

  /** The sheets of the paper; those of one of several parts stand below its title. */
  private List<Cover.Entry> contents(List<Part> parts) {
    List<Cover.Entry> out = new ArrayList<>();
    for (Part part : parts) {
      int depth = headed(out, part, parts, part.road().get(0).id());
      part.road().forEach(road -> entry(out, road.id(), road.title(), depth));
      part.line().forEach(s -> entry(out, s.id(), s.title(), depth));
      part.plates().forEach(a -> entry(out, a.id(), a.title(), depth + 1));
      if (part.othersApart()) {
        entry(out, part.seldom().id(), messages.text("others.title"), depth);
      }
    }
    return out;
  }

  /** Names a part where there are several; how deep its sheets stand. */
  private int headed(List<Cover.Entry> out, Part part, List<Part> parts, String anchor) {
    if (parts.size() == 1) {
      return 0;
    }
    entry(out, anchor, part.title(), 0);
    return 1;
  }

  private void entry(List<Cover.Entry> out, String anchor, String title, int depth) {
    out.add(new Cover.Entry(anchor, title, issue.number(), depth));
  }

  /** Where a restriction ends, and between what stations it lies where its notice says so. */
  private static String within(Words words, Assignment a, TemporaryRestriction r) {
    String end = words.place(a.path().span(r.extent()).toM());
    return new NoticeWords(words, a.direction())
        .between(r)
        .map(t -> words.text("cover.restriction.within", end, t))
        .orElse(end);
  }
}
