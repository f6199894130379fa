package gradepost.app;

import gradepost.briefing.Briefing;
import gradepost.briefing.Change;
import gradepost.briefing.compose.AddendumWriter;
import gradepost.briefing.compose.ChangeMarks;
import gradepost.briefing.compose.ChangeWriter;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.compose.ReissuePapers;
import gradepost.briefing.compose.ReissuePapers.Aged;
import gradepost.briefing.compose.ReissuePapers.Concerned;
import gradepost.briefing.compose.ReissuePapers.Out;
import gradepost.briefing.compose.Sheets;
import gradepost.drive.Plan;
import gradepost.reissue.Changeover;
import gradepost.reissue.Comparison;
import gradepost.reissue.register.Entry;
import gradepost.source.PackFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Makes all papers of one issue of a pack. What comes out hangs on the inputs of this issue and of
 * the one before, on the sheets of that one, and on the templates: nothing else, so that it can be
 * made again.
 */
final class IssueMaker {
  private final Layout layout;

  IssueMaker(Layout layout) {
    this.layout = layout;
  }

  /**
   * The issue before.
   *
   * @param sheets as registered; empty where only its inputs are known
   */
  record Before(PackFile pack, List<Entry.Sheet> sheets) {}

  /**
   * Whom it concerns, as the register has it.
   *
   * @param replaced warnings, one for each name that cannot be printed as it was entered
   */
  record Concern(List<Concerned> people, List<Out> out, List<String> replaced) {
    static final Concern NOBODY = new Concern(List.of(), List.of(), List.of());
  }

  /**
   * A finished issue.
   *
   * @param papers that hang on the inputs alone
   * @param office papers that hang on the register too
   * @param changes each with the paper that it stands on
   * @param failures in words; with any the issue is not to be used
   */
  record Made(
      List<Paper> papers,
      List<Paper> office,
      List<Entry.Sheet> sheets,
      List<Comparison> comparisons,
      List<String> changes,
      List<String> failures) {

    /** Whether anything on any paper is not as it was. */
    boolean differs(int number) {
      return comparisons.stream().anyMatch(c -> !c.isEmpty())
          || sheets.stream().anyMatch(s -> s.since() == number);
    }
  }

  /** One paper on its way. */
  record Work(Task task, Plan plan, Optional<Plan> before, Comparison comparison) {}

  /** What is known before anything is laid out: enough to see whether anything changed. */
  record Draft(
      Path file,
      PackFile now,
      Optional<Before> before,
      boolean urgent,
      List<Work> works,
      List<Briefing> briefings,
      List<List<Aged>> agedBefore,
      List<List<Aged>> aged,
      Made made) {}

  Draft draft(Path file, PackFile now, Optional<Before> before, boolean urgent) throws Unplanned {
    List<Work> works = new ArrayList<>();
    Map<String, Task> old = new HashMap<>();
    before.ifPresent(b -> Task.of(file, b.pack()).forEach(t -> old.put(t.stem(), t)));
    List<String> failures = new ArrayList<>();
    now.early().all().forEach(p -> failures.add(p.text()));
    for (Task task : Task.of(file, now)) {
      Work work = work(file, task, Optional.ofNullable(old.get(task.stem())));
      failures.addAll(Failures.inWords(file, task, work.plan()));
      works.add(work);
    }
    List<Briefing> briefings = new ArrayList<>();
    List<List<Aged>> allBefore = new ArrayList<>();
    List<List<Aged>> all = new ArrayList<>();
    List<Entry.Sheet> sheets = new ArrayList<>();
    List<String> told = new ArrayList<>();
    for (Work work : works) {
      String stem = work.task().stem();
      List<Change> changes = writer(work, now).changes(work.comparison());
      changes.forEach(c -> told.add(stem + ": " + c.kind() + ", " + c.place() + ": " + c.text()));
      Briefing plain = compose(work.task(), work.plan(), now, changes);
      Optional<Briefing> then =
          work.before().flatMap(p -> before.map(b -> compose(work.task(), p, b.pack(), List.of())));
      List<Entry.Sheet> known =
          then.map(b -> known(stem, before.orElseThrow(), b)).orElse(List.of());
      List<Entry.Sheet> own = sheets(stem, plain, now.issue().number(), known);
      List<Aged> aged = aged(plain, own);
      Map<String, Integer> since = new HashMap<>();
      aged.forEach(a -> since.put(a.anchor(), a.since()));
      briefings.add(
          then.map(b -> new ChangeMarks(layout.messages()).marked(plain, b, since)).orElse(plain));
      allBefore.add(
          known.stream().map(s -> new Aged("", s.sheet(), s.title(), s.since())).toList());
      all.add(aged);
      sheets.addAll(own);
    }
    Made made =
        new Made(
            List.of(),
            List.of(),
            sheets,
            works.stream().map(Work::comparison).toList(),
            told,
            failures);
    return new Draft(
        file, now, before, urgent, List.copyOf(works), briefings, allBefore, all, made);
  }

  private static Work work(Path file, Task task, Optional<Task> old) throws Unplanned {
    Plan plan = task.plan(file);
    if (old.isEmpty()) {
      return new Work(
          task, plan, Optional.empty(), new Comparison(List.of(), List.of(), List.of(), List.of()));
    }
    boolean same = !Comparison.mayDiffer(old.get().assignment(), task.assignment());
    Plan before = same ? plan : old.get().plan(file);
    return new Work(task, plan, Optional.of(before), Comparison.of(before, plan));
  }

  private ChangeWriter writer(Work work, PackFile now) {
    return new ChangeWriter(
        layout.messages(),
        work.plan().assignment().path(),
        new Changeover(now.issue().validFrom(), now.withdrawn()));
  }

  private Briefing compose(Task task, Plan plan, PackFile pack, List<Change> changes) {
    return new Composer(layout.messages())
        .compose(
            task.title(),
            List.of(plan),
            Issue.of(pack, task.assignment()),
            changes,
            pack.accepted(),
            pack.withdrawn());
  }

  /**
   * The sheets of the issue before: as registered. Where they were registered in another format, or
   * not at all, they are made again from the inputs of that issue, so that a new version makes no
   * sheet new by itself.
   */
  private List<Entry.Sheet> known(String stem, Before before, Briefing then) {
    List<Entry.Sheet> registered =
        before.sheets().stream().filter(s -> s.paper().equals(stem)).toList();
    if (!registered.isEmpty() && registered.stream().allMatch(s -> s.format() == Sheets.FORMAT)) {
      return registered;
    }
    Map<String, Integer> since = new HashMap<>();
    registered.forEach(s -> since.put(s.sheet(), s.since()));
    int number = before.pack().issue().number();
    return sheets(stem, then, number, List.of()).stream()
        .map(s -> s.since(since.getOrDefault(s.sheet(), number)))
        .toList();
  }

  private List<Entry.Sheet> sheets(
      String stem, Briefing briefing, int number, List<Entry.Sheet> before) {
    Map<String, Entry.Sheet> old = new HashMap<>();
    before.forEach(s -> old.put(s.sheet(), s));
    List<Entry.Sheet> out = new ArrayList<>();
    for (Sheets.Sheet sheet : new Sheets(layout.messages()).of(briefing)) {
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

  private List<Aged> aged(Briefing briefing, List<Entry.Sheet> sheets) {
    List<Sheets.Sheet> anchored = new Sheets(layout.messages()).of(briefing);
    List<Aged> out = new ArrayList<>();
    for (int i = 0; i < sheets.size(); i++) {
      Entry.Sheet s = sheets.get(i);
      out.add(new Aged(anchored.get(i).anchor(), s.sheet(), s.title(), s.since()));
    }
    return out;
  }

  /** Lays everything out. */
  Made finish(Draft draft, Concern concern, Progress progress) throws IOException {
    List<Paper> papers = new ArrayList<>();
    List<Paper> office = new ArrayList<>();
    for (int i = 0; i < draft.works().size(); i++) {
      Work work = draft.works().get(i);
      String stem = work.task().stem();
      Briefing briefing = draft.briefings().get(i);
      papers.addAll(layout.papers(stem, briefing));
      papers.add(
          new Paper(stem + ".json", HandOver.of(work.plan(), briefing.issue().fingerprint())));
      boolean differs =
          draft.aged().get(i).stream().anyMatch(a -> a.since() == draft.now().issue().number());
      if (work.before().isPresent() && differs) {
        ReissuePapers beside =
            new ReissuePapers(layout.messages(), work.plan().assignment().path());
        papers.add(
            layout.pdf(
                stem + "-supplement",
                beside.supplement(briefing, draft.aged().get(i), draft.agedBefore().get(i))));
        if (draft.urgent() && !work.comparison().restrictions().isEmpty()) {
          papers.add(
              layout.pdf(
                  stem + "-addendum",
                  new AddendumWriter(
                          layout.messages(),
                          work.plan().assignment().path(),
                          writer(work, draft.now()))
                      .addendum(briefing, work.comparison())));
        }
        if (!work.comparison().isEmpty()) {
          ChangeWriter writer = writer(work, draft.now());
          office.add(
              layout.pdf(
                  stem + "-slips",
                  beside.slips(
                      briefing,
                      concern.people(),
                      writer.changes(work.comparison()),
                      writer.questions(work.comparison()))));
          office.add(
              layout.pdf(
                  stem + "-affected", beside.affected(briefing, concern.people(), concern.out())));
        }
      }
      progress.done(stem);
    }
    Made made = draft.made();
    return new Made(
        papers, office, made.sheets(), made.comparisons(), made.changes(), made.failures());
  }
}
