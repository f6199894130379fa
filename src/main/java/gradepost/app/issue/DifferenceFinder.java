package gradepost.app.issue;

import gradepost.app.issue.Differences.OfPaper;
import gradepost.app.issue.Differences.OfReference;
import gradepost.app.store.Digest;
import gradepost.app.store.Unplanned;
import gradepost.briefing.Briefing;
import gradepost.briefing.Change;
import gradepost.briefing.Messages;
import gradepost.briefing.Reference;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.Views;
import gradepost.briefing.reference.ReferenceWriter;
import gradepost.briefing.reissue.ChangeMarks;
import gradepost.briefing.reissue.ChangeWriter;
import gradepost.briefing.reissue.ReissuePapers.Aged;
import gradepost.briefing.reissue.Sheets;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.reissue.Changeover;
import gradepost.reissue.Comparison;
import gradepost.reissue.register.Entry;
import gradepost.source.pack.PackFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Works out what is different between two issues of a pack: plan both, compare, compose both, and
 * compare the sheets. What comes out depends on the inputs of the two issues and on the sheets that
 * the first one registered, so that it can be worked out again.
 */
public final class DifferenceFinder {
  private static final Comparison NOTHING =
      new Comparison(List.of(), List.of(), List.of(), List.of());

  private final Messages messages;

  public DifferenceFinder(Messages messages) {
    this.messages = messages;
  }

  /**
   * What is different from the last issue.
   *
   * @param file of the pack, for messages
   * @param last empty for an issue that nothing came before
   */
  public Differences of(Path file, PackFile now, Optional<LastIssue> last) throws Unplanned {
    List<String> failures = new ArrayList<>();
    now.early().all().forEach(p -> failures.add(p.text()));
    List<Composed> papers = new ArrayList<>();
    for (PaperPair pair : PaperPair.of(last.map(LastIssue::pack), now)) {
      Composed paper = paper(file, pair, now, last);
      failures.addAll(Failures.inWords(file, pair.now(), paper.of().plan()));
      papers.add(paper);
    }
    return new Differences(
        now,
        papers.stream().map(Composed::of).toList(),
        reference(file, papers, now, last),
        failures);
  }

  /**
   * What is different on a paper, and the paper without marks.
   *
   * @param before of the issue before; empty where it had no such paper
   */
  private record Composed(OfPaper of, Briefing plain, Optional<ReferenceWriter.Paper> before) {
    ReferenceWriter.Paper now() {
      return new ReferenceWriter.Paper(of.task().stem(), of.plan(), plain);
    }
  }

  private Composed paper(Path file, PaperPair pair, PackFile now, Optional<LastIssue> last)
      throws Unplanned {
    Task task = pair.now();
    Plan plan = task.plan(file);
    if (last.isEmpty() || pair.before().isEmpty()) {
      return paper(task, plan, now, Optional.empty());
    }
    Plan then = pair.mayDiffer() ? pair.before().get().plan(file) : plan;
    return paper(task, plan, now, Optional.of(new Then(then, last.get())));
  }

  /** The same paper of the issue before. */
  private record Then(Plan plan, LastIssue issue) {}

  private Composed paper(Task task, Plan plan, PackFile now, Optional<Then> then) {
    Comparison comparison = then.map(t -> Comparison.of(t.plan(), plan)).orElse(NOTHING);
    ChangeWriter writer = writer(plan, now, messages);
    List<Change> changes = new ArrayList<>(writer.changes(comparison));
    then.ifPresent(
        t ->
            changes.addAll(
                writer.pictures(views(t.plan(), t.issue().pack()).all(), views(plan, now).all())));
    Briefing plain = compose(task, plan, now, changes);
    Optional<Briefing> before = then.map(t -> compose(task, t.plan(), t.issue().pack(), List.of()));
    List<Entry.Sheet> known =
        then.map(t -> known(task.stem(), t.issue(), new Sheets(messages).of(before.orElseThrow())))
            .orElse(List.of());
    List<Sheets.Sheet> printed = new Sheets(messages).of(plain);
    List<Entry.Sheet> own = registered(task.stem(), printed, now.issue().number(), known);
    List<Aged> aged = aged(printed, own);
    OfPaper of =
        new OfPaper(
            task,
            plan,
            then.map(Then::plan),
            comparison,
            changes,
            before.map(b -> marked(plain, b, aged)).orElse(plain),
            aged(known),
            aged,
            own);
    return new Composed(
        of,
        plain,
        then.map(t -> new ReferenceWriter.Paper(task.stem(), t.plan(), before.orElseThrow())));
  }

  private Views views(Plan plan, PackFile pack) {
    Words words = new Words(messages, plan.assignment().path());
    return new Views(new Lineside(plan.assignment(), words), pack.pictures());
  }

  /** The reference is a paper of its own: its sheets are registered under its name. */
  private OfReference reference(
      Path file, List<Composed> papers, PackFile now, Optional<LastIssue> last) throws Unplanned {
    String stem = Reference.Files.ofPack(now.id());
    Reference plain =
        ReferenceWriter.reference(
            messages, stem, heading(now), papers.stream().map(Composed::now).toList());
    Optional<Reference> before = Optional.empty();
    List<Entry.Sheet> known = List.of();
    if (last.isPresent()) {
      before = Optional.of(before(file, stem, papers, last.get().pack()));
      known = known(stem, last.get(), new Sheets(messages).of(before.get()));
    }
    List<Sheets.Sheet> printed = new Sheets(messages).of(plain);
    List<Entry.Sheet> own = registered(stem, printed, now.issue().number(), known);
    List<Aged> aged = aged(printed, own);
    return new OfReference(
        before.isPresent(),
        before.map(b -> ChangeMarks.marked(plain, b, since(aged))).orElse(plain),
        aged(known),
        aged,
        own);
  }

  /** The reference of the issue before; a paper that fell away is planned for it once more. */
  private Reference before(Path file, String stem, List<Composed> papers, PackFile then)
      throws Unplanned {
    List<ReferenceWriter.Paper> all = new ArrayList<>();
    for (Task task : Task.of(then)) {
      Optional<ReferenceWriter.Paper> kept =
          papers.stream()
              .filter(p -> p.of().task().stem().equals(task.stem()))
              .flatMap(p -> p.before().stream())
              .findFirst();
      if (kept.isPresent()) {
        all.add(kept.get());
      } else {
        Plan plan = task.plan(file);
        all.add(new ReferenceWriter.Paper(task.stem(), plan, compose(task, plan, then, List.of())));
      }
    }
    return ReferenceWriter.reference(messages, stem, heading(then), all);
  }

  /** What a pack is called. */
  static String heading(PackFile pack) {
    return pack.title().orElse(pack.route().name());
  }

  /** Puts the changes of a paper into words. */
  static ChangeWriter writer(Plan plan, PackFile now, Messages messages) {
    return new ChangeWriter(
        messages,
        plan.assignment().path(),
        new Changeover(now.issue().validFrom(), now.withdrawn()),
        plan.assignment().elsewhere());
  }

  private Briefing compose(Task task, Plan plan, PackFile pack, List<Change> changes) {
    return new Composer(messages)
        .compose(
            task.title(),
            List.of(plan),
            Issue.of(pack, task.assignment()),
            changes,
            pack.accepted(),
            pack.withdrawn(),
            pack.pictures());
  }

  private Briefing marked(Briefing now, Briefing before, List<Aged> sheets) {
    return new ChangeMarks(messages).marked(now, before, since(sheets));
  }

  private static Map<String, Integer> since(List<Aged> sheets) {
    Map<String, Integer> since = new HashMap<>();
    sheets.forEach(s -> since.put(s.anchor(), s.since()));
    return since;
  }

  /**
   * The sheets of the issue before: as registered. Where they were registered in another format, or
   * not at all, they are those made again from the inputs of that issue, so that a new version
   * makes no sheet new by itself.
   */
  private static List<Entry.Sheet> known(String stem, LastIssue last, List<Sheets.Sheet> again) {
    List<Entry.Sheet> registered =
        last.sheets().stream().filter(s -> s.paper().equals(stem)).toList();
    if (!registered.isEmpty() && registered.stream().allMatch(s -> s.format() == Sheets.FORMAT)) {
      return registered;
    }
    Map<String, Integer> since = new HashMap<>();
    registered.forEach(s -> since.put(s.sheet(), s.since()));
    int number = last.pack().issue().number();
    return registered(stem, again, number, List.of()).stream()
        .map(s -> s.since(since.getOrDefault(s.sheet(), number)))
        .toList();
  }

  private static List<Entry.Sheet> registered(
      String stem, List<Sheets.Sheet> printed, int number, List<Entry.Sheet> before) {
    Map<String, Entry.Sheet> old = new HashMap<>();
    before.forEach(s -> old.put(s.sheet(), s));
    List<Entry.Sheet> out = new ArrayList<>();
    for (Sheets.Sheet sheet : printed) {
      String digest = Digest.of(sheet.text().getBytes(StandardCharsets.UTF_8));
      int since =
          Optional.ofNullable(old.get(sheet.key()))
              .filter(s -> s.digest().equals(digest))
              .map(Entry.Sheet::since)
              .orElse(number);
      out.add(new Entry.Sheet(stem, sheet.key(), sheet.title(), digest, Sheets.FORMAT, since));
    }
    return out;
  }

  private static List<Aged> aged(List<Entry.Sheet> known) {
    return known.stream().map(s -> new Aged("", s.sheet(), s.title(), s.since())).toList();
  }

  private static List<Aged> aged(List<Sheets.Sheet> printed, List<Entry.Sheet> sheets) {
    List<Aged> out = new ArrayList<>();
    for (int i = 0; i < sheets.size(); i++) {
      Entry.Sheet s = sheets.get(i);
      out.add(new Aged(printed.get(i).anchor(), s.sheet(), s.title(), s.since()));
    }
    return out;
  }
}
