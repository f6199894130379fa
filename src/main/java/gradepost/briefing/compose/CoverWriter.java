package gradepost.briefing.compose;

import gradepost.briefing.Cover;
import gradepost.briefing.CoverIssue;
import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.RoadSheet;
import gradepost.briefing.Table;
import gradepost.briefing.chart.CodeChart;
import gradepost.briefing.line.TrackStripWriter;
import gradepost.briefing.page.EditionWriter;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.route.RunningLine;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The first page: what this is, until when, from whom, and what comes before it. */
final class CoverWriter {
  private final Messages messages;
  private final Words words;
  private final CoverIssue issue;

  CoverWriter(Words words, CoverIssue issue) {
    this.messages = words.messages();
    this.words = words;
    this.issue = issue;
  }

  Cover cover(String heading, List<Plan> plans, List<Part> parts) {
    List<String> directions = plans.stream().map(this::covers).distinct().toList();
    List<String> cautions = new ArrayList<>();
    for (int i = 1; messages.has("caution." + i); i++) {
      cautions.add(messages.text("caution." + i));
    }
    return new Cover(
        heading,
        directions,
        train(plans),
        issueFacts(),
        issue.details().sources().isEmpty()
            ? List.of(messages.text("not-supplied"))
            : issue.details().sources(),
        issue.highRisk(),
        cautions,
        contents(parts),
        new CodeChart(
            "cover-code",
            messages.text("chart.code"),
            messages.text("chart.code.says"),
            messages.text("code.text", issue.number(), issue.fingerprint())));
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
    List<Fact> facts = new ArrayList<>();
    facts.add(fact("stock", first.stock().name()));
    facts.add(fact("formations", formations));
    facts.add(fact("load", words.text("load." + TrackStripWriter.lower(first.load()))));
    facts.add(fact("policy", first.policy().name()));
    plans.stream()
        .flatMap(p -> new EditionWriter(p.assignment(), words).facts().stream())
        .distinct()
        .forEach(facts::add);
    return facts;
  }

  private List<Fact> issueFacts() {
    return List.of(
        fact("issue", issue.number()),
        fact("issued", words.moment(issue.details().issued())),
        fact("valid-from", words.moment(issue.details().validFrom())),
        fact("valid-to", words.moment(issue.details().validTo())),
        fact("supersedes", issue.details().supersedes().orElse(messages.text("cover.first-issue"))),
        fact("known-up-to", words.moment(issue.details().knownUpTo())),
        fact("copy", orNot(issue.details().copy())),
        fact("holder", orNot(issue.details().holder())),
        fact("prepared-by", issue.details().preparedBy()),
        fact("checked-by", checkedBy()));
  }

  private String checkedBy() {
    return issue.details().checkedBy().orElse(messages.text("cover.to-check"));
  }

  private String orNot(Optional<String> text) {
    return text.orElse(messages.text("not-supplied"));
  }

  private Fact fact(String key, String value) {
    return new Fact(messages.text("cover." + key), value);
  }

  private List<Cover.Entry> contents(List<Part> parts) {
    List<Cover.Entry> out = new ArrayList<>();
    for (Part part : parts) {
      for (RoadSheet road : part.road()) {
        entry(out, road.id(), messages.text("road.entry", road.title(), part.head()), 0);
      }
    }
    entry(out, "changes", messages.text("changes.title"), 0);
    entry(out, "reading", messages.text("reading.title"), 0);
    for (Part part : parts) {
      entry(out, part.id(), part.title(), 0);
      entry(out, part.id() + "-train-page", messages.text("train.title"), 1);
      entry(out, part.id() + "-strip", messages.text("strip.title"), 1);
      entry(out, part.id() + "-evened", messages.text("strip.evened.title"), 1);
      entry(out, part.id() + "-story", messages.text("story.title"), 1);
      part.approaches()
          .forEach(
              a -> entry(out, a.id(), messages.text("approach.heading", a.number(), a.title()), 2));
      entry(out, part.id() + "-tables", messages.text("tables.title"), 1);
      Table seldom = part.seldom();
      entry(out, seldom.id(), seldom.title(), 1);
      entry(out, part.id() + "-not-supplied", messages.text("not-supplied.title"), 1);
    }
    return out;
  }

  private void entry(List<Cover.Entry> out, String anchor, String title, int depth) {
    out.add(new Cover.Entry(anchor, title, issue.number(), depth));
  }
}
