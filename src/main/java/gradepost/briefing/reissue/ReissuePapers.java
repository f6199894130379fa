package gradepost.briefing.reissue;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Change;
import gradepost.briefing.CoverIssue;
import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.OfficePaper;
import gradepost.briefing.Part;
import gradepost.briefing.Reference;
import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.Supplement;
import gradepost.briefing.Table;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.route.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Composes what goes out beside a new issue. */
public final class ReissuePapers {
  /** A cell to be written in; an empty one would be printed as a dash. */
  private static final String BLANK = "\u00a0";

  private final Messages messages;
  private final Words words;

  public ReissuePapers(Messages messages, Path path) {
    this.messages = messages;
    this.words = new Words(messages, path);
  }

  /** Someone whom a change concerns, and why, in words. */
  public record Concerned(String who, String why) {}

  /** A copy of an earlier issue that is out. */
  public record Out(String issue, String copy, String holder) {}

  /** A sheet of an issue: its key, its title, its text and the issue in which it last changed. */
  public record Aged(String anchor, String key, String title, int since) {}

  /** The changed sheets of a paper, with the page list and what to destroy. */
  public Supplement supplement(Briefing now, List<Aged> sheets, List<Aged> before) {
    Set<String> changed = changed(sheets, now.issue());
    List<Supplement.Section> sections =
        now.parts().stream().map(p -> section(p, changed)).filter(Supplement.Section::any).toList();
    Changed of =
        new Changed(
            now.language(), now.cover().heading(), now.issueLine(), now.issue(), sheets, before);
    return supplement(
        of, facts(now), now.changes(), now.cover().restrictions(), sections, List.of());
  }

  /** The changed sheets of the reference of a pack, likewise. */
  public Supplement supplement(Reference now, List<Aged> sheets, List<Aged> before) {
    Set<String> changed = changed(sheets, now.issue());
    Table none = new Tables(words, "pack", "changes").build(messages.text("changes.see-papers"));
    Changed of =
        new Changed(now.language(), now.heading(), now.issueLine(), now.issue(), sheets, before);
    return supplement(
        of,
        validity(now.issue()),
        none,
        List.of(),
        List.of(),
        now.sheets().stream().filter(s -> changed.contains(s.id())).toList());
  }

  private static Set<String> changed(List<Aged> sheets, CoverIssue issue) {
    return sheets.stream()
        .filter(s -> s.since() == issue.details().number())
        .map(Aged::anchor)
        .collect(Collectors.toSet());
  }

  /** What of, and which sheets it has and had. */
  private record Changed(
      String language,
      String heading,
      String issueLine,
      CoverIssue issue,
      List<Aged> sheets,
      List<Aged> before) {}

  private Supplement supplement(
      Changed of,
      List<Fact> facts,
      Table changes,
      List<Fact> restrictions,
      List<Supplement.Section> sections,
      List<ReferenceSheet> looked) {
    CoverIssue issue = of.issue();
    Map<String, Aged> old =
        of.before().stream().collect(Collectors.toMap(Aged::key, a -> a, (a, b) -> a));
    return new Supplement(
        of.language(),
        messages.text("supplement.title", of.heading(), issue.number()),
        messages.text("supplement.subject", of.heading()),
        of.issueLine(),
        issue,
        of.heading(),
        facts,
        Stream.of("1", "2", "3")
            .map(
                n ->
                    messages.text(
                        "supplement.todo." + n,
                        issue.details().supersedes().orElse(""),
                        words.moment(issue.details().validFrom())))
            .toList(),
        changes,
        restrictions,
        pageList(of.sheets(), old, issue.details().number()),
        destroy(of.sheets(), of.before(), changed(of.sheets(), issue)),
        sections,
        looked);
  }

  /** Number and validity, and the rest as on the first page. */
  private List<Fact> facts(Briefing now) {
    List<Fact> facts = validity(now.issue());
    facts.addAll(now.cover().issue());
    facts.addAll(now.cover().checked());
    return facts;
  }

  private List<Fact> validity(CoverIssue issue) {
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact(messages.text("cover.issue"), issue.number()));
    facts.add(
        new Fact(messages.text("cover.valid-from"), words.moment(issue.details().validFrom())));
    facts.add(new Fact(messages.text("cover.valid-to"), words.moment(issue.details().validTo())));
    return facts;
  }

  private static Supplement.Section section(Part p, Set<String> changed) {
    List<ApproachPage> pages =
        p.approaches().stream().filter(a -> changed.contains(a.id())).toList();
    Part part =
        new Part(
            p.id(),
            p.title(),
            p.head(),
            p.summary(),
            p.road().stream()
                .filter(r -> changed.contains(r.id()))
                .map(r -> r.with(r.table().linkedTo(link -> shown(pages, link))))
                .toList(),
            p.train(),
            p.line().stream()
                .filter(s -> changed.contains(s.id()))
                .map(s -> s.linkedTo(link -> shown(pages, link)))
                .toList(),
            pages,
            p.lower().map(t -> t.linkedTo(link -> shown(pages, link))),
            p.tables(),
            p.seldom(),
            p.hazards().linkedTo(link -> shown(pages, link)),
            p.notSupplied(),
            p.answeredFor());
    return new Supplement.Section(part, p.othersApart() && changed.contains(p.seldom().id()));
  }

  private static boolean shown(List<ApproachPage> pages, String link) {
    return pages.stream().anyMatch(a -> a.id().equals(link));
  }

  /** The sheets that are in this supplement; all others stay in use. */
  private Table pageList(List<Aged> sheets, Map<String, Aged> old, int number) {
    Tables table = new Tables(words, "supplement", "pages");
    for (Aged s : sheets) {
      if (s.since() == number) {
        boolean known = old.containsKey(s.key());
        table.row(s.title(), messages.text(known ? "pages.replace" : "pages.insert"));
      }
    }
    return table.build();
  }

  private Table destroy(List<Aged> sheets, List<Aged> before, Set<String> changed) {
    Tables table = new Tables(words, "supplement", "destroy");
    Map<String, Aged> now =
        sheets.stream().collect(Collectors.toMap(Aged::key, a -> a, (a, b) -> a));
    for (Aged old : before) {
      Aged kept = now.get(old.key());
      if (kept == null || changed.contains(kept.anchor())) {
        table.row(old.title(), String.valueOf(old.since()));
      }
    }
    return table.build();
  }

  /** Who has to be told, and what has to come back. */
  public OfficePaper affected(Briefing now, List<Concerned> people, List<Out> out) {
    Tables table = new Tables(words, "office", "affected");
    people.forEach(p -> table.row(p.who(), p.why(), BLANK));
    Tables recall = new Tables(words, "office", "recall");
    out.forEach(o -> recall.row(o.issue(), o.copy(), o.holder(), BLANK));
    CoverIssue issue = now.issue();
    return office(
        now,
        "affected",
        List.of(
            messages.text(
                "affected.intro.1",
                issue.number(),
                issue.details().supersedes().orElse(""),
                words.moment(issue.details().validFrom())),
            messages.text("affected.intro.2")),
        List.of(table.build(), recall.build()),
        List.of());
  }

  /** A slip for everyone concerned, or a blank one. */
  public OfficePaper slips(
      Briefing now, List<Concerned> people, List<Change> changes, List<String> questions) {
    List<Concerned> all =
        people.isEmpty() ? List.of(new Concerned(messages.text("slip.person.blank"), "")) : people;
    List<String> told =
        changes.stream()
            .filter(Change::onSlip)
            .map(c -> messages.text("slip.changed", c.kind(), c.place(), c.text()))
            .toList();
    List<String> fields = Arrays.asList(messages.text("slip.fields").split("\\|"));
    List<OfficePaper.Slip> slips = new ArrayList<>();
    for (Concerned person : all) {
      slips.add(
          new OfficePaper.Slip(
              messages.text("slip.title", now.issue().number()),
              List.of(
                  new Fact(messages.text("slip.person"), person.who()),
                  new Fact(messages.text("slip.pack"), now.cover().heading()),
                  new Fact(
                      messages.text("slip.replaces"),
                      now.issue().details().supersedes().orElse("–"))),
              told,
              questions,
              fields));
    }
    return office(
        now,
        "slips",
        people.isEmpty() ? List.of(messages.text("slip.none")) : List.of(),
        List.of(),
        slips);
  }

  private OfficePaper office(
      Briefing now,
      String key,
      List<String> intro,
      List<Table> tables,
      List<OfficePaper.Slip> slips) {
    return new OfficePaper(
        now.language(),
        messages.text(key + ".title", now.cover().heading(), now.issue().number()),
        now.subject(),
        now.issueLine(),
        now.issue(),
        messages.text(key + ".kind"),
        intro,
        tables,
        slips);
  }
}
