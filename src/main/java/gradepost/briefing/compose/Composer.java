package gradepost.briefing.compose;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Change;
import gradepost.briefing.CoverIssue;
import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.Reference;
import gradepost.briefing.Shown;
import gradepost.briefing.Table;
import gradepost.briefing.line.LineWriter;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.PlaceTables;
import gradepost.briefing.line.SpeedTables;
import gradepost.briefing.line.Views;
import gradepost.briefing.page.ApproachWriter;
import gradepost.briefing.page.LowerWriter;
import gradepost.briefing.page.RoadWriter;
import gradepost.briefing.page.TrainWriter;
import gradepost.briefing.word.Standing;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.pack.Pictures;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Plan;
import gradepost.route.Accepted;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Composes a pack: what is common to it first, then a part for every plan. */
public final class Composer {
  private final Messages messages;

  public Composer(Messages messages) {
    this.messages = messages;
  }

  /**
   * A pack for which no finding had to be accepted but the route's own, and no notice withdrawn.
   */
  public Briefing compose(String title, List<Plan> plans, CoverIssue issue, List<Change> changes) {
    return compose(title, plans, issue, changes, List.of(), List.of(), Pictures.NONE);
  }

  /**
   * A pack of these plans, in this order.
   *
   * @param accepted findings about its trains for which somebody answers
   * @param title empty where the route's name is to stand for it
   * @param changes since the issue before; empty where there was none or nothing is known
   * @param withdrawn notices that stand no more
   * @param pictures of landmarks, signals and stations of the route
   */
  public Briefing compose(
      String title,
      List<Plan> plans,
      CoverIssue issue,
      List<Change> changes,
      List<Accepted> accepted,
      List<TemporaryRestriction> withdrawn,
      Pictures pictures) {
    if (plans.isEmpty()) {
      throw new IllegalArgumentException("a pack has a plan at least");
    }
    Assignment first = plans.get(0).assignment();
    Words words = new Words(messages, first.path());
    String heading = title.isBlank() ? first.route().name() : title;
    boolean holds =
        plans.stream()
            .flatMap(p -> p.actions().stream())
            .anyMatch(a -> a.command().hold().isPresent());
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < plans.size(); i++) {
      parts.add(part("p" + (i + 1), plans.get(i), issue, accepted, withdrawn, pictures));
    }
    return new Briefing(
        messages.text("language"),
        messages.text("document.title", heading, issue.number()),
        messages.text("document.subject", heading),
        messages.text(
            issue.details().checker().isPresent()
                ? "document.issue-line"
                : "document.issue-line.draft",
            issue.number(),
            words.moment(issue.details().validFrom()),
            words.moment(issue.details().validTo())),
        issue,
        Reference.Files.NONE,
        new CoverWriter(words, issue).cover(heading, plans, parts, changes),
        changes(words, issue, changes),
        new ReadingWriter(first, words).reading(holds),
        parts);
  }

  private static Table changes(Words words, CoverIssue issue, List<Change> changes) {
    Tables table = new Tables(words, "pack", "changes");
    changes.forEach(c -> table.row(true, c.kind(), c.place(), c.text()));
    return table.build(
        issue
            .details()
            .supersedes()
            .map(s -> words.text("changes.not-known", s))
            .orElse(words.text("changes.first-issue")));
  }

  private Part part(
      String id,
      Plan plan,
      CoverIssue issue,
      List<Accepted> accepted,
      List<TemporaryRestriction> withdrawn,
      Pictures pictures) {
    Assignment a = plan.assignment();
    Words words = new Words(messages, a.path());
    Lineside lineside = new Lineside(a, words);
    Standing standing = new Standing(words, issue.details(), a);
    Views views = new Views(lineside, pictures);
    ApproachWriter approaches = new ApproachWriter(plan, lineside, standing, views);
    List<ApproachPage> pages = plan.approaches().stream().map(p -> approaches.page(id, p)).toList();
    LineWriter line = new LineWriter(plan, lineside, standing, views.without(onPlates(pages)));
    SpeedTables speeds = new SpeedTables(a, lineside);
    List<Table> tables = new ArrayList<>();
    tables.add(speeds.temporary(id));
    speeds.withdrawn(id, withdrawn).ifPresent(tables::add);
    tables.add(speeds.signed(id));
    tables.addAll(new PlaceTables(plan, lineside).all(id));
    SuppliedWriter supplied = new SuppliedWriter(plan, lineside);
    String direction = a.route().nameOf(a.direction());
    Optional<Table> lower = new LowerWriter(plan, lineside).table(id);
    Table seldom = new SeldomWriter(plan, lineside).seldom(id);
    String title =
        messages.text(
            "part.title",
            direction,
            a.calls().get(0).station().name(),
            a.calls().get(a.calls().size() - 1).station().name(),
            a.trainName());
    return new Part(
        id,
        title,
        messages.text("part.head", direction, a.trainName()),
        summary(plan, words),
        new RoadWriter(plan, lineside).sheets(id, title, lower, seldom),
        new TrainWriter(plan, words).page(id),
        line.sheets(id),
        pages,
        lower,
        tables,
        seldom,
        new SeldomWriter(plan, lineside).hazards(id),
        supplied.notSupplied(),
        supplied.answeredFor(accepted));
  }

  private static Set<String> onPlates(List<ApproachPage> pages) {
    return pages.stream()
        .flatMap(p -> p.plate().stream())
        .flatMap(p -> p.onPaper().stream())
        .map(Shown::name)
        .collect(Collectors.toSet());
  }

  private static List<Fact> summary(Plan plan, Words words) {
    Plan.Cost fast = plan.fastest();
    List<Fact> facts = new ArrayList<>();
    facts.add(
        beside(
            words,
            "summary.time",
            words.minutes(plan.runningTimeS()),
            words.minutes(fast.timeS())));
    facts.add(beside(words, "summary.energy", energy(plan.energyJ()), energy(fast.energyJ())));
    facts.add(
        beside(
            words,
            "summary.movements",
            Integer.toString(plan.handleMovements()),
            Integer.toString(fast.handleMovements())));
    return facts;
  }

  private static Fact beside(Words words, String key, String planned, String fastest) {
    return new Fact(words.text(key), words.text("summary.beside", planned, fastest));
  }

  private static String energy(double joules) {
    return String.format(Locale.ROOT, "%.0f kWh", joules / 3.6e6);
  }
}
